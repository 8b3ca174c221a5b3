// Fasteners: every revision of a specification is a row of its own that stays.
#pragma once

#include <optional>
#include <vector>

#include "fastener_search.h"
#include "ledger.h"
#include "proven_rows.h"
#include "records.h"

namespace steadyturn {

class FastenerTable {
 public:
  FastenerTable(Database& database, Ledger& ledger);
  // Adds revision number `fastener.number` (1 for a new fastener). Ledger kind "fastener".
  void add(const Fastener& fastener, const EntryStamp& stamp);
  std::optional<Fastener> find(const std::string& id) const;              // the newest revision
  std::optional<Fastener> find(const std::string& id, int number) const;  // that revision
  std::vector<Fastener> all() const;                                      // newest revisions, by id
  std::vector<Fastener> revisions(const std::string& id) const;           // oldest first
  // Newest revisions in which every word of `words`, or what means the same, begins some word of component, assembly,
  // thread or id (FTS5, accents and case folded), best first, at most `limit`. Where nothing does, slips in typing
  // are forgiven. No words: all, by id.
  std::vector<Fastener> search(const std::string& words, int limit) const;
  SynonymTable& synonyms() { return search_.synonyms(); }
  ProvenRows proven() const;  // for a proof: every revision

 private:
  Database& database_;
  Ledger& ledger_;
  Statement insert_;
  FastenerSearch search_;
};

}  // namespace steadyturn
