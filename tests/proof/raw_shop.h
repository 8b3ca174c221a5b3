// A shop's file in the hands of somebody who goes past the program: SQLite itself, without the guards.
#pragma once

#include <sqlite3.h>

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace steadyturn {

class RawShop {
 public:
  // Opens the file and takes every trigger away. Throws std::runtime_error.
  explicit RawShop(const std::string& path);
  // False where the engine refuses (a key that is taken).
  bool run(const std::string& sql);
  // The first row; NULL is no value. Throws std::runtime_error where there is none.
  std::vector<std::optional<std::string>> row(const std::string& sql);
  std::string text(const std::string& sql) { return row(sql).at(0).value_or(""); }
  std::int64_t integer(const std::string& sql) { return std::stoll(text(sql)); }
  std::vector<std::string> column(const std::string& sql);

 private:
  struct Close {
    void operator()(sqlite3* database) const { sqlite3_close(database); }
  };
  std::unique_ptr<sqlite3, Close> database_;
};

}  // namespace steadyturn
