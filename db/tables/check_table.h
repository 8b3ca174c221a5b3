// Checks and their set-points. Evidence: INSERT only; a correction is a new check that names the old one.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "ledger.h"
#include "proven_rows.h"
#include "records.h"

namespace steadyturn {

class CheckTable {
 public:
  CheckTable(Database& database, Ledger& ledger);
  // Writes the check, its points and its ledger entry (kind "check"); returns the id it was given.
  std::int64_t add(const Check& check, const EntryStamp& stamp);
  std::optional<Check> find(std::int64_t id) const;
  // Of one tool, oldest first, with points; corrected ones included (correctedBy is filled).
  std::vector<Check> ofTool(const std::string& tool) const;
  struct ReferenceUse {
    Date date{};
    std::string reference;
  };
  std::vector<ReferenceUse> referencesOf(const std::string& tool) const;  // one a check, as summaries() are ordered
  std::vector<Check> newest(int limit) const;  // by date, newest first; corrected ones included
  // Every check of the shop in the order tool, date, phase (as found first), id; corrected ones left out. For
  // exports.
  void forEach(const std::function<bool(const Check&)>& visit) const;  // stops when visit returns false
  // Not counting corrected ones. Each direction of use is a check of its own (ISO 6789-1:2017).
  bool exists(const std::string& tool, Date date, Phase phase, Direction direction = Direction::Clockwise) const;
  // Set-point summaries without corrected checks, by date, then as found before as left, then id. One tool's, or (in
  // order of tool) all tools'.
  std::vector<PointSummary> summaries(const std::string& tool) const;
  std::vector<PointSummary> allSummaries() const;
  void forEachSummary(const std::function<void(const PointSummary&)>& visit) const;  // as allSummaries()
  std::int64_t newestId() const;                                                     // 0: no check yet
  ProvenRows proven(Assay<Check> assay = {}) const;  // for a proof: corrected ones included

 private:
  void addPoints(const Check& check, std::int64_t id);
  void addPointsAtOnce(const Check& check, std::int64_t id);
  std::int64_t nextId();

  Database& database_;
  Ledger& ledger_;
  Statement insertCheck_, insertPoint_;
  mutable Statement same_;
  // Remembered within one transaction.
  std::int64_t next_ = 0;
  std::uint64_t countedIn_ = 0;
};

}  // namespace steadyturn
