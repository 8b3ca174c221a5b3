#include "inside.h"
#include "shop_signing.h"
#include "writing.h"

namespace steadyturn {

namespace {

std::string hashOf(std::string_view bytes) { return writeHash(sha256(bytes)); }

}  // namespace

Result<IssuedReportEntry> recordIssue(Shop& shop, const PaperSubject& paper, const std::string& file,
                                      std::string_view bytes) {
  return guarded([&]() -> Result<IssuedReportEntry> {
    auto& inside = shop.inside();
    if (shop.readOnly() && shop.access() == Access::Work) {
      return refuse({.kind = ProblemKind::Unavailable,
                     .field = "shop",
                     .found = shop.address(),
                     .accepted = "a shop that can be written"});
    }
    Writing writing(inside, Act::IssuePaper);
    const auto stamp = writing.stamp();
    IssuedReportEntry issued{.report = {.subject = paper.what,
                                        .id = paper.id,
                                        .file = file,
                                        .sha256 = hashOf(bytes),
                                        .size = static_cast<std::int64_t>(bytes.size())},
                             .entry = 0,
                             .at = stamp.at,
                             .who = stamp.who};
    issued.entry = inside.issued.add(issued.report, stamp);
    writing.commit();
    return issued;
  });
}

Result<std::vector<IssuedReportEntry>> issuesOf(const Shop& shop, std::string_view bytes) {
  return guarded(
      [&]() -> Result<std::vector<IssuedReportEntry>> { return shop.inside().issued.withHash(hashOf(bytes)); });
}

}  // namespace steadyturn
