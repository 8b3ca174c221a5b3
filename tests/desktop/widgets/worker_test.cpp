#include "worker.h"

#include <QFile>
#include <QTemporaryDir>
#include <QThread>

#include "demo_shop.h"
#include "keys.h"

namespace steadyturn {
namespace {

using WorkerOnShop = DemoShop;

TEST_F(WorkerOnShop, worksOnAnotherThreadAndAnswersOnThisOne) {
  const Shop shop = open();
  Worker worker([&shop] { return shop.session(); });
  QThread* const here = QThread::currentThread();
  QThread* worked = nullptr;
  QThread* answered = nullptr;
  std::size_t tools = 0;
  worker.run<std::size_t>(
      [&worked](Shop& other, const Progress&) -> Result<std::size_t> {
        worked = QThread::currentThread();
        return other.tools()->size();
      },
      [&](Result<std::size_t> count) {
        answered = QThread::currentThread();
        tools = *count;
      });
  EXPECT_TRUE(worker.busy());
  ASSERT_TRUE(wait([&] { return answered != nullptr; }));
  EXPECT_NE(worked, here);
  EXPECT_EQ(answered, here);
  EXPECT_EQ(tools, open().tools()->size());
  EXPECT_FALSE(worker.busy());
}

TEST(Worker, aDroppedJobNeverAnswers) {
  Worker worker;
  bool first = false;
  bool second = false;
  const Ticket ticket =
      worker.start<int>([](const Progress&) -> Result<int> { return 1; }, [&first](Result<int>) { first = true; });
  ticket->drop();
  worker.start<int>([](const Progress&) -> Result<int> { return 2; }, [&second](Result<int>) { second = true; });
  ASSERT_TRUE(wait([&] { return second; }));
  EXPECT_FALSE(first);
}

TEST(Worker, aCancelledJobStopsAndSaysSo) {
  Worker worker;
  std::optional<Result<int>> answer;
  std::atomic<bool> begun{false};
  const Ticket ticket = worker.start<int>(
      [&begun](const Progress& progress) -> Result<int> {
        begun = true;
        while (progress(0.5)) QThread::msleep(1);
        return refuse({.kind = ProblemKind::Cancelled, .field = {}, .found = {}, .accepted = {}});
      },
      [&answer](Result<int> result) { answer = std::move(result); });
  ASSERT_TRUE(wait([&] { return begun.load(); }));
  ticket->cancel();
  ASSERT_TRUE(wait([&] { return answer.has_value(); }));
  ASSERT_FALSE(*answer);
  EXPECT_EQ(answer->error().front().kind, ProblemKind::Cancelled);
}

TEST(Worker, anExceptionBecomesAProblem) {
  Worker worker;
  std::optional<Result<int>> answer;
  worker.start<int>([](const Progress&) -> Result<int> { throw std::runtime_error("the disk is gone"); },
                    [&answer](Result<int> result) { answer = std::move(result); });
  ASSERT_TRUE(wait([&] { return answer.has_value(); }));
  ASSERT_FALSE(*answer);
  EXPECT_EQ(answer->error().front().accepted, "the disk is gone");
}

TEST(Worker, goingAwayStopsWhatRuns) {
  std::atomic<bool> stopped{false};
  {
    Worker worker;
    std::atomic<bool> begun{false};
    worker.start<int>(
        [&](const Progress& progress) -> Result<int> {
          begun = true;
          while (progress(0)) QThread::msleep(1);
          stopped = true;
          return 0;
        },
        [](Result<int>) { ADD_FAILURE() << "nobody is there to be told"; });
    ASSERT_TRUE(wait([&] { return begun.load(); }));
  }
  EXPECT_TRUE(stopped);
}

TEST(Worker, aShopThatIsNotThereIsAProblem) {
  QTemporaryDir folder;
  const QString file = folder.filePath(QStringLiteral("gone.db"));
  const Session session = Shop::create(file.toStdString())->session();
  ASSERT_TRUE(QFile::remove(file));
  Worker worker([&session] { return session; });
  std::optional<Result<int>> answer;
  worker.run<int>([](Shop&, const Progress&) -> Result<int> { return 1; },
                  [&answer](Result<int> result) { answer = std::move(result); });
  ASSERT_TRUE(wait([&] { return answer.has_value(); }));
  EXPECT_FALSE(*answer);
}

}  // namespace
}  // namespace steadyturn
