#include "ledger.h"

#include <sodium.h>

#include <array>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "connection.h"

namespace steadyturn {

namespace {

void normaliseTexts(Facts& facts) {
  if (facts.is_string()) {
    normalise(facts.get_ref<std::string&>());
  } else if (facts.is_structured()) {
    for (auto& value : facts) normaliseTexts(value);
  }
}

}  // namespace

EntryFrame entryFrame(std::int64_t sequence, const EntryStamp& stamp, std::string_view kind) {
  // RFC 8785 sorts by key: "facts" stands between "at" and "kind".
  return {.before = R"({"at":)" + Facts(stamp.at).dump() + R"(,"facts":)",
          .after = R"(,"kind":)" + Facts(kind).dump() + R"(,"seq":)" + std::to_string(sequence) + R"(,"who":)" +
                   Facts(stamp.who).dump() + "}"};
}

QByteArray leafHash(std::string_view entry) {
  constexpr unsigned char leafMark = 0x00;
  std::array<unsigned char, crypto_hash_sha256_BYTES> hash{};
  crypto_hash_sha256_state state;
  crypto_hash_sha256_init(&state);
  crypto_hash_sha256_update(&state, &leafMark, 1);
  crypto_hash_sha256_update(&state, reinterpret_cast<const unsigned char*>(entry.data()), entry.size());
  crypto_hash_sha256_final(&state, hash.data());
  return {reinterpret_cast<const char*>(hash.data()), static_cast<qsizetype>(hash.size())};
}

Ledger::Ledger(Database& database)
    : database_(database),
      insert_(database, "INSERT INTO ledger (seq, at, who, kind, entry, leaf) VALUES (?, ?, ?, ?, ?, ?)"),
      nodes_(database) {}

std::int64_t Ledger::size() const {
  Statement newest(database_, "SELECT COALESCE(MAX(seq), 0) FROM ledger");
  newest.run().next();
  return newest.integer(0);
}

std::int64_t Ledger::nextSequence() {
  const auto& connection = database_.connection();
  if (!connection.inTransaction) throw std::logic_error("a ledger entry outside of a transaction");
  if (countedIn_ != connection.transactions) {
    next_ = size() + 1;
    countedIn_ = connection.transactions;
  }
  return next_;
}

std::int64_t Ledger::append(const EntryStamp& stamp, std::string_view kind, Facts facts) {
  const auto sequence = nextSequence();
  normaliseTexts(facts);
  auto kept = stamp;
  normalise(kept.who);
  const auto frame = entryFrame(sequence, kept, kind);
  const auto entry = frame.before + canonicalJson(facts) + frame.after;
  insert_.run(sequence, kept.at, kept.who, kind,
              QByteArray::fromRawData(entry.data(), static_cast<qsizetype>(entry.size())), leafHash(entry));
  ++next_;
  nodes_.grow(sequence);
  return sequence;
}

void Ledger::completeTree() { nodes_.grow(size() / (1 << TreeNodes::step) * (1 << TreeNodes::step)); }

}  // namespace steadyturn
