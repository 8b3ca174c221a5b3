#include "certificate.h"

#include <fmt/format.h>

#include "certificate_facts.h"
#include "certificate_results.h"
#include "certificate_words.h"
#include "recomputed_check.h"

namespace steadyturn {
namespace {

ParagraphBlock uncertaintyWords() {
  return {.heading = "",
          .text =
              "W is the relative expanded measurement uncertainty: the standard uncertainty w multiplied by the "
              "coverage factor "
              "k = 2, which for a normal distribution corresponds to a coverage probability of about 95 %. "
              "W′ = |mean deviation| + W + |error of the reference| (ISO 6789-2:2017). \"Within limits\" is the "
              "probability that "
              "the tool's true mean deviation lies within the permissible deviation."};
}

std::string notEvaluatedWords(const std::vector<std::string>& sources) {
  std::vector<std::string_view> words;
  for (const auto& source : sources) words.push_back(budgetWords(source));
  return fmt::format(
      "Not evaluated and counted as 0 in the budget: {}. The true uncertainty is larger than stated where these "
      "matter.",
      fmt::join(words, "; "));
}

void addNotes(ReportDocument& report, const CheckResult& recomputed) {
  std::vector<std::string> open;
  for (const auto& note : recomputed.notes) open.push_back(writeNote(note));
  if (!recomputed.notEvaluated.empty()) open.push_back(notEvaluatedWords(recomputed.notEvaluated));
  if (open.empty()) return;
  report.blocks.push_back(
      ParagraphBlock{.heading = "What this check leaves open", .text = fmt::format("{}", fmt::join(open, "\n"))});
}

void addEvidence(ReportDocument& report, const CertificateData& data) {
  const auto recomputed = recompute(data.tool, data.check);
  if (!recomputed) {
    report.blocks.push_back(ParagraphBlock{
        .heading = "Readings and uncertainty budget",
        .text = "The stored readings of this check can't be evaluated again, so neither their deviations nor the "
                "uncertainty budget are printed; the figures above are those recorded at the time."});
    return;
  }
  addNotes(report, *recomputed);
  report.blocks.push_back(readingsTable(data.check, *recomputed));
  report.blocks.push_back(budgetTable(*recomputed));
  if (!agrees(data.check, *recomputed)) {
    report.blocks.push_back(ParagraphBlock{
        .heading = "",
        .text = "The budget was recomputed from the tool's record as it is now and does not give the figures "
                "recorded on the day of the check. The recorded figures, under Results, are the ones that count."});
  }
}

FinePrintBlock ledgerPath(const LedgerPlace& place) {
  FinePrintBlock path{
      .text =
          "Keep this paper outside the workshop: with it a changed ledger is found (sturn verify --checkpoint). The "
          "entry's hash, then what leads from it to the root, RFC 9162, 2.1.3.2:",
      .lines = {place.leaf}};
  path.lines.insert(path.lines.end(), place.path.begin(), place.path.end());
  return path;
}

// The signed statement itself, a line each, so that a copy of the paper is all that a check of the signature needs.
FinePrintBlock ledgerSignature(const LedgerPlace& place, const LedgerSignature& by) {
  return {
      .text = fmt::format("The head of the ledger is signed by key {} of {} (Ed25519, RFC 8032). Signed were these "
                          "lines, each with a line feed; below them the public key and the signature:",
                          by.key, by.holder),
      .lines = {"steadyturn checkpoint v1", "shop: " + by.shop, "key: " + by.key, fmt::format("size: {}", place.size),
                "root: " + place.root, "time: " + by.at, by.publicKey,
                by.signature.substr(0, by.signature.size() / 2), by.signature.substr(by.signature.size() / 2)}};
}

}  // namespace

ReportDocument buildCertificate(const CertificateData& data) {
  ReportDocument report{.title = "Torque tool check certificate",
                        .number = data.number,
                        .issuer = data.shopPlace.empty() ? data.shopName : data.shopName + ", " + data.shopPlace,
                        .issued = writeDate(data.issued),
                        .blocks = {}};
  report.blocks.push_back(ParagraphBlock{.heading = "Statement of conformity", .text = conformityWords(data)});
  report.blocks.push_back(toolFacts(data.tool));
  report.blocks.push_back(checkFacts(data));
  report.blocks.push_back(resultsTable(data.check));
  report.blocks.push_back(uncertaintyWords());
  if (data.before) report.blocks.push_back(beforeAndAfterTable(*data.before, data.check));
  report.blocks.push_back(ParagraphBlock{.heading = "Decision rule", .text = decisionRuleWords(data.check)});
  report.blocks.push_back(ParagraphBlock{.heading = "", .text = conformityProbabilityWords(data.check)});
  addEvidence(report, data);
  report.blocks.push_back(referenceFacts(data));
  report.blocks.push_back(ParagraphBlock{.heading = "What this paper is",
                                         .text = "The results apply to the item as checked, on the day of the check. "
                                                 "This workshop's own bench; no accreditation "
                                                 "is claimed. Hand it on only as a whole. The vehicle maker's "
                                                 "service data come first: a good tool does not make a wrong "
                                                 "torque right."});
  report.blocks.push_back(SignatureBlock{.roles = {"Checked by", "Authorised by"}});
  if (data.ledger) {
    report.code = "STURN:L:" + checkpointOf(*data.ledger);
    report.blocks.push_back(ledgerPath(*data.ledger));
    if (const auto& by = data.ledger->signature) report.blocks.push_back(ledgerSignature(*data.ledger, *by));
  }
  return report;
}

}  // namespace steadyturn
