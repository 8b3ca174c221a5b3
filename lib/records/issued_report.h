// A paper that was handed out: what it is about and the hash of its bytes, by which a file is known again.
#pragma once

#include <cstdint>
#include <string>

namespace steadyturn {

struct IssuedReport {
  std::string subject;  // "certificate", "history", "job", "due", "register", "labels" …
  std::string id;       // of the check, tool or job; "" for papers about many tools
  std::string file;     // what sort of file: "pdf", "csv", "xml" …
  std::string sha256;   // of its bytes, 64 hexadecimal digits
  std::int64_t size = 0;
};

// With where the ledger tells of it.
struct IssuedReportEntry {
  IssuedReport report;
  std::int64_t entry = 0;
  std::string at;   // UTC
  std::string who;  // the account; "" in an open shop
};

}  // namespace steadyturn
