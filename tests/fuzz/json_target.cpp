// Any bytes as a document for each of the calculations: refused with reasons, or answered with a document that reads
// back.
#include "check_json.h"
#include "delivery_json.h"
#include "drift_json.h"
#include "driver.h"
#include "joint_json.h"

namespace {

using namespace steadyturn;

void look(const Result<OrderedJson>& result) {
  if (!result) {
    fuzz::promise(!result.error().empty(), "a refusal has a reason");
    return;
  }
  fuzz::promise(parseDocument(writeDocument(*result), "answer").has_value(), "an answer is a document");
}

}  // namespace

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto document = parseDocument(fuzz::textOf(data, size), "fuzz");
  if (!document) return 0;
  look(readCheckInput(*document).and_then(evaluateCheck).map(checkResultJson));
  look(readDriftInput(*document).and_then(evaluateDrift).map(driftResultJson));
  look(readJointInput(*document).and_then(evaluateJoint).map(jointResultJson));
  look(readDeliveryInput(*document).map(
      [](const DeliveryInput& input) { return deliveryResultJson(deliver(input), findBestSetting(input)); }));
  return 0;
}
