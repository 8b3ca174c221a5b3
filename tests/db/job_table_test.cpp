#include "job_table.h"

#include <gmock/gmock.h>

#include "approval_table.h"
#include "sample_records.h"
#include "shop_fixture.h"

namespace steadyturn {
namespace {

using testing::ElementsAre;

class Jobs : public ShopTest {
 protected:
  static JobEvent opened(const char* job) {
    return {.kind = JobEventKind::Opened,
            .job = job,
            .vehicle = "sweeper 3",
            .date = day(2026, 3, 2),
            .service = "oil",
            .fasteners = {"A", "B \"x\""},
            .by = "núria",
            .note = {}};
  }
};

TEST_F(Jobs, AreOpenedAndClosedOnce) {
  write([](OpenShop& to) { JobTable(to.database, to.ledger).add(opened("J1"), stamp); });
  write([](OpenShop& to) { JobTable(to.database, to.ledger).add(opened("J2"), stamp); });
  JobTable jobs(shop().database, shop().ledger);
  const auto job = jobs.find("J1");
  ASSERT_TRUE(job && job->opened);
  EXPECT_EQ(job->vehicle, "sweeper 3");
  EXPECT_THAT(job->opened->fasteners, ElementsAre("A", "B \"x\""));
  EXPECT_EQ(job->opened->by, "núria");
  EXPECT_EQ(jobs.open().size(), 2U);
  write([](OpenShop& to) {
    auto event = opened("J1");
    event.kind = JobEventKind::Closed;
    event.note = "done";
    JobTable(to.database, to.ledger).add(event, stamp);
  });
  EXPECT_EQ(jobs.find("J1")->closed->note, "done");
  EXPECT_EQ(jobs.open().size(), 1U);
  EXPECT_THROW(write([](OpenShop& to) { JobTable(to.database, to.ledger).add(opened("J1"), stamp); }), StoreError);
  EXPECT_FALSE(jobs.find("J9"));
}

TEST_F(Jobs, ALaterListTakesTheServicesPlace) {
  for (const auto& list : {std::vector<std::string>{"A"}, std::vector<std::string>{"B", "A"}}) {
    write([&](OpenShop& to) {
      JobTable(to.database, to.ledger).setService({.name = "oil", .fasteners = list}, stamp);
    });
  }
  JobTable jobs(shop().database, shop().ledger);
  ASSERT_EQ(jobs.services().size(), 1U);
  EXPECT_THAT(jobs.service("oil")->fasteners, ElementsAre("B", "A"));
  EXPECT_FALSE(jobs.service("wheels"));
}

TEST_F(Jobs, ARevisionIsApprovedOnce) {
  write([](OpenShop& to) { to.fasteners.add(fullFastener(), stamp); });
  const auto approve = [](OpenShop& to) {
    ApprovalTable(to.database, to.ledger).add(fullFastener(), "petra", day(2026, 3, 3), stamp);
  };
  write(approve);
  EXPECT_EQ(shop().fasteners.find(fullFastener().id)->approvedBy, "petra");
  EXPECT_EQ(shop().fasteners.find(fullFastener().id)->approvedOn, day(2026, 3, 3));
  EXPECT_THROW(write(approve), StoreError);
}

}  // namespace
}  // namespace steadyturn
