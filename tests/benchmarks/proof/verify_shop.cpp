// What proving a shop of about 1,000,000 readings costs, beside what nothing that reads it all can avoid: `sha256sum`
// over the exported ledger and one full read of every table. Prints the ratio; the goal is at most 4.
//
//   verify_shop [TOOLS] [ROUNDS]      (1,000 tools with 66 checks each and 3 rounds unless told otherwise)
#include <fmt/format.h>
#include <sqlite3.h>

#include <QCoreApplication>
#include <QTemporaryDir>
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <fstream>
#include <memory>
#include <stdexcept>
#include <vector>

#include "large_shop.h"
#include "shop_proof.h"

namespace {

using namespace steadyturn;

template <typename Action>
double seconds(Action&& action) {
  const auto start = std::chrono::steady_clock::now();
  action();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

struct Close {
  void operator()(sqlite3* database) const { sqlite3_close(database); }
};

// Steps through every row and looks at every value.
class PlainReader {
 public:
  explicit PlainReader(const std::string& path) {
    sqlite3* opened = nullptr;
    if (sqlite3_open_v2(path.c_str(), &opened, SQLITE_OPEN_READONLY, nullptr) != SQLITE_OK)
      throw std::runtime_error(path);
    database_.reset(opened);
  }
  template <typename See>
  void read(const std::string& sql, See&& see) {
    sqlite3_stmt* statement = nullptr;
    if (sqlite3_prepare_v2(database_.get(), sql.c_str(), -1, &statement, nullptr) != SQLITE_OK)
      throw std::runtime_error(sql);
    while (sqlite3_step(statement) == SQLITE_ROW) {
      for (int column = 0; column < sqlite3_column_count(statement); ++column) {
        const auto* bytes = static_cast<const char*>(sqlite3_column_blob(statement, column));
        see(std::string_view(bytes == nullptr ? "" : bytes,
                             static_cast<std::size_t>(sqlite3_column_bytes(statement, column))));
      }
    }
    sqlite3_finalize(statement);
  }

 private:
  std::unique_ptr<sqlite3, Close> database_;
};

double readAll(PlainReader& reader) {
  return seconds([&] {
    std::size_t bytes = 0;
    for (const auto* table : {"ledger", "tool", "check_record", "check_point"})
      reader.read(std::string("SELECT * FROM ") + table, [&](std::string_view value) { bytes += value.size(); });
    if (bytes == 0) throw std::runtime_error("nothing was read");
  });
}

double sha256sum(const std::string& file) {
  const auto command = fmt::format("sha256sum '{}' > /dev/null", file);
  return seconds([&] {
    if (std::system(command.c_str()) != 0) throw std::runtime_error("sha256sum failed");
  });
}

void compare(int tools, int rounds) {
  QTemporaryDir folder;
  const auto in = folder.path().toStdString();
  const auto shop = makeLargeShop(in, "shop", tools, 66);
  PlainReader reader(shop.address());
  const auto exported = in + "/ledger";
  {
    std::ofstream out(exported, std::ios::binary);
    reader.read("SELECT entry FROM ledger ORDER BY seq", [&](std::string_view entry) { out << entry << '\n'; });
  }
  double plain = 1e9, ours = 1e9;
  for (int round = 0; round < rounds; ++round) {
    const double hashing = sha256sum(exported), reading = readAll(reader);
    const double proving = seconds([&] {
      if (!verifyShop(shop).value().intact()) throw std::runtime_error("the shop is not intact");
    });
    fmt::print("sha256sum {:.2f} s, full read {:.2f} s, verify {:.2f} s\n", hashing, reading, proving);
    plain = std::min(plain, hashing + reading);
    ours = std::min(ours, proving);
  }
  fmt::print("verify of {} readings: {:.2f} s = {:.2f} x sha256sum and one full read ({:.2f} s)\n", tools * 66 * 15,
             ours, ours / plain, plain);
}

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  compare(argc > 1 ? std::atoi(argv[1]) : 1000, argc > 2 ? std::atoi(argv[2]) : 3);
}
