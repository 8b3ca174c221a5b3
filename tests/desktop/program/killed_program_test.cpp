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
  // Types all but the first until the moment comes; when each reading's Enter had been sent.
  std::vector<qint64> typeUntil(qint64 moment, const QElapsedTimer& clock) {
    std::vector<qint64> entered;
    for (const QString& reading : readings.mid(1)) {
      for (const QChar letter : reading + "\n") {
        QTest::qWait(between);
        if (clock.elapsed() >= moment) return entered;
        press(letter == '\n' ? QStringLiteral("Return") : QString(letter));
      }
      entered.push_back(clock.elapsed());
    }
    return entered;
  }
  // The readings of the check that is stored when the program, started again, is told to go on and to save.
  QStringList afterRestart(const QString& shop) {
    const auto newest = [&shop] { return Shop::open(toText(shop))->newestChecks(1)->front(); };
    const auto before = newest().id;
    start({shop});
    // A button that answers to a shortcut is seen pressed for a moment; a slow start may miss a key.
    bool stored = false;
    for (int round = 0; round < 8 && !stored; ++round) {
      press("alt+p");  // Pick it up at the Bench
      QTest::qWait(300);
      press("alt+g");  // Go on with W11
      QTest::qWait(300);
      press("ctrl+s");
      stored = QTest::qWaitFor([&] { return newest().id > before; }, 700);
    }
    QStringList back;
    if (!stored) return back;
    for (const CheckPoint& point : newest().points) {
      for (const std::string& reading : point.readings) back << fromText(reading);
    }
    kill();
    return back;
  }
};

TEST_F(KilledProgram, offersEveryFinishedReadingAtTheNextStart) {
  const int kills =
      qEnvironmentVariableIsSet("STEADYTURN_KILLS") ? qEnvironmentVariableIntValue("STEADYTURN_KILLS") : 5;
  const auto seed = std::random_device{}();
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937 random(seed);
  std::uniform_int_distribution<qint64> moments(200, 3000);
  int finishedAll = 0;
  int backAll = 0;
  for (int number = 0; number < kills; ++number) {
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
    const std::vector<qint64> entered = typeUntil(moment, clock);
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
  std::printf("%d kills: %d finished readings, %d came back (with those entered just before the kill)\n", kills,
              finishedAll, backAll);
  EXPECT_GT(finishedAll, kills);  // the kills fell into the typing, not all of them right at its start
}

}  // namespace
}  // namespace steadyturn
