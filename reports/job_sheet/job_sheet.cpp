#include "job_sheet.h"

#include <fmt/format.h>

namespace steadyturn {
namespace {

constexpr const char* none = "–";

std::string stepsWords(const Fastener& spec) {
  std::string words;
  for (const auto& stage : spec.steps()) words += (words.empty() ? "" : ", then ") + stageInWords(stage, spec.unit);
  return words;
}

std::string limitWords(const Fastener& spec) {
  if (spec.needsPartLimit()) return "PLASTIC, NO LIMIT ON RECORD";
  if (!spec.partLimit) return none;
  const std::string limit = writeTorque({*spec.partLimit, spec.unit});
  return spec.limitBasis.empty() ? limit : limit + " (proposal)";
}

// What to look at besides the torque, in the order of the work.
std::string lookWords(const Fastener& spec) {
  std::string words;
  const auto add = [&](const std::string& text) {
    if (!text.empty()) words += (words.empty() ? "" : "; ") + text;
  };
  if (spec.renew.value_or(false)) add("renew the " + (spec.seal.empty() ? std::string("part") : spec.seal));
  add(spec.lubrication);
  add(spec.sequence);
  add(spec.seatCheck);
  if (!spec.released()) add("SPECIFICATION NOT RELEASED");
  return words.empty() ? none : words;
}

TableBlock toDo(const JobSheet& sheet) {
  TableBlock table{.heading = "To be tightened",
                   .columns = {{"Fastener"}, {"What"}, {"Torque"}, {"Part's limit"}, {"Look at"}, {"Source"}},
                   .rows = {}};
  for (const auto& line : sheet.lines) {
    const auto& spec = line.spec;
    const std::string source = spec.source.empty() ? "not on record" : spec.source;
    table.rows.push_back({spec.id, spec.component, stepsWords(spec), limitWords(spec), lookWords(spec),
                          source + (spec.revision.empty() ? "" : ", " + spec.revision)});
  }
  return table;
}

std::string tick(std::optional<bool> flag) { return !flag ? none : *flag ? "yes" : "NO"; }

std::string stagesDone(const JobLine& line, const Tightening& one) {
  return one.stagesDone ? fmt::format("{} of {}", *one.stagesDone, line.spec.steps().size()) : none;
}

// Lines that nobody has done yet are left to be filled in by hand.
TableBlock done(const JobSheet& sheet) {
  TableBlock table{.heading = "Done",
                   .columns = {{"Fastener"},
                               {"Day"},
                               {"Tool"},
                               {"Set to", Align::Right},
                               {"Stages"},
                               {"Seat seen"},
                               {"Seal renewed"},
                               {"By"}},
                   .rows = {}};
  for (const auto& line : sheet.lines) {
    if (line.tightenings.empty()) table.rows.push_back({line.spec.id, "", "", "", "", "", "", ""});
    for (const auto& one : line.tightenings) {
      table.rows.push_back({line.spec.id, writeDate(one.date), one.tool, writeTorque(one.settingTorque()),
                            stagesDone(line, one), tick(one.seatChecked), tick(one.sealRenewed), one.by});
    }
  }
  return table;
}

std::string dayAndName(const JobEvent& event) {
  return writeDate(event.date) + (event.by.empty() ? "" : ", " + event.by);
}

FactsBlock factsOf(const JobSheet& sheet) {
  FactsBlock block{.heading = "", .facts = {{"Job", sheet.job.id}, {"Vehicle", sheet.job.vehicle}}};
  if (sheet.job.opened) {
    if (!sheet.job.opened->service.empty()) block.facts.push_back({"Service", sheet.job.opened->service});
    block.facts.push_back({"Opened", dayAndName(*sheet.job.opened)});
  }
  block.facts.push_back({"Closed", sheet.job.closed ? dayAndName(*sheet.job.closed) : "not yet"});
  return block;
}

std::string lacking(const JobSheet& sheet) {
  std::string words;
  for (const auto& line : sheet.lines) {
    for (const auto& missing : missingOf(line)) {
      words += fmt::format("{}{}: {}", words.empty() ? "" : "; ", line.spec.id, missing);
    }
  }
  if (words.empty()) return "Nothing.";
  if (sheet.job.closed && !sheet.job.closed->note.empty())
    words += ". Closed as it is because: " + sheet.job.closed->note;
  return words + '.';
}

}  // namespace

ReportDocument buildJobSheet(const JobSheetData& data) {
  ReportDocument report{.title = "Job sheet",
                        .number = data.sheet.job.id,
                        .issuer = data.shopPlace.empty() ? data.shopName : data.shopName + ", " + data.shopPlace,
                        .issued = writeDate(data.issued),
                        .blocks = {}};
  report.blocks.push_back(factsOf(data.sheet));
  if (data.sheet.lines.empty()) {
    report.blocks.push_back(
        ParagraphBlock{.heading = "To be tightened", .text = "No fastener is on this sheet yet."});
  } else {
    report.blocks.push_back(toDo(data.sheet));
    report.blocks.push_back(done(data.sheet));
    report.blocks.push_back(ParagraphBlock{.heading = "Still lacking", .text = lacking(data.sheet)});
  }
  report.blocks.push_back(ParagraphBlock{
      .heading = "Cautions",
      .text = "The vehicle maker's service data come first. Stay below a part's limit: force breaks plastic. Look at "
              "the seat instead of trusting the click: a thick new seal can take up torque before the flange sits "
              "flat."});
  report.blocks.push_back(SignatureBlock{.roles = {"Tightened by", "Looked over by"}});
  return report;
}

}  // namespace steadyturn
