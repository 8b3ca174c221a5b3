#include "entry_reading.h"

#include <nlohmann/json.hpp>

#include "differences.h"

namespace steadyturn {

EntryReading::EntryReading(Database& database, ReportFault report)
    : report_(std::move(report)), rows_(database, "SELECT seq, at, who, kind, entry, leaf FROM ledger ORDER BY seq") {
  Statement newest(database, "SELECT COALESCE(MAX(seq), 0) FROM ledger");
  newest.run().next();
  size_ = newest.integer(0);
  rows_.run();
}

void EntryReading::countOn(std::int64_t sequence) {
  const auto expected = entry_.sequence + 1;
  if (sequence != expected) {
    const auto last = sequence - 1;
    report_(expected, last == expected ? "entry " + std::to_string(expected) + " of the ledger is missing"
                                       : "entries " + std::to_string(expected) + " to " + std::to_string(last) +
                                             " of the ledger are missing");
  }
  entry_.sequence = sequence;
}

const EntryRead* EntryReading::next() {
  if (!rows_.next()) return nullptr;
  countOn(rows_.integer(0));
  entry_.kind = rows_.text(3);
  bytes_ = rows_.bytes(4).toStdString();
  entry_.leaf = asHash(leafHash(bytes_));
  if (entry_.leaf != asHash(rows_.bytes(5))) {
    report_(entry_.sequence, "entry " + std::to_string(entry_.sequence) +
                                 " of the ledger was changed: its bytes do not give the hash stored with it");
  }
  readInside();
  return &entry_;
}

void EntryReading::readInside() {
  const EntryStamp stamp{.at = rows_.text(1), .who = rows_.text(2)};
  const auto frame = entryFrame(entry_.sequence, stamp, entry_.kind);
  const std::string_view bytes(bytes_);
  if (bytes.size() >= frame.before.size() + frame.after.size() && bytes.starts_with(frame.before) &&
      bytes.ends_with(frame.after)) {
    entry_.facts = bytes.substr(frame.before.size(), bytes.size() - frame.before.size() - frame.after.size());
    return;
  }
  readDamaged(stamp);
}

// Says how the columns differ from the bytes, and goes on with what the bytes tell: they are what was hashed.
void EntryReading::readDamaged(const EntryStamp& stamp) {
  const auto whole = Facts::parse(bytes_, nullptr, false);
  const auto name = "entry " + std::to_string(entry_.sequence) + " of the ledger";
  damagedFacts_.clear();
  entry_.facts = damagedFacts_;
  if (!whole.is_object()) {
    report_(entry_.sequence, name + " can't be read: its bytes are no JSON object");
    return;
  }
  auto envelope = whole;
  envelope.erase("facts");
  auto how = differencesOf({{"at", stamp.at}, {"kind", entry_.kind}, {"seq", entry_.sequence}, {"who", stamp.who}},
                           envelope);
  if (how.empty()) how = "it is not written as entries are";
  report_(entry_.sequence, name + " differs: " + how);
  if (const auto kind = whole.find("kind"); kind != whole.end() && kind->is_string()) entry_.kind = *kind;
  if (const auto facts = whole.find("facts"); facts != whole.end()) {
    damagedFacts_ = facts->dump(-1, ' ', false, Facts::error_handler_t::replace);
    entry_.facts = damagedFacts_;
  }
}

}  // namespace steadyturn
