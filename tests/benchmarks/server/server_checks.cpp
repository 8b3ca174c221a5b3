// How many whole checks a second one bench records on a PostgreSQL server that waits for its disk:
// `Shop::recordCheck`, which also looks up what the check needs, evaluates it and asks whether it may, beside
// PostgreSQL's own pgbench with a script that writes the same rows into the same tables with the same guards, and
// nothing else.
//
//   SERVER_OPTIONS="-c fsync=on" tests/with-server build/release/bin/server_checks [CHECKS] [ROUNDS]   (200, 5)
//
// Each has a database of its own and they write in turns; all rounds count.
#include <fmt/core.h>

#include <QCoreApplication>
#include <QFile>
#include <QProcess>
#include <QTemporaryDir>
#include <chrono>
#include <cstdlib>
#include <stdexcept>

#include "connection.h"
#include "crash_shop.h"
#include "statement.h"
#include "test_server.h"

namespace {

using namespace steadyturn;

Shop shopWithOneCheck(const std::string& address) {
  auto shop = Shop::create(address, "Benchmark").value();
  fill(shop);
  if (!shop.recordCheck(checkOfDay(0))) throw std::runtime_error("no check to copy");
  return shop;
}

// "'a', 2.5, NULL" of the first row's columns behind the first one, which is its number.
std::string restOfRow(Database& database, const std::string& sql) {
  Statement row(database, sql);
  row.run().next();
  std::string rest;
  for (int column = 1; column < row.columns(); ++column) {
    auto value = row.string(column).replace('\'', QLatin1String("''")).toStdString();
    if (row.value(column).metaType().id() == QMetaType::QByteArray)
      value = "\\x" + row.bytes(column).toHex().toStdString();
    rest += row.isNull(column) ? ", NULL" : ", '" + value + "'";
  }
  return rest;
}

// Writes the shop's one check again and again, each time under the next numbers.
std::string scriptFor(const std::string& address) {
  auto database = Database::open(address).value();
  const auto entry = restOfRow(database, "SELECT * FROM ledger ORDER BY seq DESC LIMIT 1");
  const auto record = restOfRow(database, "SELECT * FROM check_record LIMIT 1");
  std::string points;
  for (const char* position : {"0", "1", "2"}) {
    points +=
        fmt::format("{}(:id{})", points.empty() ? "" : ", ",
                    restOfRow(database, fmt::format("SELECT * FROM check_point WHERE position = {}", position)));
  }
  return fmt::format(
      "BEGIN;\n"
      "INSERT INTO steadyturn.ledger SELECT MAX(seq) + 1{} FROM steadyturn.ledger RETURNING seq \\gset\n"
      "INSERT INTO steadyturn.check_record SELECT MAX(id) + 1{} FROM steadyturn.check_record RETURNING id \\gset\n"
      "INSERT INTO steadyturn.check_point VALUES {};\n"
      "COMMIT;\n",
      entry, record, points);
}

double secondsOfOurs(Shop& shop, int first, int checks) {
  const auto start = std::chrono::steady_clock::now();
  for (int i = first; i < first + checks; ++i) {
    if (!shop.recordCheck(checkOfDay(i))) throw std::runtime_error("a check was refused");
  }
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

double secondsOfPgbench(const std::string& address, const QString& script, int checks) {
  const auto programs = qEnvironmentVariable("POSTGRES_PROGRAMS", QStringLiteral("/usr/lib/postgresql/15/bin"));
  QProcess pgbench;
  pgbench.start(programs + QStringLiteral("/pgbench"),
                {QStringLiteral("-n"), QStringLiteral("-f"), script, QStringLiteral("-t"), QString::number(checks),
                 QString::fromStdString(address)});
  pgbench.waitForFinished(-1);
  const QString said = QString::fromUtf8(pgbench.readAllStandardOutput());
  const auto at = said.indexOf(QLatin1String("tps = "));
  if (pgbench.exitCode() != 0 || at < 0) throw std::runtime_error(pgbench.readAllStandardError().toStdString());
  return checks / said.mid(at + 6).section(QLatin1Char(' '), 0, 0).toDouble();
}

void compare(int checks, int rounds) {
  const auto ours = freshDatabase(), theirs = freshDatabase();
  auto shop = shopWithOneCheck(ours);
  { const auto other = shopWithOneCheck(theirs); }
  const QTemporaryDir folder;
  QFile script(folder.filePath(QStringLiteral("checks.sql")));
  if (!script.open(QIODevice::WriteOnly)) throw std::runtime_error("no folder for the script");
  script.write(QByteArray::fromStdString(scriptFor(theirs)));
  script.close();
  double a = 0, b = 0;
  for (int round = 0; round < rounds; ++round) {
    a += secondsOfOurs(shop, 1 + round * checks, checks);
    b += secondsOfPgbench(theirs, script.fileName(), checks);
  }
  const double all = checks * rounds;
  fmt::print("recorded checks a second on a server: {:.0f} = {:.2f} x pgbench's {:.0f}\n", all / a, b / a, all / b);
}

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  if (!hasTestServer()) {
    fmt::print(stderr, "no server: run it by tests/with-server\n");
    return 64;
  }
  compare(argc > 1 ? std::atoi(argv[1]) : 200, argc > 2 ? std::atoi(argv[2]) : 5);
}
