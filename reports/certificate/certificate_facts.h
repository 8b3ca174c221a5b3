// The blocks of a certificate that state facts: tool, check, reference standard.
#pragma once

#include "certificate.h"

namespace steadyturn {

FactsBlock toolFacts(const Tool& tool);
FactsBlock checkFacts(const CertificateData& data);
FactsBlock referenceFacts(const CertificateData& data);

}  // namespace steadyturn
