// Which tools the shop itself says are alike: a setting a tool, so the ledger tells who said so and when.
#include "inside.h"
#include "shop_fleet.h"
#include "validate.h"
#include "writing.h"

namespace steadyturn {

Result<void> nameToolGroup(Shop& shop, const std::string& tool, const std::string& name) {
  Problems problems;
  checkText(problems, "name", name);
  if (!problems.empty()) return tl::unexpected(problems);
  if (const auto found = shop.tool(tool); !found) return tl::unexpected(found.error());
  return guarded([&]() -> Result<void> {
    auto& inside = shop.inside();
    Writing writing(inside, Act::GroupTool);
    const auto setting = toolGroupSetting + tool;
    if (inside.facts.setting(setting).value_or("") == name) return {};
    inside.facts.set(setting, name, writing.stamp());
    writing.commit();
    return {};
  });
}

Result<std::map<std::string, std::string>> toolGroups(const Shop& shop) {
  return guarded([&]() -> Result<std::map<std::string, std::string>> { return namedGroups(shop.inside().facts); });
}

}  // namespace steadyturn
