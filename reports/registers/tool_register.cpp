#include "tool_register.h"

#include <fmt/format.h>

#include <algorithm>

namespace steadyturn {
namespace {

std::string rangeWords(const Tool& tool) {
  const auto maximum = writeTorque(tool.maximumTorque());
  if (rulesFor(tool.kind).fixedValue) return maximum + ", fixed";
  if (!tool.minimum) return "up to " + maximum;
  return fmt::format("{} to {}", writeRounded(*tool.minimum), maximum);
}

// "Harbourside Tools, HT-20419".
std::string origin(const Tool& tool) {
  if (tool.maker.empty() || tool.serial.empty()) return tool.maker + tool.serial;
  return tool.maker + ", " + tool.serial;
}

std::string stateWords(const RegisterEntry& entry) {
  const auto& reason = entry.tool.statusReason;
  return reason.empty() ? entry.state : entry.state + ": " + reason;
}

std::vector<std::string> rowOf(const RegisterEntry& entry, const ToolRegisterData& data) {
  const auto& tool = entry.tool;
  return {tool.id,
          tool.description,
          origin(tool),
          fmt::format("{} {}", writeType(tool.kind.type), writeClass(tool.kind.cls)),
          rangeWords(tool),
          writeRounded(tool.permittedPercent()),
          std::to_string(tool.intervalDays.value_or(data.intervalDays)),
          entry.lastCheck ? writeDate(*entry.lastCheck) : "none",
          entry.due ? writeDate(*entry.due) : "",
          stateWords(entry)};
}

FactsBlock counts(const std::vector<RegisterEntry>& entries) {
  FactsBlock block{.heading = "", .facts = {{"Tools", std::to_string(entries.size())}}};
  std::vector<std::pair<std::string, int>> states;
  for (const auto& entry : entries) {
    const auto known = std::ranges::find(states, entry.state, &std::pair<std::string, int>::first);
    if (known == states.end()) {
      states.emplace_back(entry.state, 1);
    } else {
      ++known->second;
    }
  }
  std::ranges::sort(states);
  for (const auto& [state, count] : states) block.facts.push_back({"of these " + state, std::to_string(count)});
  return block;
}

}  // namespace

ReportDocument buildToolRegister(const ToolRegisterData& data) {
  const auto today = writeDate(data.today);
  ReportDocument report{.title = "Register of torque tools",
                        .number = fmt::format("register-{}", today),
                        .issuer = data.shopPlace.empty() ? data.shopName : data.shopName + ", " + data.shopPlace,
                        .issued = today,
                        .blocks = {}};
  report.blocks.push_back(counts(data.entries));
  TableBlock table{.heading = "Tools",
                   .columns = {{"Tool"},
                               {"Description"},
                               {"Maker, serial"},
                               {"Type, class"},
                               {"Range"},
                               {"Limit, ± %", Align::Right},
                               {"Interval, days", Align::Right},
                               {"Last check"},
                               {"Next due"},
                               {"State"}},
                   .rows = {}};
  for (const auto& entry : data.entries) table.rows.push_back(rowOf(entry, data));
  report.blocks.push_back(std::move(table));
  report.blocks.push_back(ParagraphBlock{
      .heading = "",
      .text = fmt::format("Type and class, and the limit of a tool without one of its own: ISO "
                          "6789-1:2017. Interval, due date and state are the workshop's own, as of {}.",
                          today)});
  return report;
}

}  // namespace steadyturn
