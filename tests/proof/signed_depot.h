// The demo depot with everything else that a ledger can tell of: keys, signatures, papers, ranges, a bench set-up, an
// import; older copies of it, and what somebody outside has written down.
#pragma once

#include <string>
#include <vector>

#include "shop_proof.h"

namespace steadyturn {

struct OlderCopy {
  std::string path;
  std::int64_t entries = 0;
};

struct SignedDepot {
  SignedDepot();
  std::string fresh() const;  // a copy to do things to; replaces the last

  std::string original, copy;
  std::vector<OlderCopy> older;
  Checkpoint outside;         // of the newest head
  std::string trustedKey;     // the first key
  std::int64_t signedTo = 0;  // the entry of the last signature
};

const SignedDepot& signedDepot();

}  // namespace steadyturn
