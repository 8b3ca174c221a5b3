#include "fastener_search.h"

#include <algorithm>

#include "connection.h"
#include "search_words.h"

namespace steadyturn {

namespace {

constexpr int leastKnownLetters = 4;

QString allOf(const QStringList& words) {
  QStringList quoted;
  for (const QString& word : words) quoted << '"' + word + "\"*";
  return quoted.join(" AND ");
}

std::string anyOf(const std::vector<QStringList>& readings) {
  QStringList all;
  for (const QStringList& words : readings) all << '(' + allOf(words) + ')';
  return all.join(" OR ").toStdString();
}

}  // namespace

FastenerSearch::FastenerSearch(Database& database)
    : database_(database),
      synonyms_(database),
      remove_(database,
              "DELETE FROM fastener_search WHERE rowid = "
              "(SELECT id FROM fastener_revision WHERE fastener = ? AND number = ?)"),
      insert_(database,
              "INSERT INTO fastener_search (rowid, fastener, component, assembly, thread) VALUES (?, ?, ?, ?, ?)"),
      word_(database, "INSERT INTO fastener_word (word) VALUES (?) ON CONFLICT (word) DO NOTHING") {}

void FastenerSearch::index(const Fastener& fastener, std::int64_t revisionId) {
  if (fastener.number > 1) remove_.run(fastener.id, fastener.number - 1);
  insert_.run(revisionId, fastener.id, fastener.component, fastener.assembly, fastener.thread);
  remember(fastener.component);
  remember(fastener.assembly);
}

void FastenerSearch::remember(const std::string& text) {
  if (const auto now = database_.connection().transactions; rememberedIn_ != now) {
    remembered_.clear();
    rememberedIn_ = now;
  }
  for (const QString& word : searchWords(text)) {
    const bool hasDigit = std::ranges::any_of(word, [](QChar c) { return c.isDigit(); });
    if (word.size() >= leastKnownLetters && !hasDigit && remembered_.insert(word).second) word_.run(word);
  }
}

const char* FastenerSearch::join() {
  // The engine ranks and cuts alone; the revisions are looked up for what is left. Its weights stand in the
  // migration: a hit in the id says most, then in the component.
  return " JOIN (SELECT rowid AS hit, rank AS score FROM fastener_search WHERE fastener_search MATCH ? ORDER BY rank "
         "LIMIT ?) s ON s.hit = r.id ORDER BY s.score, r.fastener";
}

std::string FastenerSearch::expression(const std::string& words) const {
  const auto typed = searchWords(words);
  return typed.isEmpty() ? std::string() : anyOf(withSynonyms(typed, synonyms_.groups()));
}

QStringList FastenerSearch::knownWords(const std::vector<SynonymGroup>& groups) const {
  QStringList known;
  Statement query(database_, "SELECT word FROM fastener_word");
  query.run();
  while (query.next()) known << query.string(0);
  for (const auto& group : groups) {
    for (const auto& phrase : group) known << searchWords(phrase);
  }
  return known;
}

std::string FastenerSearch::forgivingExpression(const std::string& words) const {
  const auto typed = searchWords(words);
  if (std::ranges::none_of(typed, [](const QString& word) { return word.size() >= leastKnownLetters; })) return {};
  const auto groups = synonyms_.groups();
  auto readings = withoutSlips(typed, knownWords(groups));
  if (readings.size() < 2) return {};
  std::vector<QStringList> all;
  for (const auto& reading : readings) {
    for (auto& called : withSynonyms(reading, groups)) all.push_back(std::move(called));
  }
  return anyOf(all);
}

}  // namespace steadyturn
