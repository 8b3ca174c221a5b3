#include "demo.h"
#include "inside.h"

namespace steadyturn {

Shop::Shop(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Shop::Shop(Shop&&) noexcept = default;
Shop& Shop::operator=(Shop&&) noexcept = default;
Shop::~Shop() = default;

Result<Shop> Shop::create(const std::string& address, const std::string& name) {
  return guarded([&]() -> Result<Shop> {
    auto database = Database::create(address);
    if (!database) return tl::unexpected(database.error());
    Shop shop(std::make_unique<Inside>(std::move(*database)));
    if (!name.empty()) {
      Transaction transaction(shop.inside_->database);
      shop.inside_->facts.set("name", name, shop.inside_->stamp());
      transaction.commit();
    }
    return shop;
  });
}

Result<Shop> Shop::open(const std::string& address) {
  return guarded([&]() -> Result<Shop> {
    auto database = Database::open(address);
    if (!database) return tl::unexpected(database.error());
    return Shop(std::make_unique<Inside>(std::move(*database)));
  });
}

Result<Shop> Shop::createDemo(const std::string& address, const Progress& progress) {
  return guarded([&]() -> Result<Shop> {
    auto shop = create(address);
    if (!shop) return shop;
    if (auto filled = fillDemo(*shop->inside_, progress); !filled) return tl::unexpected(filled.error());
    return shop;
  });
}

const std::string& Shop::address() const { return inside_->database.address(); }

std::string Shop::name() const { return inside_->facts.setting("name").value_or("Workshop"); }

bool Shop::readOnly() const { return inside_->database.readOnly(); }

Date Shop::today() const { return inside_->today(); }

bool Shop::isDemo() const { return inside_->facts.setting("demo_today").has_value(); }

Policy Shop::policy() const { return inside_->policy(); }

Result<void> Shop::setPolicy(const Policy& policy) {
  Problems problems;
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
  if (!problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<void> {
    Transaction transaction(inside_->database);
    const auto stamp = inside_->stamp();
    inside_->facts.set("interval_days", std::to_string(policy.intervalDays), stamp);
    inside_->facts.set("confidence", writeNumber(policy.confidence), stamp);
    inside_->facts.set("decision_rule", std::string(writeRule(policy.rule)), stamp);
    inside_->facts.set("part_limit_risk", writeNumber(policy.partLimitRisk), stamp);
    transaction.commit();
    return {};
  });
}

}  // namespace steadyturn
