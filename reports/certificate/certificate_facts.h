// The blocks of a certificate that state facts: tool, check, reference standard.
#pragma once

#include "certificate.h"

namespace steadyturn {

FactsBlock toolFacts(const Tool& tool);
FactsBlock checkFacts(const CertificateData& data);
std::string checkpointOf(const LedgerPlace& place);  // "SIZE:ROOT"
FactsBlock referenceFacts(const CertificateData& data);

}  // namespace steadyturn
