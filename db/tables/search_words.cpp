#include "search_words.h"

#include <algorithm>

namespace steadyturn {

namespace {

constexpr std::size_t mostReadings = 16;  // a query with more takes longer than a person waits
constexpr int leastLetters = 4;
constexpr int mostCorrections = 6;

bool oneEditApart(QStringView a, QStringView b) {
  if (a.size() > b.size()) std::swap(a, b);
  if (b.size() - a.size() > 1) return false;
  const auto differ = std::ranges::mismatch(a, b);
  const auto at = differ.in1 - a.begin();
  if (a.size() < b.size()) return a.sliced(at) == b.sliced(at + 1);
  if (at == a.size()) return false;  // the same
  if (a.sliced(at + 1) == b.sliced(at + 1)) return true;
  return at + 1 < a.size() && a[at] == b[at + 1] && a[at + 1] == b[at] && a.sliced(at + 2) == b.sliced(at + 2);
}

// Beginnings of known words that `word` may have been meant for.
QStringList corrections(const QString& word, const QStringList& known) {
  QStringList meant;
  const bool hasDigit = std::ranges::any_of(word, [](QChar c) { return c.isDigit(); });
  if (word.size() < leastLetters || hasDigit) return meant;
  for (const QString& one : known) {
    // As long as what was typed first: the word may still be under way.
    for (const auto length : {word.size(), word.size() + 1, word.size() - 1}) {
      if (length > one.size() || !oneEditApart(word, QStringView(one).first(length))) continue;
      if (const QString beginning = one.first(length); !meant.contains(beginning)) meant << beginning;
      break;
    }
    if (meant.size() >= mostCorrections) break;
  }
  return meant;
}

// How many words from `at` on the phrase takes up; 0: it is not there. Under way at the end it counts from its second
// word on, a phrase of one word from its third letter.
qsizetype wordsTaken(const QStringList& words, qsizetype at, const QStringList& phrase) {
  const auto shared = std::min(words.size() - at, phrase.size());
  const bool atEnd = at + shared == words.size();
  for (qsizetype i = 0; i < shared; ++i) {
    const bool last = atEnd && i + 1 == shared;
    if (last ? !phrase[i].startsWith(words[at + i]) : phrase[i] != words[at + i]) return 0;
  }
  const bool whole = shared == phrase.size() && (shared > 1 || words[at].size() >= 3);
  return whole || shared >= 2 ? shared : 0;
}

void add(std::vector<QStringList>& readings, QStringList words) {
  if (readings.size() < mostReadings && std::ranges::find(readings, words) == readings.end()) {
    readings.push_back(std::move(words));
  }
}

}  // namespace

QStringList searchWords(const std::string& typed) {
  QStringList words;
  QString word;
  const auto endWord = [&] {
    if (!word.isEmpty()) words << word;
    word.clear();
  };
  // Zero bytes and whatever else is no letter part words.
  for (const char32_t c : QString::fromStdString(typed).normalized(QString::NormalizationForm_D).toLower().toUcs4()) {
    if (QChar::isMark(c)) continue;
    if (QChar::isLetterOrNumber(c)) {
      word += QString::fromUcs4(&c, 1);
    } else {
      endWord();
    }
  }
  endWord();
  return words;
}

std::vector<QStringList> withSynonyms(const QStringList& words, const std::vector<SynonymGroup>& groups) {
  std::vector<QStringList> readings{words};
  for (const SynonymGroup& group : groups) {
    for (const std::string& phrase : group) {
      const auto called = searchWords(phrase);
      if (called.isEmpty()) continue;
      for (qsizetype at = 0; at < words.size(); ++at) {
        const auto taken = wordsTaken(words, at, called);
        if (taken == 0) continue;
        for (const std::string& other : group) {
          if (other != phrase) add(readings, words.first(at) + searchWords(other) + words.sliced(at + taken));
        }
      }
    }
  }
  return readings;
}

std::vector<QStringList> withoutSlips(const QStringList& words, const QStringList& known) {
  std::vector<QStringList> readings{{}};
  for (const QString& word : words) {
    std::vector<QStringList> longer;
    for (const QStringList& before : readings) {
      add(longer, before + QStringList{word});
      for (const QString& meant : corrections(word, known)) add(longer, before + QStringList{meant});
    }
    readings = std::move(longer);
  }
  return readings;
}

}  // namespace steadyturn
