#include "fleet_book.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steadyturn {

namespace {

constexpr double lowerBand = 0.4;  // of the maximum; set-points at 20, 60 and 100 % lie well apart from the bounds
constexpr double middleBand = 0.8;

std::string kindName(const Tool& tool) {
  return fmt::format("type {} class {}", writeType(tool.kind.type), writeClass(tool.kind.cls));
}

constexpr std::size_t levels = 3;

using GroupKey = std::tuple<std::string, SetPointBand, Direction>;

std::string groupName(const GroupKey& key) {
  const auto& [tools, band, direction] = key;
  const std::string way = direction == Direction::Clockwise ? "" : ", counterclockwise";
  return fmt::format("{}, {}{}", tools, writeBand(band), way);
}

}  // namespace

bool sameSetPoint(StatedTorque a, StatedTorque b) {
  constexpr double share = 1e-3;
  const double wanted = a.torque().newtonMetres();
  return std::abs(b.torque().newtonMetres() - wanted) <= share * wanted;
}

std::string_view writeBand(SetPointBand band) {
  switch (band) {
    case SetPointBand::Lower:
      return "up to 40 % of the maximum";
    case SetPointBand::Middle:
      return "40 % to 80 % of the maximum";
    case SetPointBand::Upper:
      return "above 80 % of the maximum";
  }
  return {};
}

SetPointBand bandOf(StatedTorque target, const Tool& tool) {
  const double share = target.torque().newtonMetres() / tool.maximumTorque().torque().newtonMetres();
  if (share <= lowerBand) return SetPointBand::Lower;
  return share <= middleBand ? SetPointBand::Middle : SetPointBand::Upper;
}

FleetBook::FleetBook(const std::vector<Tool>& tools, double confidence) : confidence_(confidence) {
  for (const Tool& tool : tools) tools_.emplace(tool.id, tool);
}

void FleetBook::count(const std::string& tool, Date day, std::int64_t tightenings) {
  auto& days = counts_[tool].days;
  const double before = days.empty() ? 0 : days.back().second;
  days.emplace_back(day, before + static_cast<double>(tightenings));
}

std::optional<double> FleetBook::Counts::upTo(Date day) const {
  if (days.empty()) return std::nullopt;
  const auto after = std::ranges::upper_bound(days, day, {}, [](const auto& one) { return one.first; });
  return after == days.begin() ? 0 : std::prev(after)->second;
}

FleetBook::Series& FleetBook::seriesFor(const PointSummary& point) {
  auto& own = ofTool_[point.tool];
  for (const std::size_t index : own) {
    Series& one = series_[index];
    if (one.direction == point.direction && sameSetPoint(point.target, one.target)) return one;
  }
  own.push_back(series_.size());
  const Tool& tool = tools_.at(point.tool);
  return series_.emplace_back(Series{.tool = &tool,
                                     .band = bandOf(point.target, tool),
                                     .direction = point.direction,
                                     .target = point.target,
                                     .member = {}});
}

void FleetBook::add(const PointSummary& point) {
  if (!tools_.contains(point.tool)) return;  // added by somebody else since the tools were read
  const auto counts = counts_.find(point.tool);
  const auto tightenings = counts == counts_.end() ? std::nullopt : counts->second.upTo(point.date);
  seriesFor(point).member.add({.date = point.date, .phase = point.phase, .deviationPercent = point.meanDeviation},
                              tightenings);
}

// From the finest to the coarsest; a tool whose maker nobody wrote down shares none.
std::vector<std::string> FleetBook::groupNames(const Tool& tool) const {
  const std::string made = (tool.maker.empty() ? "" : tool.maker + ", ") + kindName(tool);
  const auto named = named_.find(tool.id);
  const std::string finest = named != named_.end()
                                 ? "the shop's group " + named->second
                                 : fmt::format("{}, up to {}", made, writeTorque(tool.maximumTorque()));
  return {finest, made, kindName(tool)};
}

void FleetBook::settle(Date asOf) {
  std::vector<bool> waits(series_.size(), true);
  for (Series& one : series_) {
    const auto counts = counts_.find(one.tool->id);
    if (counts == counts_.end()) continue;
    if (const auto known = counts->second.upTo(asOf)) one.member.countUpTo(asOf, *known);
  }
  for (std::size_t level = 0; level < levels; ++level) {
    std::map<GroupKey, std::vector<std::size_t>> groups;
    for (std::size_t i = 0; i < series_.size(); ++i) {
      const Series& one = series_[i];
      groups[{groupNames(*one.tool)[level], one.band, one.direction}].push_back(i);
    }
    for (const auto& [key, alike] : groups) {
      if (std::ranges::none_of(alike, [&](std::size_t i) { return waits[i]; })) continue;
      Fleet fleet = fleetOf(alike);
      if (!fleet.isEstimated() && level + 1 < levels) continue;
      for (std::size_t place = 0; place < alike.size(); ++place) {
        if (!waits[alike[place]]) continue;
        waits[alike[place]] = false;
        series_[alike[place]].group = groups_.size();
        series_[alike[place]].place = place;
      }
      groups_.push_back({.name = groupName(key), .series = alike, .fleet = std::move(fleet)});
    }
  }
}

Fleet FleetBook::fleetOf(const std::vector<std::size_t>& alike) const {
  std::vector<FleetMember> members;
  double widest = 0;
  for (const std::size_t index : alike) {
    members.push_back(series_[index].member);
    widest = std::max(widest, series_[index].tool->permittedPercent());
  }
  return Fleet(members, widest, confidence_);
}

std::optional<std::size_t> FleetBook::indexOf(const std::string& tool, StatedTorque target,
                                              Direction direction) const {
  const auto own = ofTool_.find(tool);
  if (own == ofTool_.end()) return std::nullopt;
  for (const std::size_t index : own->second) {
    const Series& one = series_[index];
    if (one.direction == direction && sameSetPoint(target, one.target)) return index;
  }
  return std::nullopt;
}

std::optional<FleetBook::Place> FleetBook::find(const std::string& tool, StatedTorque target,
                                                Direction direction) const {
  const auto index = indexOf(tool, target, direction);
  if (!index) return std::nullopt;
  const Group& group = groups_[series_[*index].group];
  return Place{.fleet = &group.fleet, .member = series_[*index].place, .group = group.name};
}

std::optional<double> FleetBook::tighteningsUpTo(const std::string& tool, Date day) const {
  const auto counts = counts_.find(tool);
  return counts == counts_.end() ? std::nullopt : counts->second.upTo(day);
}

bool FleetBook::goesByTightenings() const {
  return std::ranges::any_of(groups_, [](const Group& one) { return one.fleet.exposure() == Exposure::Tightenings; });
}

}  // namespace steadyturn
