// Makes the small shop that is kept for every released version: `keep_shop FILE`. Run once for a release; what it
// made then stays as it is, so that every later program is tried on it (kept_shops_test.cpp).
#include <QCoreApplication>
#include <cstdio>

#include "draft_table.h"
#include "sample_records.h"
#include "shop_fixture.h"

int main(int argc, char** argv) {
  using namespace steadyturn;
  QCoreApplication application(argc, argv);
  auto made = Database::create(argc == 2 ? argv[1] : "");
  if (!made) {
    std::fprintf(stderr, "keep_shop FILE: %s\n", made.error().front().accepted.c_str());
    return 1;
  }
  OpenShop shop(std::move(*made));
  Transaction transaction(shop.database);
  shop.shop.set("name", "Depot", stamp);
  for (const auto& tool : {fullTool(), bareTool()}) shop.tools.add(tool, stamp);
  shop.tools.setStatus("TW-07", ToolStatus::InService, "repaired", day(2026, 2, 1), stamp);
  for (const auto& reference : {fullReference(), bareReference()}) shop.references.add(reference, stamp);
  for (const auto& fastener : {fullFastener(), bareFastener()}) shop.fasteners.add(fastener, stamp);
  auto correction = fullCheck();
  correction.corrects = shop.checks.add(fullCheck(), stamp);
  correction.correctionReason = "read in the wrong unit";
  shop.checks.add(correction, stamp);
  shop.checks.add(bareCheck(), stamp);
  for (const auto& tightening : {fullTightening(), bareTightening()}) shop.tightenings.add(tightening, stamp);
  shop.shop.rememberFile("checks", "ab12", 3, stamp);
  DraftTable(shop.database).save({.tool = "TW-07", .what = DraftOf::Check, .draft = "{}", .savedAt = stamp.at});
  transaction.commit();
}
