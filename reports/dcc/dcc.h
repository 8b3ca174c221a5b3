// The certificate of a check as a Digital Calibration Certificate (DCC 3.3.0 with D-SI 2.2.1, an open schema). It
// carries the stored facts, as the paper does, in a form that a program reads.
#pragma once

#include <QIODevice>

#include "certificate.h"

namespace steadyturn {

// One XML document, UTF-8; CannotCreate when it can't be written to its end. BadInput when a stored reading is not a
// number. The schema asks for a country: where the shop has not said one, ZZ is written (a code that ISO 3166-1
// leaves to users).
Result<void> writeDcc(const CertificateData& data, QIODevice& out);

}  // namespace steadyturn
