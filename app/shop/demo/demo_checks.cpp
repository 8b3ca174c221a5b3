#include <fmt/format.h>

#include <algorithm>

#include "demo_parts.h"
#include "demo_random.h"
#include "set_points.h"

namespace steadyturn {

namespace {

constexpr std::array people{"bench, early shift", "bench, late shift"};

// The bench's three transducers by reach.
const char* referenceFor(StatedTorque maximum) {
  const double reach = maximum.torque().newtonMetres();
  if (reach <= 25) return "R1";
  return reach <= 250 ? "R2" : "R3";
}

// What the bench display shows: a hundredth below 30, a tenth above.
std::string shown(double value) { return value < 30 ? fmt::format("{:.2f}", value) : fmt::format("{:.1f}", value); }

CheckDraft drawCheck(const DemoTool& demo, Date date, Phase phase, double deviation, DemoRandom& random) {
  const auto& tool = demo.tool;
  CheckDraft draft{.tool = tool.id,
                   .reference = referenceFor(tool.maximumTorque()),
                   .by = people.at(static_cast<std::size_t>(random.below(2))),
                   .date = date,
                   .phase = phase,
                   .unit = tool.unit,
                   .direction = Direction::Clockwise,
                   .temperatureC = 19.5 + 0.5 * random.below(8),
                   .humidityPercent = 40.0 + random.below(25),
                   .note = {},
                   .points = {}};
  for (const auto target :
       proposeSetPoints(tool.kind, tool.minimumTorque(), tool.maximumTorque(), tool.resolutionTorque())) {
    DraftPoint point{.target = writeNumber(target.value), .readings = {}};
    const double here = deviation + demo.checkScatterPercent * 0.5 * random.normal();
    for (int i = 0; i < rulesFor(tool.kind).readings; ++i) {
      const double pull = here + demo.pullScatterPercent * random.normal();
      point.readings.push_back(shown(target.value / (1 + pull / 100)));
    }
    draft.points.push_back(std::move(point));
  }
  return draft;
}

void drawLife(const DemoTool& demo, DemoRandom& random, std::vector<CheckDraft>& into) {
  double base = demo.biasPercent;
  Date since = demo.firstCheck;
  for (Date date = demo.firstCheck; date <= demo.lastCheck; date += std::chrono::days(demo.cadenceDays)) {
    const double deviation =
        base + demo.driftPercentPerYear * yearsBetween(since, date) + demo.checkScatterPercent * random.normal();
    into.push_back(drawCheck(demo, date, Phase::AsFound, deviation, random));
    if (demo.adjustBeyondPercent > 0 && std::abs(deviation) > demo.adjustBeyondPercent) {
      base = 0.2 * random.normal();
      since = date;
      into.push_back(drawCheck(demo, date, Phase::AsLeft, base, random));
    }
    if (demo.cadenceDays == 0) break;
    date += std::chrono::days(random.below(15) - 7);  // the bench is not a clock
  }
}

}  // namespace

std::vector<CheckDraft> demoChecks(const std::vector<DemoTool>& tools) {
  std::vector<CheckDraft> drafts;
  std::uint32_t seed = 6789;
  // Each tool draws from numbers of its own, so that one more tool leaves the others' history alone.
  for (const auto& demo : tools) {
    DemoRandom random(seed++);
    drawLife(demo, random, drafts);
  }
  std::stable_sort(drafts.begin(), drafts.end(), [](const auto& a, const auto& b) { return a.date < b.date; });
  return drafts;
}

}  // namespace steadyturn
