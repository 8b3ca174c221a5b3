#include "present_status.h"

#include <nlohmann/json.hpp>

#include "differences.h"

namespace steadyturn {

void PresentStatus::told(std::int64_t entry, std::string_view kind, std::string_view facts) {
  const bool added = kind == "tool";
  if (!added && kind != "tool_status") return;
  const auto read = Facts::parse(facts, nullptr, false);
  if (!read.is_object()) return;  // said already where the entry was read
  const auto text = [&](const char* key) {
    const auto fact = read.find(key);
    return fact != read.end() && fact->is_string() ? fact->get<std::string>() : std::string();
  };
  tools_[text(added ? "id" : "tool")] = {
      .entry = entry, .status = text("status"), .reason = text(added ? "status_reason" : "reason")};
}

void PresentStatus::compare(Database& database, const ReportFault& report) const {
  Statement rows(database, "SELECT id, status, status_reason FROM tool ORDER BY id");
  rows.run();
  while (rows.next()) {
    const auto told = tools_.find(rows.text(0));
    if (told == tools_.end()) continue;  // a tool without an entry is a fault of its own
    const auto& [entry, status, reason] = told->second;
    const auto how = differencesOf({{"status", rows.text(1)}, {"status_reason", rows.text(2)}},
                                   {{"status", status}, {"status_reason", reason}});
    if (!how.empty()) report(entry, "tool " + told->first + " differs: " + how);
  }
}

}  // namespace steadyturn
