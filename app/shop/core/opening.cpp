#include <QUuid>
#include <algorithm>

#include "connection.h"
#include "demo.h"
#include "inside.h"
#include "validate.h"
#include "writing.h"

namespace steadyturn {

Shop::Shop(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Shop::Shop(Shop&&) noexcept = default;
Shop& Shop::operator=(Shop&&) noexcept = default;
Shop::~Shop() = default;

Result<Shop> Shop::create(const std::string& address, const std::string& name) {
  Problems problems;
  checkText(problems, "name", name);
  if (!problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<Shop> {
    auto database = Database::create(address);
    if (!database) return tl::unexpected(database.error());
    Shop shop(std::make_unique<Inside>(std::move(*database)));
    Writing writing(*shop.inside_, Act::ChangeShop);
    const auto stamp = writing.stamp();
    shop.inside_->facts.set("shop_id", QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString(), stamp);
    if (!name.empty()) shop.inside_->facts.set("name", name, stamp);
    writing.commit();
    return shop;
  });
}

Result<Shop> Shop::open(const std::string& address, Access access) { return open(Session(address, access, {})); }

Result<Shop> Shop::open(const Session& session) {
  return guarded([&]() -> Result<Shop> {
    const bool looking = session.access_ == Access::Look;
    auto database = looking ? Database::openToLook(session.address_) : Database::open(session.address_);
    if (!database) return tl::unexpected(database.error());
    const bool upgraded = database->outcome() == OpenOutcome::Upgraded;
    Shop shop(std::make_unique<Inside>(std::move(*database)));
    shop.inside_->lookingOnly = looking;
    shop.inside_->who = session.who_;
    if (upgraded) {
      // The store's own work, nobody's act: it tells the ledger nothing.
      Transaction transaction(shop.inside_->database);
      shop.inside_->ledger.completeTree();
      transaction.commit();
    }
    return shop;
  });
}

Access Shop::access() const { return inside_->lookingOnly ? Access::Look : Access::Work; }

Session Shop::session() const { return {inside_->database.address(), access(), inside_->who}; }

void Shop::actAs(const Session& session) { inside_->who = session.who_; }

Result<Shop> Shop::createDemo(const std::string& address, const Progress& progress) {
  return guarded([&]() -> Result<Shop> {
    auto database = Database::create(address);
    if (!database) return tl::unexpected(database.error());
    Shop shop(std::make_unique<Inside>(std::move(*database)));
    if (auto filled = fillDemo(*shop.inside_, progress); !filled) return tl::unexpected(filled.error());
    return shop;
  });
}

const std::string& Shop::address() const { return inside_->database.connection().address; }

std::string Shop::name() const { return facts().name; }

// A shop that was made before shops had one goes by its name.
std::string Shop::id() const { return inside_->facts.setting("shop_id").value_or(name()); }

ShopFacts Shop::facts() const {
  return {.name = inside_->facts.setting("name").value_or("Workshop"),
          .place = inside_->facts.setting("place").value_or(""),
          .country = inside_->facts.setting("country").value_or("")};
}

bool Shop::onServer() const { return inside_->database.connection().onServer(); }

Result<void> Shop::reach() const {
  return guarded([&]() -> Result<void> {
    Statement(inside_->database, "SELECT 1").run().next();
    return {};
  });
}

bool Shop::readOnly() const { return inside_->database.readOnly(); }

Date Shop::today() const { return inside_->today(); }

bool Shop::isDemo() const { return inside_->facts.setting("demo_today").has_value(); }

Policy Shop::policy() const { return inside_->policy(); }

namespace {

Problems problemsOf(const ShopFacts& facts) {
  Problems problems;
  if (facts.name.empty()) problems.push_back({.field = "name", .accepted = "the shop's name, as its papers say"});
  checkText(problems, "name", facts.name);
  checkText(problems, "place", facts.place);
  const auto capital = [](char c) { return c >= 'A' && c <= 'Z'; };
  if (!facts.country.empty() && (facts.country.size() != 2 || !std::ranges::all_of(facts.country, capital))) {
    problems.push_back(
        {.field = "country", .found = facts.country, .accepted = "two capital letters (ISO 3166-1), such as DE"});
  }
  return problems;
}

void checkPolicy(Problems& problems, const Policy& policy) {
  if (policy.intervalDays < 1 || policy.intervalDays > 36525) {
    problems.push_back(
        {.field = "interval_days", .found = std::to_string(policy.intervalDays), .accepted = "1 to 36525"});
  }
  if (!(policy.confidence >= 0.5 && policy.confidence < 1)) {
    problems.push_back(
        {.field = "confidence", .found = writeNumber(policy.confidence), .accepted = "0.5 up to, not 1"});
  }
  if (!(policy.partLimitRisk > 0 && policy.partLimitRisk <= 0.5)) {
    problems.push_back(
        {.field = "part_limit_risk", .found = writeNumber(policy.partLimitRisk), .accepted = "above 0, at most 0.5"});
  }
}

}  // namespace

Result<void> Shop::change(const ShopFacts& facts, const Policy& policy) {
  Problems problems = problemsOf(facts);
  checkPolicy(problems, policy);
  if (!problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<void> {
    Writing writing(*inside_, Act::ChangeShop);
    const auto stamp = writing.stamp();
    const auto set = [&](const std::string& name, const std::string& value, const std::string& old) {
      if (value != old) inside_->facts.set(name, value, stamp);
    };
    const auto oldFacts = this->facts();
    const auto oldPolicy = this->policy();
    set("name", facts.name, oldFacts.name);
    set("place", facts.place, oldFacts.place);
    set("country", facts.country, oldFacts.country);
    set("interval_days", std::to_string(policy.intervalDays), std::to_string(oldPolicy.intervalDays));
    set("confidence", writeNumber(policy.confidence), writeNumber(oldPolicy.confidence));
    set("decision_rule", std::string(writeRule(policy.rule)), std::string(writeRule(oldPolicy.rule)));
    set("part_limit_risk", writeNumber(policy.partLimitRisk), writeNumber(oldPolicy.partLimitRisk));
    writing.commit();
    return {};
  });
}

}  // namespace steadyturn
