// The records of one kind beside the entries that tell of them, both in the order of the ledger.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "proven_rows.h"
#include "verification.h"

namespace steadyturn {

using ReportFault = std::function<void(std::int64_t entry, std::string what)>;

class RecordMatch {
 public:
  RecordMatch(ProvenRows rows, ReportFault report);
  const RecordKind& kind() const { return rows_.kind(); }
  // The next entry of this kind, with its facts as they stand in its bytes. REQUIRES: `entry` grows from call to
  // call.
  void entry(std::int64_t entry, std::string_view facts);
  // After the last entry.
  void finish();

 private:
  struct Standing {  // of a name whose newest entry alone has a row
    std::int64_t entry = 0;
    bool shown = false;  // by a row
  };
  void passStrays(std::int64_t before);
  void step() { ahead_ = rows_.next(); }
  void missing(std::int64_t entry, std::string_view facts);
  void replace(std::int64_t entry, std::string_view facts, bool shown);
  bool isAsTold(ProvenRow& row, std::string_view facts) const;
  void compare(const ProvenRow& row, std::string_view facts);

  ProvenRows rows_;
  ReportFault report_;
  std::optional<ProvenRow> ahead_;
  std::int64_t told_ = 0;  // entries of this kind so far
  std::map<std::string, Standing> standing_;
};

}  // namespace steadyturn
