// A bench set-up as it stands typed, not yet saved. Texts are as typed: nothing is lost by being wrong.
#pragma once

#include <QString>
#include <QStringList>
#include <array>
#include <vector>

#include "shop_views.h"

namespace steadyturn {

struct TypedRun {
  std::vector<QStringList> series;  // as typed
  QString span;                     // typed instead of measured, %

  int typedReadings() const;
};

struct SetupDraft {
  Date date{};
  Unit unit = Unit::NewtonMetre;
  QString reference, by, target, basis;
  std::array<TypedRun, allSetupRuns.size()> runs;  // each with the standard's series and readings

  SetupDraft();
  TypedRun& run(SetupRun run) { return runs[static_cast<std::size_t>(run)]; }
  const TypedRun& run(SetupRun run) const { return runs[static_cast<std::size_t>(run)]; }
  void setSeries(SetupRun run, std::size_t count);  // readings in the series that stay are kept
  int typedReadings() const;
  bool typed() const;  // a reading or a span
};

// All of it, in the form the shop keeps while it is being typed and takes when it is saved.
BenchSetupDraft wholeDraft(const std::string& tool, const SetupDraft& draft);
SetupDraft fromKept(const BenchSetupDraft& kept);

}  // namespace steadyturn
