#include "inside.h"

#include <fmt/format.h>

#include <chrono>

namespace steadyturn {

namespace {

std::string instantOfTheClock() {
  using namespace std::chrono;
  const auto now = floor<milliseconds>(system_clock::now());
  const auto day = floor<days>(now);
  const hh_mm_ss time(now - day);
  return fmt::format("{}T{:02}:{:02}:{:02}.{:03}Z", writeDate(day), time.hours().count(), time.minutes().count(),
                     time.seconds().count(), time.subseconds().count());
}

template <typename T, typename Read>
void take(T& into, const std::optional<std::string>& text, Read read) {
  if (!text) return;
  if (const auto value = read(*text)) into = *value;
}

}  // namespace

Shop::Inside::Inside(Database opened)
    : database(std::move(opened)),
      ledger(database),
      facts(database, ledger),
      tools(database, ledger),
      references(database, ledger),
      fasteners(database, ledger),
      approvals(database, ledger),
      checks(database, ledger),
      tightenings(database, ledger),
      jobs(database, ledger),
      recalls(database, ledger),
      bench(database, ledger),
      drafts(database),
      fleets(facts, tools, checks, tightenings),
      signing(database, ledger),
      issued(database, ledger),
      accounts(database, ledger),
      now(instantOfTheClock) {}

Date Shop::Inside::today() const {
  if (const auto fixed = facts.setting("demo_today")) {
    if (const auto date = parseDate(*fixed, "demo_today")) return *date;
  }
  return std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
}

Policy Shop::Inside::policy() const {
  const auto number = [](const std::string& text) { return parseNumber(text, "policy"); };
  const auto set = facts.settings({"interval_days", "confidence", "decision_rule", "part_limit_risk"});
  const auto setting = [&](const char* name) {
    const auto found = set.find(name);
    return found == set.end() ? std::nullopt : std::optional(found->second);
  };
  Policy policy;
  take(policy.intervalDays, setting("interval_days"),
       [&](const std::string& text) { return number(text).map([](double days) { return static_cast<int>(days); }); });
  take(policy.confidence, setting("confidence"), number);
  take(policy.rule, setting("decision_rule"), [](const std::string& text) { return parseRule(text); });
  take(policy.partLimitRisk, setting("part_limit_risk"), number);
  return policy;
}

}  // namespace steadyturn
