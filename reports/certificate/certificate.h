// The certificate of one check: what ISO/IEC 17025:2017 7.8.2 and 7.8.4 and ISO 6789-2 ask for, as far as it applies
// to a workshop's own bench. It prints the stored facts of the check; no accreditation is claimed.
#pragma once

#include <optional>

#include "records.h"
#include "report_document.h"

namespace steadyturn {

// Whose key vouches for the head of the ledger (Ed25519, RFC 8032), over the text that db/proof/PROVING.md tells of.
struct LedgerSignature {
  std::string shop, key, publicKey, holder;
  std::string at;  // UTC
  std::string signature;
};

// Where the check stands in the shop's ledger. With it every copy of the paper is a witness outside the shop: the
// entry's bytes hash to `leaf`, and folding `path` in leads to `root` (RFC 9162, 2.1.3.2). Hashes in hex.
struct LedgerPlace {
  std::int64_t sequence = 0;  // of the entry, from 1
  std::string leaf;
  std::uint64_t size = 0;  // entries in the ledger when issued
  std::string root;
  std::vector<std::string> path;  // from the leaf up
  std::optional<LedgerSignature> signature{};
};

// The certificate as it was last handed out in print: what links the machine-readable one to it.
struct PrintedCopy {
  std::string sha256;  // of the PDF's bytes, hex
  std::string at;      // UTC
};

struct CertificateData {
  std::string shopName, shopPlace;
  Tool tool;
  Check check;
  std::optional<Reference> reference;
  std::optional<Check> before;  // the as-found check of the same visit, when this one is as left
  Date issued{};
  std::string number;           // "check 42 of Depot North"
  std::string country{};        // ISO 3166-1 alpha-2, "" when the shop has not said
  std::optional<Date> dueDate;  // the shop's own, stated as such
  std::optional<LedgerPlace> ledger;
  std::optional<PrintedCopy> printed{};
};

ReportDocument buildCertificate(const CertificateData& data);

}  // namespace steadyturn
