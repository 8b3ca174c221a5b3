// Kills the real program at a random moment of typing and starts it again: every finished reading comes back.
//
// STEADYTURN_KILLS says how often (5 when it says nothing; 100 is the figure by hand).
#include <QDir>
#include <QElapsedTimer>
#include <cstdio>
#include <random>

#include "real_program.h"
#include "text.h"

namespace steadyturn {
namespace {

// Every text is its own, so that a lost or a swapped one shows; and each beginning of one is a number too, so that
// what stood half typed can be saved with the rest.
const QStringList readings{"41",  "42",  "39",  "38",  "43",  "121", "122", "119",
                           "118", "123", "201", "202", "199", "198", "203"};
constexpr int between = 20;  // milliseconds from key to key, beside what it takes to send one
// What a person's Enter takes to be handled, with a busy machine's share: a reading entered this long before the kill
// is a finished one. Later ones may come back or not.
constexpr qint64 handledWithin = 500;  // milliseconds

class KilledProgram : public RealProgram {
 protected:
  // Types until the moment comes; when each reading's Enter had been sent.
  std::vector<qint64> typeUntil(const QStringList& texts, qint64 moment, const QElapsedTimer& clock) {
    std::vector<qint64> entered;
    for (const QString& reading : texts) {
      for (const QChar letter : reading + "\n") {
        QTest::qWait(between);
        if (clock.elapsed() >= moment) return entered;
        press(letter == '\n' ? QStringLiteral("Return") : QString(letter));
      }
      entered.push_back(clock.elapsed());
    }
    return entered;
  }
  // What a person does at the next start: the shop is open until `done`, the answers seen pressed for a moment; a
  // slow start may miss a key.
  bool answerUntil(const QStringList& answers, const std::function<bool()>& done) {
    for (int round = 0; round < 8; ++round) {
      for (const QString& answer : answers) {
        press(answer);
        QTest::qWait(300);
      }
      if (QTest::qWaitFor(done, 700)) return true;
    }
    return false;
  }
  // The readings of the check that is stored when the program, started again, is told to go on and to save.
  QStringList afterRestart(const QString& shop) {
    const auto newest = [&shop] { return Shop::open(toText(shop))->newestChecks(1)->front(); };
    const auto before = newest().id;
    start({shop});
    QStringList back;
    // Pick it up at the Bench, go on with W11, save
    if (!answerUntil({"alt+p", "alt+g", "ctrl+s"}, [&] { return newest().id > before; })) return back;
    for (const CheckPoint& point : newest().points) {
      for (const std::string& reading : point.readings) back << fromText(reading);
    }
    kill();
    return back;
  }
};

int kills() {
  return qEnvironmentVariableIsSet("STEADYTURN_KILLS") ? qEnvironmentVariableIntValue("STEADYTURN_KILLS") : 5;
}

TEST_F(KilledProgram, offersEveryFinishedReadingAtTheNextStart) {
  const auto seed = std::random_device{}();
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937 random(seed);
  std::uniform_int_distribution<qint64> moments(200, 3000);
  int finishedAll = 0;
  int backAll = 0;
  for (int number = 0; number < kills(); ++number) {
    const QString shop = file(QStringLiteral("killed-%1.db").arg(number));
    ASSERT_TRUE(QFile::copy(shopFile(), shop));
    QDir(file("config")).removeRecursively();  // the reference of the last check would be taken up again
    start({shop});
    press("ctrl+1");
    type("W11\nR2\n" + readings.front() + "\n");
    // A busy machine starts a program slowly: typing is timed from when it answers.
    ASSERT_TRUE(wait([&shop] { return !Shop::open(toText(shop))->drafts()->empty(); }))
        << program_.readAll().toStdString();
    QElapsedTimer clock;
    clock.start();
    const qint64 moment = moments(random);
    const std::vector<qint64> entered = typeUntil(readings.mid(1), moment, clock);
    while (clock.elapsed() < moment) QTest::qWait(1);
    kill();
    const qint64 killed = clock.elapsed();
    const auto finished = 1 + std::count_if(entered.begin(), entered.end(),
                                            [killed](qint64 at) { return killed - at >= handledWithin; });
    const QStringList back = afterRestart(shop);
    ASSERT_GE(back.size(), finished) << "kill " << number << " after " << killed << " ms: " << toText(back.join(' '));
    for (qsizetype i = 0; i < finished; ++i) EXPECT_EQ(back[i], readings[i]) << "kill " << number;
    for (qsizetype i = finished; i < back.size(); ++i) EXPECT_TRUE(readings[i].startsWith(back[i]));
    finishedAll += static_cast<int>(finished);
    backAll += static_cast<int>(back.size());
  }
  std::printf("%d kills: %d finished readings, %d came back (with those entered just before the kill)\n", kills(),
              finishedAll, backAll);
  EXPECT_GT(finishedAll, kills());  // the kills fell into the typing, not all of them right at its start
}

// The four series of five that a bench set-up of W11 begins with (40 to 200 N·m, so read at 40).
const QStringList runs{"401", "402", "403", "404", "405", "411", "412", "413", "414", "415",
                       "421", "422", "423", "424", "425", "431", "432", "433", "434", "435"};

TEST_F(KilledProgram, offersASetUpsFinishedReadingsAtTheNextStart) {
  const auto seed = std::random_device{}();
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937 random(seed);
  std::uniform_int_distribution<qint64> moments(200, 3000);
  int finishedAll = 0;
  for (int number = 0; number < kills(); ++number) {
    const QString shop = file(QStringLiteral("set-up-%1.db").arg(number));
    ASSERT_TRUE(QFile::copy(shopFile(), shop));
    QDir(file("config")).removeRecursively();
    start({shop});
    press("ctrl+1");
    type("W11\nR2\n");
    QTest::qWait(handledWithin);
    press("alt+u");  // Bench set-up…
    QTest::qWait(handledWithin);
    type(runs.front() + "\n");
    const auto kept = [&shop] { return Shop::open(toText(shop))->setupDrafts().value(); };
    ASSERT_TRUE(wait([&kept] { return !kept().empty(); })) << program_.readAll().toStdString();
    QElapsedTimer clock;
    clock.start();
    const qint64 moment = moments(random);
    const std::vector<qint64> entered = typeUntil(runs.mid(1), moment, clock);
    while (clock.elapsed() < moment) QTest::qWait(1);
    kill();
    const qint64 killed = clock.elapsed();
    const auto finished = 1 + std::count_if(entered.begin(), entered.end(),
                                            [killed](qint64 at) { return killed - at >= handledWithin; });
    // What came back is finished by hand and saved.
    const std::vector<BenchSetupDraft> drafts = kept();
    ASSERT_EQ(drafts.size(), 1u);
    qsizetype back = 0;
    for (const auto& series : drafts.front().readings[0]) {
      for (const std::string& text : series) back += text.empty() ? 0 : 1;
    }
    ASSERT_GE(back, finished) << "kill " << number << " after " << killed << " ms";
    start({shop});
    // Pick it up at the Bench, go on with the set-up: the next reading then goes where the last one ended. Each
    // answer once: a second one would be typed into the cell.
    for (const char* answer : {"alt+p", "alt+g"}) {
      QTest::qWait(lookUp);
      press(answer);
    }
    QTest::qWait(lookUp);
    type(runs.mid(back).join('\n') + "\n");
    const auto saved = [&shop] { return Shop::open(toText(shop))->benchSetups().value(); };
    ASSERT_TRUE(answerUntil({"alt+u"}, [&saved] { return !saved().empty(); })) << "kill " << number;
    EXPECT_TRUE(kept().empty());
    QStringList stored;
    const BenchSetup setup = saved().front();
    for (const auto& series : setup.readingsOf(SetupRun::Reproducibility)) {
      for (const std::string& text : series) stored << fromText(text);
    }
    ASSERT_EQ(stored.size(), runs.size());
    for (qsizetype i = 0; i < runs.size(); ++i) {
      if (i < finished || i >= back)
        EXPECT_EQ(stored[i], runs[i]) << "kill " << number;
      else
        EXPECT_TRUE(runs[i].startsWith(stored[i])) << "kill " << number;
    }
    kill();
    finishedAll += static_cast<int>(finished);
  }
  std::printf("%d kills: %d finished readings of set-ups, all came back\n", kills(), finishedAll);
  EXPECT_GT(finishedAll, kills());
}

}  // namespace
}  // namespace steadyturn
