// Where tools stand now, as their entries tell it: a tool begins with the status it was added with, its events change
// it, its row shows the last.
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "record_match.h"

namespace steadyturn {

class PresentStatus {
 public:
  void told(std::int64_t entry, std::string_view kind, std::string_view facts);
  void compare(Database& database, const ReportFault& report) const;

 private:
  struct Told {
    std::int64_t entry = 0;
    std::string status, reason;
  };
  std::map<std::string, Told> tools_;
};

}  // namespace steadyturn
