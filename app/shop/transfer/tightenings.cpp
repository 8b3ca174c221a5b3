#include <array>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "register_intake.h"

namespace steadyturn {
namespace {

constexpr auto columns = std::to_array<FileColumn>({{"job", true},
                                                    {"vehicle"},
                                                    {"date", true},
                                                    {"fastener", true},
                                                    {"tool", true},
                                                    {"setting", true},
                                                    {"unit", true},
                                                    {"seat_checked"},
                                                    {"by"}});
enum Cell { job, vehicle, date, fastener, tool, setting, unit, seatChecked, by };

class TighteningIntake : public Intake {
 public:
  explicit TighteningIntake(ImportRun& import) : import_(import) {
    for (const Fastener& one : import.shop.fasteners.all()) newestNumber_.emplace(one.id, one.number);
    for (const Tool& one : import.shop.tools.all()) tools_.insert(one.id);
  }

  void take(ImportRow& row) override {
    Tightening read = readTightening(row);
    findFastener(row, read);
    if (!read.tool.empty() && !tools_.contains(read.tool)) {
      row.refuse(tool, read.tool, "a tool of this shop; import the tools first", ProblemKind::NotFound);
    }
    if (row.sound()) {
      if (const Problems problems = problemsOf(read); !problems.empty()) row.refuse(problems);
    }
    if (row.sound()) refuseOtherVehicle(row, read);
    if (row.sound()) refuseDuplicate(row, read);
    if (row.sound()) tightenings_.push_back(std::move(read));
  }

  void finish(const EntryStamp& stamp, const std::function<bool(double)>& advance) override {
    if (!import_.problems.empty()) return;
    for (std::size_t i = 0; i < tightenings_.size(); ++i) {
      if (!advance(static_cast<double>(i) / static_cast<double>(tightenings_.size()))) return;
      import_.shop.tightenings.add(tightenings_[i], stamp);
      ++import_.report.records;
    }
  }

 private:
  Tightening readTightening(ImportRow& row) const {
    row.torque(setting);
    Tightening read{.job = row.text(job),
                    .vehicle = row.text(vehicle),
                    .date = row.date(date),
                    .fastener = row.text(fastener),
                    .tool = row.text(tool),
                    .setting = row.typedNumber(setting),
                    .unit = row.unit(unit),
                    .seatChecked = row.flag(seatChecked),
                    .by = row.text(by)};
    if (read.by.empty()) read.by = import_.options.by;
    return read;
  }

  void findFastener(ImportRow& row, Tightening& read) const {
    const auto found = newestNumber_.find(read.fastener);
    if (found != newestNumber_.end()) {
      read.fastenerNumber = found->second;
    } else if (!read.fastener.empty()) {
      row.refuse(fastener, read.fastener, "a fastener of this shop; import the fasteners first",
                 ProblemKind::NotFound);
    }
  }

  // A job is of one vehicle.
  void refuseOtherVehicle(ImportRow& row, const Tightening& read) {
    auto known = vehicleOfJob_.find(read.job);
    if (known == vehicleOfJob_.end()) {
      const auto stored = import_.shop.tightenings.ofJob(read.job);
      known = vehicleOfJob_.emplace(read.job, stored.empty() ? read.vehicle : stored.front().vehicle).first;
    }
    if (known->second == read.vehicle) return;
    row.refuse(vehicle, read.vehicle, "the vehicle of job " + read.job + ", " + known->second, ProblemKind::Conflict);
  }

  // The shop may hold it under an older revision of the fastener, which the file does not tell.
  void refuseDuplicate(ImportRow& row, const Tightening& read) const {
    Tightening stored = read;
    for (stored.fastenerNumber = read.fastenerNumber; stored.fastenerNumber >= 1; --stored.fastenerNumber) {
      if (!import_.shop.tightenings.exists(stored)) continue;
      row.refuse(job, read.job, "a tightening that the shop does not have already", ProblemKind::Conflict);
      return;
    }
  }

  ImportRun& import_;
  std::unordered_map<std::string, int> newestNumber_;
  std::unordered_set<std::string> tools_;
  std::unordered_map<std::string, std::string> vehicleOfJob_;
  std::vector<Tightening> tightenings_;
};

void writeTightening(TableWriter& writer, const Tightening& from) {
  writer.text(from.job);
  writer.text(from.vehicle);
  writer.date(from.date);
  writer.text(from.fastener);
  writer.text(from.tool);
  writer.typedNumber(from.setting);
  writer.code(unitCode(from.unit));
  writer.flag(from.seatChecked);
  writer.text(from.by);
}

}  // namespace

const FileKind tighteningFile{
    .columns = columns,
    .intake = [](ImportRun& import) -> std::unique_ptr<Intake> { return std::make_unique<TighteningIntake>(import); },
    .write = [](const Shop::Inside& shop,
                TableWriter& writer) { writeRegister(writer, shop.tightenings.all(), writeTightening); }};

}  // namespace steadyturn
