#include "with_shop.h"

#include <QApplication>
#include <QCoreApplication>
#include <algorithm>
#include <cstdio>

#include "display_text.h"
#include "pin_prompt.h"
#include "shop_people.h"

namespace steadyturn {
namespace {

// Qt keeps references to both for as long as the application lives.
struct Arguments {
  int count = 1;
  char name[6] = "sturn";
  char* values[2] = {name, nullptr};
};

// Qt's remarks about a missing desktop session say nothing to somebody who asked for a file.
void dropSessionRemarks(QtMsgType type, const QMessageLogContext& context, const QString& message) {
  if (message.startsWith(QLatin1String("QStandardPaths:"))) return;
  std::fprintf(stderr, "%s\n", qPrintable(qFormatLogMessage(type, context, message)));
}

bool isAuditor(const Shop& shop, const std::string& name) {
  const auto all = users(shop);
  return all && std::ranges::any_of(*all, [&](const Account& account) {
           return account.name == name && account.role == AccountRole::Auditor;
         });
}

// An auditor goes by the door that nothing is written through, the PIN's wrong tries among it.
Result<Shop> openFor(const Caller& caller) {
  if (caller.audit) return Shop::open(caller.shop, Access::Look);
  if (!caller.as.empty()) {
    auto looked = Shop::open(caller.shop, Access::Look);
    if (looked && isAuditor(*looked, caller.as)) return looked;
  }
  return Shop::open(caller.shop);
}

Result<void> signInAs(Shop& shop, const std::string& name) {
  const auto pin = askPin("PIN of " + displayText(name), "STURN_PIN");
  if (!pin) {
    return refuse({.kind = ProblemKind::NotPermitted,
                   .field = "PIN",
                   .found = name,
                   .accepted = "the PIN, from a prompt, standard input or STURN_PIN"});
  }
  const auto account = signIn(shop, name, *pin);
  if (!account) return tl::unexpected(account.error());
  return {};
}

Result<Output> openAndDo(const Caller& caller, const Context::Work& work) {
  auto shop = openFor(caller);
  if (!shop) return tl::unexpected(std::move(shop.error()));
  if (!caller.as.empty() && hasUsers(*shop)) {
    if (auto done = signInAs(*shop, caller.as); !done) return tl::unexpected(done.error());
  }
  return work(*shop);
}

}  // namespace

Result<Output> withShop(const Caller& caller, const Context::Work& work, Face face) {
  Arguments arguments;
  if (face == Face::Text) {
    const QCoreApplication application(arguments.count, arguments.values);
    return openAndDo(caller, work);
  }
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  qInstallMessageHandler(dropSessionRemarks);
  const QApplication application(arguments.count, arguments.values);
  return openAndDo(caller, work);
}

Result<Output> withQt(const Command& work) {
  Arguments arguments;
  const QCoreApplication application(arguments.count, arguments.values);
  return work();
}

}  // namespace steadyturn
