#include "raw_shop.h"

#include <stdexcept>

namespace steadyturn {

RawShop::RawShop(const std::string& path) {
  sqlite3* opened = nullptr;
  const int outcome = sqlite3_open_v2(path.c_str(), &opened, SQLITE_OPEN_READWRITE, nullptr);
  database_.reset(opened);
  if (outcome != SQLITE_OK) throw std::runtime_error(path);
  run("PRAGMA ignore_check_constraints = ON");
  run("PRAGMA synchronous = OFF");  // a copy that nobody will miss
  // All guards at once, as one who writes to the schema itself takes them away.
  run("PRAGMA writable_schema = ON");
  run("DELETE FROM sqlite_master WHERE type = 'trigger'");
  run("PRAGMA writable_schema = RESET");
  if (integer("SELECT COUNT(*) FROM sqlite_master WHERE type = 'trigger'") != 0) throw std::runtime_error(path);
}

bool RawShop::run(const std::string& sql) {
  return sqlite3_exec(database_.get(), sql.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK;
}

std::vector<std::optional<std::string>> RawShop::row(const std::string& sql) {
  std::vector<std::optional<std::string>> cells;
  const auto keep = [](void* into, int count, char** texts, char**) {
    for (int i = 0; i < count; ++i)
      static_cast<decltype(cells)*>(into)->push_back(texts[i] != nullptr ? std::optional<std::string>(texts[i])
                                                                         : std::nullopt);
    return 1;  // no further row
  };
  sqlite3_exec(database_.get(), sql.c_str(), keep, &cells, nullptr);
  if (cells.empty()) throw std::runtime_error(sql + ": " + sqlite3_errmsg(database_.get()));
  return cells;
}

std::vector<std::string> RawShop::column(const std::string& sql) {
  std::vector<std::string> values;
  const auto keep = [](void* into, int, char** texts, char**) {
    static_cast<decltype(values)*>(into)->emplace_back(texts[0] != nullptr ? texts[0] : "");
    return 0;
  };
  sqlite3_exec(database_.get(), sql.c_str(), keep, &values, nullptr);
  return values;
}

}  // namespace steadyturn
