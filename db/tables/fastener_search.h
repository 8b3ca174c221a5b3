// Finding fasteners by words: the one place of the tables where engines differ. SQLite's FTS5 finds words by itself;
// PostgreSQL's text search is given ours (its chapter 12: tsvector, tsquery, ts_rank).
#pragma once

#include <QStringList>
#include <set>
#include <string>

#include "records.h"
#include "statement.h"
#include "synonym_table.h"

namespace steadyturn {

class FastenerSearch {
 public:
  explicit FastenerSearch(Database& database);
  // Puts a revision in place of the one before it. REQUIRES: fastener_revision holds both.
  void index(const Fastener& fastener, std::int64_t revisionId);
  // What to add to "SELECT … FROM fastener_revision r" for the revisions that match, best first: one '?' for an
  // expression and one for the limit.
  const char* join() const;
  // The words, or what means the same, in the engine's query language; empty when there is no letter or digit in
  // them.
  std::string expression(const std::string& words) const;
  // The same with slips in typing put right; empty when there is nothing to put right.
  std::string forgivingExpression(const std::string& words) const;
  SynonymTable& synonyms() { return synonyms_; }

 private:
  void remember(const std::string& text);
  std::string anyOf(const std::vector<QStringList>& readings) const;
  QStringList knownWords(const std::vector<SynonymGroup>& groups) const;

  Database& database_;
  bool onServer_;
  SynonymTable synonyms_;
  Statement remove_, insert_, word_;
  std::set<QString> remembered_;  // in the transaction at hand
  std::uint64_t rememberedIn_ = 0;
};

}  // namespace steadyturn
