// A check as it stands typed at the bench, not yet saved. Texts are as typed: nothing is lost by being wrong.
#pragma once

#include <QString>
#include <cstdint>
#include <optional>
#include <vector>

#include "shop_views.h"

namespace steadyturn {

struct BenchPoint {
  QString target;
  std::vector<QString> readings;
};

// The stored check that a draft is to replace, and why.
struct Correction {
  std::int64_t check = 0;
  QString reason{};
  bool untouched = false;  // the stored readings as they were laid out: nothing of it is unsaved yet
};

struct BenchDraft {
  Date date{};
  Phase phase = Phase::AsFound;
  Direction direction = Direction::Clockwise;
  Unit unit = Unit::NewtonMetre;
  QString reference, by, temperature, humidity, note;
  std::vector<BenchPoint> points;
  std::optional<Correction> corrects{};

  int typedReadings() const;
  bool unsaved() const;  // there are readings, typed by a person and not stored yet
};

// A draft's readings that are numbers, in the form the shop takes them, and where each came from.
struct ReadDraft {
  CheckDraft check;
  std::vector<std::size_t> points;                 // of BenchDraft::points, one for each of check.points
  std::vector<std::vector<std::size_t>> readings;  // of BenchPoint::readings, likewise
};
ReadDraft readNumbers(const std::string& tool, const BenchDraft& draft);

// All of a draft, texts that are no numbers included: what is kept on disk while it is being typed.
CheckDraft wholeDraft(const std::string& tool, const BenchDraft& draft);
BenchDraft fromKept(const CheckDraft& kept);
// A stored check's heading and readings, to be corrected.
BenchDraft fromStored(const Check& check);

// What is wrong with a text in the grid, if anything; empty text is nothing wrong.
std::optional<Problem> problemWith(const QString& typed, const std::string& field);

}  // namespace steadyturn
