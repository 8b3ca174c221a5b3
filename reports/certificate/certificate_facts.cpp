#include "certificate_facts.h"

#include <fmt/format.h>

#include "certificate_words.h"

namespace steadyturn {
namespace {

constexpr const char* notRecorded = "not recorded";

std::string orNotRecorded(const std::string& text) { return text.empty() ? notRecorded : text; }

std::string rangeWords(const Tool& tool) {
  const auto maximum = writeTorque(tool.maximumTorque());
  if (rulesFor(tool.kind).fixedValue) return maximum + ", fixed";
  const auto minimum = tool.minimumTorque();
  return minimum ? fmt::format("{} to {}", writeTorque(*minimum), maximum)
                 : fmt::format("up to {} (no lowest marked value recorded)", maximum);
}

std::string surroundingsWords(const Check& check) {
  std::string words =
      check.temperatureC ? fmt::format("{} °C", writeRounded(*check.temperatureC)) : "temperature not recorded";
  words += check.humidityPercent ? fmt::format(", {} % relative humidity", writeRounded(*check.humidityPercent))
                                 : ", humidity not recorded";
  return words;
}

}  // namespace

FactsBlock toolFacts(const Tool& tool) {
  FactsBlock block{.heading = "Tool", .facts = {{"Identification", tool.id}}};
  if (!tool.description.empty()) block.facts.push_back({"Description", tool.description});
  block.facts.push_back({"Maker", orNotRecorded(tool.maker)});
  block.facts.push_back({"Serial number", orNotRecorded(tool.serial)});
  block.facts.push_back(
      {"Type and class", fmt::format("Type {}, class {}: {} (ISO 6789-1:2017)", writeType(tool.kind.type),
                                     writeClass(tool.kind.cls), describe(tool.kind))});
  block.facts.push_back({"Range", rangeWords(tool)});
  const auto resolution = tool.resolutionTorque();
  block.facts.push_back({"Graduation", resolution ? writeTorque(*resolution) : notRecorded});
  if (!tool.drive.empty()) block.facts.push_back({"Output drive", tool.drive});
  return block;
}

FactsBlock checkFacts(const CertificateData& data) {
  const auto& check = data.check;
  FactsBlock block{.heading = "Check",
                   .facts = {{"Customer", "the workshop itself"},
                             {"Date of the check", writeDate(check.date)},
                             {"State of the tool", std::string(phaseWords(check.phase))},
                             {"Condition and remarks", check.note.empty() ? "none recorded" : check.note},
                             {"Direction", std::string(writeDirection(check.direction))},
                             {"Place", data.shopPlace.empty() ? "the workshop's own bench" : data.shopPlace},
                             {"Surroundings", surroundingsWords(check)},
                             {"Checked by", orNotRecorded(check.by)},
                             {"Method",
                              "Readings of a reference standard at each set-point of the tool; deviation "
                              "a = (Xa − Xr) / Xr × 100 %, Xa the value set or shown, Xr the reference value "
                              "(ISO 6789-1:2017). A tool with a > 0 delivers less than it says. Uncertainty after "
                              "ISO 6789-2:2017."}}};
  if (check.corrects) {
    block.facts.push_back(
        {"Replaces", fmt::format("check {}: {}", *check.corrects, orNotRecorded(check.correctionReason))});
  }
  if (check.verdict == Verdict::Fail) {
    block.facts.push_back({"Next check due", "before any further use: the tool failed this one"});
  } else if (data.dueDate) {
    block.facts.push_back({"Next check due", fmt::format("{}, the workshop's own date", writeDate(*data.dueDate))});
  }
  block.facts.push_back({"Record", fmt::format("check {}", check.id)});
  if (data.ledger) {
    block.facts.back().value +=
        fmt::format(", entry {} of {} in the workshop's ledger", data.ledger->sequence, data.ledger->size);
    block.facts.push_back({"Checkpoint", checkpointOf(*data.ledger)});
  }
  return block;
}

std::string checkpointOf(const LedgerPlace& place) { return fmt::format("{}:{}", place.size, place.root); }

FactsBlock referenceFacts(const CertificateData& data) {
  FactsBlock block{.heading = "Reference standard and its traceability", .facts = {}};
  const auto& used = data.check.referenceUncertainty;
  if (data.reference) {
    const auto& reference = *data.reference;
    block.facts.push_back({"Identification", reference.id});
    if (!reference.description.empty()) block.facts.push_back({"Description", reference.description});
    block.facts.push_back({"Serial number", orNotRecorded(reference.serial)});
    block.facts.push_back({"Certificate", orNotRecorded(reference.certificate)});
    block.facts.push_back({"Calibrated", reference.calibrated ? writeDate(*reference.calibrated) : notRecorded});
    if (reference.due) {
      const bool late = *reference.due < data.check.date;
      block.facts.push_back(
          {"Due", writeDate(*reference.due) + (late ? ": it was overdue on the day of the check" : "")});
    }
  } else if (!data.check.reference.empty()) {
    block.facts.push_back({"Identification", data.check.reference + " (no longer on record)"});
  } else {
    block.facts.push_back({"Identification", "not known: this check carries no traceability"});
  }
  block.facts.push_back(
      {"Uncertainty used", fmt::format("W = {} % of reading, k = {}", writeRounded(used.expandedPercent),
                                       writeRounded(used.coverageFactor))});
  block.facts.push_back({"Own error used", fmt::format("{} %", writeRounded(used.errorPercent))});
  return block;
}

}  // namespace steadyturn
