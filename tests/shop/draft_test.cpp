// Nothing typed is lost: drafts through restarts, kills and recording.
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QTemporaryDir>
#include <array>
#include <chrono>
#include <random>
#include <thread>

#include "typed_draft.h"

namespace steadyturn {
namespace {

class Drafts : public testing::Test {
 protected:
  Drafts() : path(folder.filePath("shop.sqlite").toStdString()), shop(Shop::create(path).value()) {
    Tool tool;
    tool.id = "T";
    tool.kind = {ToolType::Setting, ToolClass::A};
    tool.minimum = 20;
    tool.maximum = 100;
    EXPECT_TRUE(shop.addTool(tool));
    tool.id = "U";
    EXPECT_TRUE(shop.addTool(tool));
    Reference reference;
    reference.id = "R";
    reference.expandedUncertaintyPercent = 0.4;
    EXPECT_TRUE(shop.addReference(reference));
  }

  std::vector<SavedDraft> drafts() const { return shop.drafts().value(); }

  QTemporaryDir folder;
  std::string path;
  Shop shop;
};

TEST_F(Drafts, ComeBackAsTypedAfterARestart) {
  auto draft = typedDraft(7);
  draft.phase = Phase::AsLeft;
  draft.unit = Unit::PoundForceFoot;
  draft.direction = Direction::Counterclockwise;
  draft.points.back().readings.back() = "2";      // half a number
  draft.points.back().readings.emplace_back("");  // and an empty cell
  ASSERT_TRUE(shop.saveDraft(draft));
  const auto reopened = Shop::open(path).value();
  const auto found = reopened.drafts().value();
  ASSERT_EQ(found.size(), 1u);
  EXPECT_TRUE(sameTyping(found.front().draft, draft));
  EXPECT_EQ(found.front().savedAt.size(), std::string("2026-03-14T09:26:53.589Z").size());
}

TEST_F(Drafts, AreOneATool) {
  ASSERT_TRUE(shop.saveDraft(typedDraft(3)));
  ASSERT_TRUE(shop.saveDraft(typedDraft(4)));
  auto other = typedDraft(1);
  other.tool = "U";
  ASSERT_TRUE(shop.saveDraft(other));
  ASSERT_EQ(drafts().size(), 2u);
  ASSERT_TRUE(shop.discardDraft("U"));
  ASSERT_TRUE(shop.discardDraft("U"));
  ASSERT_EQ(drafts().size(), 1u);
  EXPECT_EQ(readingsIn(drafts().front().draft), 4);
}

TEST_F(Drafts, OfAnUnknownToolAreRefused) {
  auto draft = typedDraft(3);
  draft.tool = "X";
  const auto saved = shop.saveDraft(draft);
  ASSERT_FALSE(saved);
  EXPECT_EQ(saved.error().front().kind, ProblemKind::NotFound);
}

TEST_F(Drafts, KeepTheReadingsBesideABadByte) {
  auto draft = typedDraft(3);
  draft.note = "caf\xE9";
  ASSERT_TRUE(shop.saveDraft(draft));
  EXPECT_EQ(readingsIn(drafts().front().draft), 3);
}

TEST_F(Drafts, GoWhenTheCheckIsRecordedAndOnlyThen) {
  CheckDraft draft;
  draft.tool = "T";
  draft.reference = "R";
  draft.date = Date(std::chrono::days(20514));
  draft.points = {{.target = "20", .readings = {"20", "20.1", "x"}}};
  auto other = draft;
  other.tool = "U";
  ASSERT_TRUE(shop.saveDraft(draft));
  ASSERT_TRUE(shop.saveDraft(other));
  EXPECT_FALSE(shop.recordCheck(draft));
  EXPECT_EQ(drafts().size(), 2u);
  draft.points.front().readings.back() = "20.2";
  ASSERT_TRUE(shop.recordCheck(draft));
  ASSERT_EQ(drafts().size(), 1u);
  EXPECT_EQ(drafts().front().draft.tool, "U");
  // A second record of that day is refused and leaves the draft alone.
  ASSERT_TRUE(shop.saveDraft(draft));
  EXPECT_FALSE(shop.recordCheck(draft));
  EXPECT_EQ(drafts().size(), 2u);
}

BenchSetupDraft halfASetup() {
  BenchSetupDraft draft;
  draft.tool = "T";
  draft.reference = "R";
  draft.by = "Núria";
  draft.date = Date(std::chrono::days(20514));
  draft.unit = Unit::PoundForceFoot;
  draft.target = "14.75";
  draft.readings[0] = {{"14.7", "14.8", "", "14.", ""}, {"", "", "", "", ""}};
  draft.typedSpans[3] = "0.";
  draft.basis = "the \"maker\"";
  return draft;
}

TEST_F(Drafts, OfASetupComeBackAsTypedBesideTheChecks) {
  const auto typed = halfASetup();
  ASSERT_TRUE(shop.saveSetupDraft(typed));
  ASSERT_TRUE(shop.saveDraft(typedDraft(2)));
  const auto reopened = Shop::open(path).value();
  ASSERT_EQ(reopened.drafts()->size(), 1u);
  const auto found = reopened.setupDrafts().value();
  ASSERT_EQ(found.size(), 1u);
  const auto& back = found.front();
  EXPECT_EQ(back.tool, typed.tool);
  EXPECT_EQ(back.reference, typed.reference);
  EXPECT_EQ(back.by, typed.by);
  EXPECT_EQ(back.date, typed.date);
  EXPECT_EQ(back.unit, typed.unit);
  EXPECT_EQ(back.target, typed.target);
  EXPECT_EQ(back.readings, typed.readings);
  EXPECT_EQ(back.typedSpans, typed.typedSpans);
  EXPECT_EQ(back.basis, typed.basis);
  ASSERT_TRUE(shop.discardSetupDraft("T"));
  ASSERT_TRUE(shop.discardSetupDraft("T"));
  EXPECT_TRUE(shop.setupDrafts()->empty());
  EXPECT_EQ(drafts().size(), 1u);
}

TEST_F(Drafts, OfASetupGoWhenItIsRecordedAndOnlyThen) {
  BenchSetupDraft draft;
  draft.tool = "T";
  draft.date = Date(std::chrono::days(20514));
  draft.target = "20";
  draft.typedSpans[1] = "0.3 x";
  draft.basis = "the maker's data sheet";
  ASSERT_TRUE(shop.saveSetupDraft(draft));
  ASSERT_TRUE(shop.saveDraft(typedDraft(2)));
  const auto refused = shop.recordBenchSetup(draft);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().front().field, "drive");
  EXPECT_EQ(shop.setupDrafts()->size(), 1u);
  draft.typedSpans[1] = "0.3";
  ASSERT_TRUE(shop.recordBenchSetup(draft));
  EXPECT_TRUE(shop.setupDrafts()->empty());
  EXPECT_EQ(drafts().size(), 1u);
}

// Runs the typist, kills it after `wait`, and returns how many saves it had answered.
int savesBeforeKill(const std::string& shop, std::chrono::microseconds wait) {
  std::array<int, 2> ends{};
  if (pipe(ends.data()) != 0) return -1;
  const pid_t child = fork();
  if (child == 0) {
    dup2(ends[1], STDOUT_FILENO);
    close(ends[0]);
    close(ends[1]);
    execl(DRAFT_TYPIST, DRAFT_TYPIST, shop.c_str(), static_cast<char*>(nullptr));
    _exit(127);
  }
  close(ends[1]);
  char saved = 0;
  int count = 0;
  // The clock starts with the first save: how long a program takes to start says nothing about typing.
  if (read(ends[0], &saved, 1) == 1) ++count;
  std::this_thread::sleep_for(wait);
  kill(child, SIGKILL);
  int status = 0;
  waitpid(child, &status, 0);
  EXPECT_TRUE(WIFSIGNALED(status)) << "the typist gave up by itself, with " << status;
  while (read(ends[0], &saved, 1) == 1) ++count;
  close(ends[0]);
  return count;
}

TEST_F(Drafts, SurviveAHundredKills) {
  const auto seed = std::random_device{}();
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937 random(seed);
  std::uniform_int_distribution<int> microseconds(0, 60000);
  int all = 0;
  for (int kill = 0; kill < 100; ++kill) {
    ASSERT_TRUE(shop.discardDraft("T"));
    const int answered = savesBeforeKill(path, std::chrono::microseconds(microseconds(random)));
    ASSERT_GE(answered, 1);
    all += answered;
    const auto after = Shop::open(path).value().drafts();
    ASSERT_TRUE(after) << after.error().front().accepted;
    ASSERT_EQ(after->size(), 1u);
    const auto& draft = after->front().draft;
    // The kill may fall between a save and its answer.
    ASSERT_GE(readingsIn(draft), answered);
    ASSERT_LE(readingsIn(draft), answered + 1);
    ASSERT_TRUE(sameTyping(draft, typedDraft(readingsIn(draft))));
  }
  // The kills fell into the typing, not all of them right at its start.
  EXPECT_GT(all, 120);
}

}  // namespace
}  // namespace steadyturn
