#include "record_match.h"

#include <limits>
#include <nlohmann/json.hpp>

#include "differences.h"

namespace steadyturn {

namespace {

Facts parsed(std::string_view facts) { return Facts::parse(facts, nullptr, false); }

}  // namespace

RecordMatch::RecordMatch(ProvenRows rows, ReportFault report) : rows_(std::move(rows)), report_(std::move(report)) {
  step();
}

void RecordMatch::passStrays(std::int64_t before) {
  for (; ahead_ && ahead_->entry < before; step()) {
    report_(ahead_->entry, ahead_->name + " has no entry of its own: it names entry " +
                               std::to_string(ahead_->entry) + ", which tells of something else or is not there");
    // Where it is its entry that is gone, the count goes on: the records after it are not to blame.
    if (ahead_->made.place == told_ + 1) ++told_;
  }
}

bool RecordMatch::isAsTold(ProvenRow& row, std::string_view facts) const {
  if (!row.damage.empty()) return false;
  if (!kind().changing.empty()) {
    const auto entry = parsed(facts);
    for (const auto key : kind().changing) {
      if (entry.is_object() && entry.contains(key)) row.made.facts[std::string(key)] = entry[std::string(key)];
    }
  }
  return canonicalJson(row.made.facts) == facts;
}

void RecordMatch::compare(const ProvenRow& row, std::string_view facts) {
  if (!row.damage.empty()) {
    report_(row.entry, row.name + " is damaged: it holds \"" + row.damage + "\", which is never written there");
    return;
  }
  auto how = differencesOf(row.made.facts, parsed(facts));
  if (how.empty()) how = "the entry is not written as entries are";
  report_(row.entry, row.name + " differs: " + how);
}

void RecordMatch::missing(std::int64_t entry, std::string_view facts) {
  report_(entry, kind().nameOf(parsed(facts)) + " is missing: the entry tells of it, no record shows it");
}

// What an entry sets stands till the next one of its name: rows show the newest.
void RecordMatch::replace(std::int64_t entry, std::string_view facts, bool shown) {
  const auto name = kind().nameOf(parsed(facts));
  auto& standing = standing_[name];
  if (standing.shown) {
    report_(standing.entry, name + " is out of date: its record is as entry " + std::to_string(standing.entry) +
                                " has it, entry " + std::to_string(entry) + " replaced that");
  }
  standing = {.entry = entry, .shown = shown};
}

void RecordMatch::entry(std::int64_t entry, std::string_view facts) {
  passStrays(entry);
  ++told_;
  std::vector<ProvenRow> claimants;
  for (; ahead_ && ahead_->entry == entry; step()) claimants.push_back(std::move(*ahead_));
  if (kind().replaced) replace(entry, facts, !claimants.empty());
  if (claimants.empty()) {
    if (!kind().replaced) missing(entry, facts);
    return;
  }
  auto rightful = claimants.begin();
  while (rightful != claimants.end() && !isAsTold(*rightful, facts)) ++rightful;
  if (rightful == claimants.end()) {
    rightful = claimants.begin();
    compare(*rightful, facts);
  } else if (rightful->made.place && *rightful->made.place != told_) {
    report_(entry, rightful->name + " is stored as number " + std::to_string(*rightful->made.place) +
                       " of its kind, its entry is number " + std::to_string(told_));
  } else if (rightful->made.assay) {
    if (auto doubt = rightful->made.assay(); !doubt.empty()) report_(entry, rightful->name + ": " + doubt);
  }
  for (auto other = claimants.begin(); other != claimants.end(); ++other) {
    if (other != rightful) {
      report_(entry, other->name + " has no entry of its own: it names entry " + std::to_string(entry) +
                         ", which tells of " + rightful->name);
    }
  }
}

void RecordMatch::finish() {
  passStrays(std::numeric_limits<std::int64_t>::max());
  for (const auto& [name, standing] : standing_) {
    if (!standing.shown) report_(standing.entry, name + " is missing: the entry tells of it, no record shows it");
  }
}

}  // namespace steadyturn
