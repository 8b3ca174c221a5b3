// A reference standard's own Digital Calibration Certificate (DCC 3.x with D-SI 2.x), read for what a bench needs of
// it: its number, its day, whose it is, and the largest uncertainty and error it states. Nothing is resolved from
// outside the file: a document type or an entity declaration is refused.
#pragma once

#include <QIODevice>
#include <optional>
#include <string>

#include "records.h"

namespace steadyturn {

struct ReferenceCertificate {
  std::string number;                     // uniqueIdentifier
  std::string laboratory;                 // who calibrated it
  std::string description;                // the item's name
  std::string serial;                     // its serial number, or the manufacturer's identification
  std::optional<Date> calibrated;         // the last day of the calibration
  double expandedUncertaintyPercent = 0;  // the largest relative one of all values stated
  double coverageFactor = 2;              // that goes with it
  double errorPercent = 0;                // the error largest in size, with its sign; 0 where none is stated
  std::optional<StatedTorque> low, high;  // lowest and highest torque that the results cover
  int values = 0;                         // that stated an uncertainty
};

// Values in newton metres (also with an SI prefix) or in per cent count; of a hybrid quantity its SI part. BadInput,
// field "certificate", for what is no such certificate, states no expanded uncertainty, or is larger than 16 MB.
Result<ReferenceCertificate> readDcc(QIODevice& in);

}  // namespace steadyturn
