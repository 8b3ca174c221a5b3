#include "fastener_search.h"

namespace steadyturn {

FastenerSearch::FastenerSearch(Database& database)
    : remove_(database,
              "DELETE FROM fastener_search WHERE rowid = "
              "(SELECT id FROM fastener_revision WHERE fastener = ? AND number = ?)"),
      insert_(database,
              "INSERT INTO fastener_search (rowid, fastener, component, assembly, thread) VALUES (?, ?, ?, ?, ?)") {}

void FastenerSearch::index(const Fastener& fastener, std::int64_t revisionId) {
  if (fastener.number > 1) remove_.run(fastener.id, fastener.number - 1);
  insert_.run(revisionId, fastener.id, fastener.component, fastener.assembly, fastener.thread);
}

const char* FastenerSearch::join() {
  // Weights: a hit in the id says most, then in the component.
  return " JOIN fastener_search s ON s.rowid = r.id WHERE fastener_search MATCH ? "
         "ORDER BY bm25(fastener_search, 8, 4, 2, 1), r.fastener LIMIT ?";
}

std::string FastenerSearch::expression(const std::string& words) {
  // Only letters, digits and marks pass, so nothing typed can be read as query language.
  QString query, word;
  const auto endWord = [&] {
    if (!word.isEmpty()) query += (query.isEmpty() ? "\"" : " AND \"") + word + "\"*";
    word.clear();
  };
  for (const char32_t c : storedText(words).toUcs4()) {
    if (QChar::isLetterOrNumber(c) || QChar::isMark(c)) {
      word += QString::fromUcs4(&c, 1);
    } else {
      endWord();
    }
  }
  endWord();
  return query.toStdString();
}

}  // namespace steadyturn
