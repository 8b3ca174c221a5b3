// The shop's tools as fleets: which are alike, what each fleet's record says, and each tool's place in it.
//
// Tools are alike that a person put into one group by name. Otherwise, and where such a group has no record of its
// own, those are that share maker, kind (ISO 6789 type and class) and maximum; where those have no record of their
// own, the same maker and kind; then the same kind. A fleet holds one set-point of each tool in one direction: the
// set-points of one check share that day's conditions, so taking them for independent would count one check three
// times. Set-points correspond by their share of the tool's maximum: up to 40 %, up to 80 %, above.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "fleet.h"
#include "records.h"

namespace steadyturn {

enum class SetPointBand { Lower, Middle, Upper };
std::string_view writeBand(SetPointBand band);  // "up to 40 % of the maximum", …
SetPointBand bandOf(StatedTorque target, const Tool& tool);

class FleetBook {
 public:
  struct Place {
    const Fleet* fleet = nullptr;
    std::size_t member = 0;
    std::string group;  // "maker B, type II class A, up to 100 N·m"
  };

  // Gathers names, counts, then checks; settle() groups and fits.
  FleetBook(const std::vector<Tool>& tools, double confidence);
  // The shop's own group of a tool. REQUIRES: not empty.
  void name(const std::string& tool, const std::string& group) { named_[tool] = group; }
  // Day by day, rising. A tool without counts goes by days.
  void count(const std::string& tool, Date day, std::int64_t tightenings);
  void add(const PointSummary& point);  // a tool's in order of time
  void settle(Date asOf);

  // Absent: a tool or set-point without a check.
  std::optional<Place> find(const std::string& tool, StatedTorque target, Direction direction) const;
  bool goesByTightenings() const;

  struct Series {
    const Tool* tool = nullptr;
    SetPointBand band = SetPointBand::Lower;
    Direction direction = Direction::Clockwise;
    StatedTorque target;
    FleetMember member;
    std::size_t group = 0, place = 0;  // where it was settled
  };
  struct Group {
    std::string name;
    std::vector<std::size_t> series;  // in the fleet's order; some may be settled in a finer group
    Fleet fleet;
  };
  const std::vector<Series>& series() const { return series_; }
  const std::vector<Group>& groups() const { return groups_; }
  std::optional<std::size_t> indexOf(const std::string& tool, StatedTorque target, Direction direction) const;
  std::optional<double> tighteningsUpTo(const std::string& tool, Date day) const;  // absent: nobody counted

 private:
  struct Counts {
    std::vector<std::pair<Date, double>> days;  // tightenings up to and with the day
    std::optional<double> upTo(Date day) const;
  };
  Series& seriesFor(const PointSummary& point);
  std::vector<std::string> groupNames(const Tool& tool) const;
  Fleet fleetOf(const std::vector<std::size_t>& alike) const;

  double confidence_;
  std::map<std::string, Tool, std::less<>> tools_;
  std::map<std::string, std::string, std::less<>> named_;
  std::map<std::string, Counts, std::less<>> counts_;
  std::vector<Series> series_;
  std::map<std::string, std::vector<std::size_t>, std::less<>> ofTool_;
  std::vector<Group> groups_;
};

// Do two statements mean one set-point (20 N·m, 14.75 lbf·ft rounded)?
bool sameSetPoint(StatedTorque a, StatedTorque b);

}  // namespace steadyturn
