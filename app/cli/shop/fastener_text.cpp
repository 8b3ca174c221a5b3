#include "fastener_text.h"

#include "display_text.h"
#include "figures.h"
#include "text_table.h"

namespace steadyturn {
namespace {

std::string inTwoUnits(const Fastener& fastener, std::optional<double> value) {
  return value ? torqueInTwoUnits({*value, fastener.unit}) : std::string();
}

std::string limitOf(const Fastener& fastener) {
  if (fastener.partLimit) {
    return inTwoUnits(fastener, fastener.partLimit) + ", never to be passed" +
           (fastener.limitBasis.empty() ? "" : "; not the maker's value: " + fastener.limitBasis);
  }
  return fastener.plastic() ? "NONE on record for a plastic part: look it up before tightening" : "";
}

std::string stagesOf(const Fastener& fastener) {
  std::string text;
  for (const auto& stage : fastener.stages) {
    text += text.empty() ? "" : ", ";
    text += stage.angle ? "turn by " + figure(stage.value) + " degrees" : torqueText({stage.value, fastener.unit});
  }
  return text;
}

std::string releaseOf(const Fastener& fastener) {
  if (!fastener.released()) return "NOT RELEASED: waits for the approval of a second person";
  return "approved by " + fastener.approvedBy + " on " + dateFigure(fastener.approvedOn);
}

std::string yesOrNo(std::optional<bool> flag) {
  if (!flag) return {};
  return *flag ? "yes, every time" : "no";
}

}  // namespace

std::string torqueInTwoUnits(StatedTorque torque) {
  const bool metric = torque.unit != Unit::PoundForceFoot && torque.unit != Unit::PoundForceInch &&
                      torque.unit != Unit::OunceForceInch;
  constexpr double smallNewtonMetres = 15;  // below it, pound-force inches are the handier number
  const Unit imperial =
      torque.torque().newtonMetres() < smallNewtonMetres ? Unit::PoundForceInch : Unit::PoundForceFoot;
  return torqueText(torque) + " (" + torqueText(convert(torque, metric ? imperial : Unit::NewtonMetre)) + ")";
}

std::string fastenerText(const Fastener& fastener) {
  return factLines({{"fastener", fastener.id},
                    {"component", fastener.component},
                    {"assembly", fastener.assembly},
                    {"thread", fastener.thread},
                    {"property class", fastener.propertyClass},
                    {"part material", fastener.partMaterial},
                    {"drive", fastener.drive},
                    {"target", torqueInTwoUnits(fastener.targetTorque())},
                    {"low", inTwoUnits(fastener, fastener.low)},
                    {"high", inTwoUnits(fastener, fastener.high)},
                    {"then turn by", fastener.angleDeg ? figure(fastener.angleDeg) + " degrees" : ""},
                    {"stages", stagesOf(fastener)},
                    {"sequence", fastener.sequence},
                    {"part's limit", limitOf(fastener)},
                    {"seal", fastener.seal},
                    {"renew", yesOrNo(fastener.renew)},
                    {"lubrication", fastener.lubrication},
                    {"seating", fastener.seatCheck},
                    {"source", fastener.source.empty() ? "not on record" : fastener.source},
                    {"revision", fastener.revision},
                    {"shop's revision", std::to_string(fastener.number)},
                    {"revised because", fastener.revisionReason},
                    {"entered by", fastener.enteredBy},
                    {"release", releaseOf(fastener)}});
}

}  // namespace steadyturn
