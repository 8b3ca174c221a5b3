#include "server_plans.h"

#include <algorithm>
#include <array>
#include <utility>

namespace steadyturn {

namespace {

// Tables grow, above all in an import, and what was planned for a small one is slow on a large one: after so many
// calls everything is planned anew. It also bounds how many texts are kept.
constexpr int callsBeforeForgetting = 2000;

bool canBePlanned(const QString& sql) {
  constexpr std::array verbs{"SELECT", "INSERT", "UPDATE", "DELETE"};
  return std::ranges::any_of(verbs, [&](const char* verb) { return sql.startsWith(QLatin1String(verb)); });
}

}  // namespace

QString withValues(const QString& sql, const QStringList& values) {
  QString text;
  qsizetype from = 0;
  for (const QString& value : values) {
    const auto mark = sql.indexOf(QLatin1Char('?'), from);
    text += QStringView(sql).sliced(from, mark - from);
    text += value;
    from = mark + 1;
  }
  return text += QStringView(sql).sliced(from);
}

QStringList ServerPlans::callOf(const QString& sql, const QStringList& values) {
  if (!canBePlanned(sql)) return {sql};
  if (++calls_ > callsBeforeForgetting) forget();
  QStringList said;
  if (std::exchange(clear_, false)) said << QStringLiteral("DEALLOCATE ALL");
  auto& name = names_[sql];
  if (name.isEmpty()) {
    name = QStringLiteral("steadyturn_%1").arg(++named_);
    QStringList places;  // "a = ? AND b = ?" is prepared as "a = $1 AND b = $2"
    for (qsizetype i = 1; i <= values.size(); ++i) places << QLatin1Char('$') + QString::number(i);
    said << QStringLiteral("PREPARE ") + name + QStringLiteral(" AS ") + withValues(sql, places);
  }
  const auto inBrackets =
      values.isEmpty() ? QString() : QStringLiteral(" (%1)").arg(values.join(QLatin1String(", ")));
  return said << QStringLiteral("EXECUTE ") + name + inBrackets;
}

void ServerPlans::forget() {
  names_.clear();
  calls_ = 0;
  clear_ = true;
}

}  // namespace steadyturn
