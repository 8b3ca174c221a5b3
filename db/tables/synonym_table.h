// What people call a thing besides what the specification calls it. No evidence: it only widens what a search finds.
#pragma once

#include <string>
#include <vector>

#include "statement.h"
#include "synonym.h"

namespace steadyturn {

class SynonymTable {
 public:
  explicit SynonymTable(Database& database) : database_(database) {}
  // Puts `phrase` into the group of `meaning`, which becomes a group if it is none; both groups become one.
  void add(const std::string& phrase, const std::string& meaning);
  bool remove(const std::string& phrase);    // false: it is not there
  std::vector<SynonymGroup> groups() const;  // of two and more; by their first phrases

 private:
  std::string headOf(const std::string& phrase) const;  // empty: in no group
  Database& database_;
};

}  // namespace steadyturn
