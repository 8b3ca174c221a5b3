// Finding fasteners by words. The one place of the store that speaks an engine's own dialect: SQLite's FTS5 here;
// another engine's full text search takes another file.
#pragma once

#include <string>

#include "records.h"
#include "statement.h"

namespace steadyturn {

class FastenerSearch {
 public:
  explicit FastenerSearch(Database& database);
  // Puts a revision in place of the one before it. REQUIRES: fastener_revision holds both.
  void index(const Fastener& fastener, std::int64_t revisionId);
  // What to add to "SELECT … FROM fastener_revision r" for the revisions that match, best first: one '?' for
  // expression() and one for the limit.
  static const char* join();
  // The words in FTS5's query language; empty when there is no letter or digit in them.
  static std::string expression(const std::string& words);

 private:
  Statement remove_, insert_;
};

}  // namespace steadyturn
