#include "fastener_search.h"

#include <algorithm>

#include "connection.h"
#include "search_words.h"

namespace steadyturn {

namespace {

constexpr int leastKnownLetters = 4;
// PostgreSQL takes terms of less than 2,048 bytes (its 12.11); a letter has up to four.
constexpr int mostLetters = 500;

// Words hold letters and digits alone, so quotes need no care.
QString allOf(const QStringList& words, const QString& quote, const QString& end, const QString& conjunction) {
  QStringList quoted;
  for (const QString& word : words) quoted << quote + word.left(mostLetters) + quote + end;
  return quoted.join(conjunction);
}

// The words of a column, each with its weight: 'drain':1A 'plug':2A.
QString weighted(const std::string& column, QChar weight) {
  QString terms;
  int place = 0;
  for (const QString& word : searchWords(column))
    terms += QStringLiteral("'%1':%2%3 ").arg(word.left(mostLetters)).arg(++place).arg(weight);
  return terms;
}

}  // namespace

FastenerSearch::FastenerSearch(Database& database)
    : database_(database),
      onServer_(database.connection().onServer()),
      synonyms_(database),
      remove_(database,
              "DELETE FROM fastener_search WHERE rowid = "
              "(SELECT id FROM fastener_revision WHERE fastener = ? AND number = ?)"),
      insert_(database,
              onServer_ ? "INSERT INTO fastener_search (rowid, fastener, component, assembly, thread, terms) VALUES "
                          "(?, ?, ?, ?, ?, CAST(? AS tsvector))"
                        : "INSERT INTO fastener_search (rowid, fastener, component, assembly, thread) VALUES (?, ?, "
                          "?, ?, ?)"),
      word_(database, "INSERT INTO fastener_word (word) VALUES (?) ON CONFLICT (word) DO NOTHING") {}

void FastenerSearch::index(const Fastener& fastener, std::int64_t revisionId) {
  if (fastener.number > 1) remove_.run(fastener.id, fastener.number - 1);
  QVariantList row{boundValue(revisionId), boundValue(fastener.id), boundValue(fastener.component),
                   boundValue(fastener.assembly), boundValue(fastener.thread)};
  if (onServer_) {
    row << weighted(fastener.id, 'A') + weighted(fastener.component, 'B') + weighted(fastener.assembly, 'C') +
               weighted(fastener.thread, 'D');
  }
  insert_.runBound(row);
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
    const bool known = word.size() >= leastKnownLetters && word.size() <= mostLetters && !hasDigit;
    if (known && remembered_.insert(word).second) word_.run(word);
  }
}

const char* FastenerSearch::join() const {
  // The engine ranks and cuts alone; the revisions are looked up for what is left. A hit in the id says most, then in
  // the component: FTS5's weights stand in the migration, the same ones here (ts_rank takes them from D to A).
  return onServer_
             ? " JOIN (SELECT f.rowid AS hit, -ts_rank('{0.125, 0.25, 0.5, 1}', f.terms, q) AS score FROM "
               "fastener_search f CROSS JOIN CAST(? AS tsquery) q WHERE f.terms @@ q ORDER BY score, f.fastener "
               "LIMIT ?) s ON s.hit = r.id ORDER BY s.score, r.fastener"
             : " JOIN (SELECT rowid AS hit, rank AS score FROM fastener_search WHERE fastener_search MATCH ? "
               "ORDER BY rank LIMIT ?) s ON s.hit = r.id ORDER BY s.score, r.fastener";
}

std::string FastenerSearch::anyOf(const std::vector<QStringList>& readings) const {
  QStringList all;
  for (const QStringList& words : readings) {
    all << QStringLiteral("(%1)").arg(
        onServer_ ? allOf(words, QStringLiteral("'"), QStringLiteral(":*"), QStringLiteral(" & "))
                  : allOf(words, QStringLiteral("\""), QStringLiteral("*"), QStringLiteral(" AND ")));
  }
  return all.join(onServer_ ? QStringLiteral(" | ") : QStringLiteral(" OR ")).toStdString();
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
