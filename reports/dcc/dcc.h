// The certificate of a check as a Digital Calibration Certificate (DCC 3.3.0, D-SI 2.2.1).
#pragma once

#include <QIODevice>

#include "certificate.h"

namespace steadyturn {

// Writes one XML document, UTF-8. CannotCreate when it can't be written to its end.
Result<void> writeDcc(const CertificateData& data, QIODevice& out);

}  // namespace steadyturn
