// Rows of a check file put together to checks: one tool, date and phase is one check, wherever in the file its rows
// stand.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <unordered_map>
#include <vector>

#include "import_row.h"
#include "inside.h"

namespace steadyturn {

enum CheckCell { checkTool, checkDate, checkPhase, checkTarget, checkReading, checkUnit, checkReference, checkBy };

struct GatheredCheck {
  const Tool* tool = nullptr;
  const Reference* reference = nullptr;  // null: not known
  std::size_t line = 0;                  // of its first row
  bool sound = true;                     // false: one of its rows was refused
  CheckDraft draft{};
  std::vector<std::size_t> pointLines{};  // the first row of each of the draft's points
};

class CheckGathering {
 public:
  CheckGathering(const Shop::Inside& shop, const ImportOptions& options);
  CheckGathering(const CheckGathering&) = delete;
  CheckGathering& operator=(const CheckGathering&) = delete;

  void take(ImportRow& row);
  // In order of first appearance. They point into this object.
  std::vector<GatheredCheck>& checks() { return checks_; }

 private:
  using Key = std::tuple<const Tool*, Date, Phase>;

  std::optional<std::size_t> checkOf(ImportRow& row);
  std::optional<Key> keyOf(ImportRow& row) const;
  GatheredCheck readHead(ImportRow& row, const Key& key) const;
  void refuseKnown(ImportRow& row, const CheckDraft& draft) const;
  std::optional<std::size_t> pointOf(ImportRow& row, GatheredCheck& check);
  bool isHeadOfRowBefore(const ImportRow& row) const;
  void rememberHead(const ImportRow& row);

  const Shop::Inside& shop_;
  const ImportOptions& options_;
  bool shopHasChecks_;  // a whole history usually goes into a new shop, and need not be looked up
  std::unordered_map<std::string, Tool> tools_;
  std::unordered_map<std::string, Reference> references_;
  std::map<Key, std::size_t> placeOf_;
  std::vector<GatheredCheck> checks_;

  // The row before, as it stands in the file: most rows differ from it in the reading alone and need no second
  // parsing.
  static constexpr std::array headCells{checkTool, checkDate, checkPhase, checkUnit, checkReference, checkBy};
  std::array<std::string, headCells.size()> head_;
  std::string target_;
  std::optional<std::size_t> check_, point_;
};

}  // namespace steadyturn
