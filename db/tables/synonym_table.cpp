#include "synonym_table.h"

#include <map>

namespace steadyturn {

std::string SynonymTable::headOf(const std::string& phrase) const {
  Statement query(database_, "SELECT meaning FROM fastener_synonym WHERE phrase = ?");
  return query.run(phrase).next() ? query.text(0) : std::string();
}

void SynonymTable::add(const std::string& phrase, const std::string& meaning) {
  const auto known = headOf(meaning);
  const auto& head = known.empty() ? meaning : known;
  const auto old = headOf(phrase);
  if (!old.empty()) {
    Statement(database_, "UPDATE fastener_synonym SET meaning = ? WHERE meaning = ?").run(head, old);
  }
  for (const auto& one : {phrase, meaning}) {
    Statement(database_,
              "INSERT INTO fastener_synonym (phrase, meaning) VALUES (?, ?) ON CONFLICT (phrase) DO NOTHING")
        .run(one, head);
  }
}

bool SynonymTable::remove(const std::string& phrase) {
  return Statement(database_, "DELETE FROM fastener_synonym WHERE phrase = ? RETURNING phrase").run(phrase).next();
}

std::vector<SynonymGroup> SynonymTable::groups() const {
  Statement query(database_, "SELECT meaning, phrase FROM fastener_synonym ORDER BY meaning, phrase");
  query.run();
  std::map<std::string, SynonymGroup> byHead;
  while (query.next()) byHead[query.text(0)].push_back(query.text(1));
  std::vector<SynonymGroup> groups;
  for (auto& [head, group] : byHead) {
    if (group.size() > 1) groups.push_back(std::move(group));
  }
  return groups;
}

}  // namespace steadyturn
