#include <array>
#include <utility>

#include "check_gathering.h"
#include "check_recording.h"
#include "kinds.h"

namespace steadyturn {
namespace {

constexpr auto columns = std::to_array<FileColumn>({{"tool", true},
                                                    {"date", true},
                                                    {"phase", true},
                                                    {"target", true},
                                                    {"reading", true},
                                                    {"unit", true},
                                                    {"reference"},
                                                    {"by"}});

class CheckIntake : public Intake {
 public:
  explicit CheckIntake(ImportRun& import) : import_(import), gathering_(import.shop, import.options) {}

  void take(ImportRow& row) override { gathering_.take(row); }

  void finish(const EntryStamp& stamp, const std::function<bool(double)>& advance) override {
    auto& checks = gathering_.checks();
    const DecisionRule rule = import_.shop.policy().rule;
    for (std::size_t i = 0; i < checks.size(); ++i) {
      if (!advance(static_cast<double>(i) / static_cast<double>(checks.size()))) return;
      if (checks[i].sound) record(checks[i], rule, stamp);
      checks[i] = {};  // a million readings need not lie in memory twice
    }
  }

 private:
  void record(const GatheredCheck& gathered, DecisionRule rule, const EntryStamp& stamp) {
    const CheckBasis basis{.tool = gathered.tool, .reference = gathered.reference, .rule = rule, .variation = {}};
    const auto evaluated = evaluateTyped(gathered.draft, basis);
    if (!evaluated) {
      for (Problem problem : evaluated.error()) {
        problem.line = lineOf(gathered, problem);
        import_.problems.add(std::move(problem));
      }
    } else if (import_.problems.empty()) {
      import_.shop.checks.add(evaluated->check, stamp);
      ++import_.report.records;
    }
  }

  // A problem with a target is one of that set-point's rows; any other is the whole check's.
  static std::size_t lineOf(const GatheredCheck& gathered, const Problem& problem) {
    const auto& points = gathered.draft.points;
    for (std::size_t i = 0; i < points.size() && problem.field == "target"; ++i) {
      const std::string& target = points[i].target;
      if (problem.found == target || problem.found.starts_with(target + " ")) return gathered.pointLines[i];
    }
    return gathered.line;
  }

  ImportRun& import_;
  CheckGathering gathering_;
};

void writeCheck(TableWriter& writer, const Check& check) {
  for (const CheckPoint& point : check.points) {
    for (const std::string& reading : point.readings) {
      writer.text(check.tool);
      writer.date(check.date);
      writer.code(writePhase(check.phase));
      writer.number(point.target.value);
      writer.typedNumber(reading);
      writer.code(unitCode(point.target.unit));
      writer.text(check.reference);
      writer.text(check.by);
      writer.endRow();
    }
  }
}

// The store hands them over in order of tool, so that the tool at hand says how far it is.
void writeChecks(const Shop::Inside& shop, TableWriter& writer) {
  const std::vector<Tool> tools = shop.tools.all();
  std::size_t at = 0;
  shop.checks.forEach([&](const Check& check) {
    while (at < tools.size() && tools[at].id != check.tool) ++at;
    writeCheck(writer, check);
    return writer.advance(static_cast<double>(at) / static_cast<double>(tools.size()));
  });
}

}  // namespace

const FileKind checkFile{
    .columns = columns,
    .intake = [](ImportRun& import) -> std::unique_ptr<Intake> { return std::make_unique<CheckIntake>(import); },
    .write = writeChecks};

}  // namespace steadyturn
