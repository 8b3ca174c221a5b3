#include "signed_depot.h"

#include <QFile>
#include <fstream>
#include <stdexcept>

#include "cheap_seal.h"
#include "demo_copy.h"
#include "shop_signing.h"

namespace steadyturn {

namespace {

template <typename T>
T must(Result<T> result) {
  if (!result) throw std::runtime_error(result.error().front().field + ": " + result.error().front().accepted);
  if constexpr (!std::is_void_v<T>) return std::move(*result);
}

void copyFile(const std::string& from, const std::string& to) {
  for (const auto* ending : {"", "-wal", "-shm"}) QFile::remove(QString::fromStdString(to + ending));
  if (!QFile::copy(QString::fromStdString(from), QString::fromStdString(to))) throw std::runtime_error(to);
}

void addTheBench(Shop& shop) {
  const auto reference = must(shop.references()).front().id;
  must(shop.setReferenceRange(reference, {.low = 10, .high = 200, .unit = Unit::NewtonMetre}));
  must(shop.setReferenceRange(reference, {.low = 12, .high = 200, .unit = Unit::NewtonMetre}));
  BenchSetupDraft draft;
  draft.tool = "W06";
  draft.reference = reference;
  draft.by = "petra";
  draft.date = shop.today();
  const auto target = must(shop.planBenchSetup("W06")).target;
  draft.target = writeNumber(target.value);
  draft.unit = target.unit;
  draft.typedSpans[1] = "0.3";
  draft.basis = "the maker's figures";
  must(shop.recordBenchSetup(draft));
}

void addAnImport(Shop& shop) {
  const auto file = demoCopies().in("tools.csv");
  std::ofstream(file) << "tool,type,class,max,unit\nX1,II,A,100,N.m\nX2,II,A,200,N.m\n";
  must(shop.importCsv(TableKind::Tools, file, {}));
}

}  // namespace

SignedDepot::SignedDepot() : original(demoCopies().in("signed.sturn")), copy(demoCopies().in("signed-copy.sturn")) {
  copyFile(demoCopies().original(), original);
  const auto keepCopy = [&] {
    older.push_back({.path = original + std::to_string(older.size()), .entries = verified(original).entries});
    copyFile(original, older.back().path);
  };
  keepCopy();
  {
    auto shop = Shop::open(original).value();
    trustedKey = must(makeSigningKey(shop, "Petra Quill", "correct horse", cheap)).publicKey;
    addTheBench(shop);
    addAnImport(shop);
    must(recordIssue(shop, {.what = "certificate", .id = "42"}, "pdf", "one"));
    must(signCheckpoint(shop, "correct horse", "day closed"));
  }
  keepCopy();
  {
    auto shop = Shop::open(original).value();
    must(shop.holdTool("W06", "fell on the floor"));
    must(replaceSigningKey(shop, "Noor Vale", "correct horse", "battery staple", cheap));
    must(shop.releaseTool("W06", "checked"));
    signedTo = must(signCheckpoint(shop, "battery staple", "day closed")).entry;
  }
  keepCopy();
  {
    auto shop = Shop::open(original).value();
    for (const auto* paper : {"two", "three", "four", "five"})
      must(recordIssue(shop, {.what = "history", .id = paper}, "pdf", paper));
    outside = must(ledgerHead(shop));
  }
}

std::string SignedDepot::fresh() const {
  copyFile(original, copy);
  return copy;
}

const SignedDepot& signedDepot() {
  static const SignedDepot depot;
  return depot;
}

}  // namespace steadyturn
