// What the ledger tells of keys and signatures.
#pragma once

#include "ledger.h"
#include "signing.h"

namespace steadyturn {

Facts signingFacts(const SigningKey& key);
Facts signingFacts(const SignedCheckpoint& checkpoint);

// As far as `facts` have them; a fact that is not there or of another sort is left empty. For entries as they are
// found.
SigningKey signingKeyOf(const Facts& facts);
SignedCheckpoint signedCheckpointOf(const Facts& facts);

}  // namespace steadyturn
