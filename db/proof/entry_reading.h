// The ledger's entries one after the other, each held against its own hash and the columns beside it.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "ledger.h"
#include "merkle.h"
#include "record_match.h"

namespace steadyturn {

struct EntryRead {
  std::int64_t sequence = 0;
  std::string kind;
  std::string_view facts;  // as they stand in the entry's bytes, till the next one is read
  Hash leaf{};             // hashed again from the bytes
};

class EntryReading {
 public:
  EntryReading(Database& database, ReportFault report);
  // Nothing after the last.
  const EntryRead* next();
  double fraction() const {
    return size_ > 0 ? static_cast<double>(entry_.sequence) / static_cast<double>(size_) : 1;
  }

 private:
  void countOn(std::int64_t sequence);
  void readInside();
  void readDamaged(const EntryStamp& stamp);

  ReportFault report_;
  Statement rows_;
  std::int64_t size_ = 0;
  EntryRead entry_;
  std::string bytes_, damagedFacts_;
};

}  // namespace steadyturn
