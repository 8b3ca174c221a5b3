// Keys, signatures and what a verification makes of them, on a copy of the demo depot.
#include <gtest/gtest.h>

#include "cheap_seal.h"
#include "demo_copy.h"
#include "ed25519.h"
#include "raw_shop.h"
#include "rewritten_log.h"
#include "shop_signing.h"
#include "signed_statement.h"

namespace steadyturn {
namespace {

class SignedLedger : public testing::Test {
 protected:
  SigningKey make() { return makeSigningKey(shop, "Petra Quill", "correct horse", cheap).value(); }
  SignedHead sign(const std::string& passphrase = "correct horse") {
    return signCheckpoint(shop, passphrase, "day closed").value();
  }
  Verification verify(const std::string& trusted = {}) { return verifyShop(shop, {}, {}, trusted).value(); }
  // One fault at least has these words.
  static bool says(const Verification& verification, const std::string& words) {
    return listed(verification).find(words) != std::string::npos;
  }
  // Writes the whole log anew after `change`, as somebody would who knows the program but has no key: every leaf,
  // every inner hash and every record's own row are consistent.
  void rewrite(const std::string& change) {
    RawShop raw(path);
    ASSERT_TRUE(raw.run(change)) << change;
    makeConsistent(raw);
  }
  static std::string inEntry(const std::string& from, const std::string& to, const std::string& where) {
    return "UPDATE ledger SET entry = CAST(replace(CAST(entry AS TEXT), '" + from + "', '" + to +
           "') AS BLOB) WHERE " + where;
  }

  std::string path = demoCopies().fresh();
  Shop shop = Shop::open(path).value();
};

TEST_F(SignedLedger, IsIntactAndSaysHowFarItIsSigned) {
  EXPECT_FALSE(verify().lastSigned);
  EXPECT_FALSE(hasSigningKey(shop).value());
  const auto key = make();
  ASSERT_TRUE(shop.holdTool("W06", "fell on the floor"));
  const auto head = sign();
  EXPECT_EQ(head.entry, static_cast<std::int64_t>(head.checkpoint.size) + 1) << "its own entry comes after";
  EXPECT_TRUE(isSignedBy(key.publicKey, head.statement, head.checkpoint.signature));
  const auto verification = verify(key.publicKey);
  EXPECT_TRUE(verification.intact()) << listed(verification);
  ASSERT_TRUE(verification.lastSigned);
  EXPECT_EQ(verification.lastSigned->size, head.checkpoint.size);
  EXPECT_EQ(verification.lastSigned->key, key.id);
  EXPECT_EQ(verification.lastSigned->holder, "Petra Quill");
  EXPECT_EQ(verification.signatures, 2);
}

// The text is part of the file's format: what was signed must be writable by hand in ten years.
TEST_F(SignedLedger, SignsTheTextThatIsDocumented) {
  const auto key = make();
  const auto head = sign();
  EXPECT_EQ(head.statement, "steadyturn checkpoint v1\nshop: " + shop.id() + "\nkey: " + key.id +
                                "\nsize: " + std::to_string(head.checkpoint.size) +
                                "\nroot: " + head.checkpoint.root + "\ntime: " + head.checkpoint.at + "\n");
  EXPECT_EQ(statementOf(shop.id(), key),
            "steadyturn key v1\nshop: " + shop.id() + "\nkey: " + key.id + "\npublic: " + key.publicKey +
                "\nholder: Petra Quill\nreplaces: nothing\nlost: nothing\nsize: " + std::to_string(key.size) +
                "\nroot: " + key.root + "\ntime: " + key.made + "\n");
}

TEST_F(SignedLedger, OpensWithItsPassphraseAlone) {
  EXPECT_EQ(signCheckpoint(shop, "correct horse", "day closed").error().front().kind, ProblemKind::NotFound);
  make();
  EXPECT_EQ(signCheckpoint(shop, "Correct horse", "day closed").error().front().kind, ProblemKind::NotPermitted);
  EXPECT_EQ(makeSigningKey(shop, "Petra", "another horse", cheap).error().front().kind, ProblemKind::Conflict);
  EXPECT_EQ(changePassphrase(shop, "wrong horse", "another horse", cheap).error().front().kind,
            ProblemKind::NotPermitted);
  EXPECT_EQ(changePassphrase(shop, "correct horse", "short", cheap).error().front().field, "passphrase");
  ASSERT_TRUE(changePassphrase(shop, "correct horse", "another horse", cheap));
  EXPECT_FALSE(signCheckpoint(shop, "correct horse", "day closed"));
  sign("another horse");
  EXPECT_TRUE(verify().intact()) << listed(verify());
}

TEST_F(SignedLedger, NeedsAHolderAndAPassphrase) {
  EXPECT_EQ(makeSigningKey(shop, "", "correct horse", cheap).error().front().field, "holder");
  EXPECT_EQ(makeSigningKey(shop, "two\nlines", "correct horse", cheap).error().front().field, "holder");
  EXPECT_EQ(makeSigningKey(shop, "Petra", "seven c", cheap).error().front().field, "passphrase");
  EXPECT_FALSE(hasSigningKey(shop).value());
}

TEST_F(SignedLedger, HandsTrustOnFromKeyToKey) {
  const auto first = make();
  sign();
  const auto second = replaceSigningKey(shop, "Noor Vale", "correct horse", "battery staple", cheap).value();
  EXPECT_EQ(second.replaces, first.id);
  EXPECT_FALSE(signCheckpoint(shop, "correct horse", "day closed")) << "the old key is gone";
  sign("battery staple");
  for (const auto& trusted : {std::string(), first.publicKey, second.publicKey}) {
    const auto verification = verify(trusted);
    EXPECT_TRUE(verification.intact()) << listed(verification);
    EXPECT_EQ(verification.signatures, 5);
    EXPECT_TRUE(verification.notes.empty());
  }
  EXPECT_TRUE(says(verify(std::string(64, 'a')), "does not know key aaaa"));
  EXPECT_EQ(verifyShop(shop, {}, {}, "12").error().front().field, "key");
}

TEST_F(SignedLedger, TellsOfAKeyThatWasLost) {
  const auto first = make();
  EXPECT_FALSE(replaceLostKey(shop, "Noor Vale", "", "battery staple", cheap)) << "a reason is needed";
  const auto second = replaceLostKey(shop, "Noor Vale", "passphrase forgotten", "battery staple", cheap).value();
  sign("battery staple");
  const auto verification = verify();
  EXPECT_TRUE(verification.intact()) << listed(verification);
  ASSERT_EQ(verification.notes.size(), 1U);
  EXPECT_NE(verification.notes.front().find("passphrase forgotten"), std::string::npos);
  EXPECT_TRUE(verify(second.publicKey).intact());
  EXPECT_TRUE(says(verify(first.publicKey), "what is trusted does not vouch for it"));
}

TEST_F(SignedLedger, ThatWasWrittenAnewIsFoundByItsSignature) {
  make();
  const auto head = sign();
  rewrite(inEntry("as_found", "as_left", "seq = (SELECT entry FROM check_record WHERE id = 1)") +
          "; UPDATE check_record SET phase = 'as_left' WHERE id = 1");
  const auto verification = verify();
  EXPECT_TRUE(says(verification, "signing key ")) << listed(verification);
  EXPECT_TRUE(says(verification, "signed checkpoint " + std::to_string(head.entry) + ": what it signed"))
      << listed(verification);
  EXPECT_EQ(verification.faults.size(), 2U) << listed(verification);
}

TEST_F(SignedLedger, CanNotBeSignedAnewWithoutTheKey) {
  make();
  const auto head = sign();
  const auto forged = std::string(128, '5');
  rewrite(inEntry(head.checkpoint.signature, forged, "seq = " + std::to_string(head.entry)) +
          "; UPDATE signed_checkpoint SET signature = '" + forged + "'");
  const auto verification = verify();
  ASSERT_EQ(verification.faults.size(), 1U) << listed(verification);
  EXPECT_EQ(verification.faults.front().entry, head.entry);
  EXPECT_TRUE(says(verification, "is not signed by key")) << listed(verification);
}

TEST_F(SignedLedger, ThatWasSignedAnewWithAnotherKeyIsFoundByTheTrustedOne) {
  const auto trusted = make();
  const auto size = ledgerHead(shop).value().size - 1;
  // The log is cut back to before the key, and goes on under a key of somebody else's.
  rewrite("DELETE FROM key_seal; DELETE FROM signing_key; DELETE FROM ledger WHERE seq > " + std::to_string(size));
  shop = Shop::open(path).value();
  make();
  sign();
  EXPECT_TRUE(verify().intact()) << "no word of it in the file: " << listed(verify());
  EXPECT_TRUE(says(verify(trusted.publicKey), "does not know key " + trusted.publicKey));
}

TEST_F(SignedLedger, IsNotSignedWhereItsHashesDisagree) {
  make();
  {
    RawShop raw(path);
    ASSERT_TRUE(raw.run("UPDATE tree_node SET hash = zeroblob(32) WHERE level = 4 AND position = 2"));
    ASSERT_TRUE(raw.run("UPDATE tree_node SET hash = zeroblob(32) WHERE level = 8 AND position = 0"));
  }
  const auto refused = signCheckpoint(shop, "correct horse", "day closed");
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().front().kind, ProblemKind::Unavailable);
  EXPECT_TRUE(says(verify(), "hash of entries 33 to 48 is not what these entries give"));
}

TEST_F(SignedLedger, VouchesForACertificate) {
  const auto key = make();
  const auto data = signedCertificate(shop, 42, "correct horse").value();
  ASSERT_TRUE(data.ledger && data.ledger->signature);
  const auto& by = *data.ledger->signature;
  EXPECT_EQ(by.publicKey, key.publicKey);
  // The fine print is the signed text itself: whoever has the paper can check it.
  const auto report = buildCertificate(data);
  std::string statement;
  for (const auto& block : report.blocks) {
    const auto* print = std::get_if<FinePrintBlock>(&block);
    if (print == nullptr || print->lines.front() != "steadyturn checkpoint v1") continue;
    for (std::size_t line = 0; line < 6; ++line) statement += print->lines[line] + "\n";
    EXPECT_EQ(print->lines.back(), by.signature.substr(64));
  }
  EXPECT_TRUE(isSignedBy(by.publicKey, statement, by.signature)) << statement;
  std::vector<Hash> hashes;
  for (const auto& step : data.ledger->path) hashes.push_back(parseHash(step).value());
  EXPECT_TRUE(provesInclusion(hashes, parseHash(data.ledger->leaf).value(),
                              static_cast<std::uint64_t>(data.ledger->sequence - 1), data.ledger->size,
                              parseHash(data.ledger->root).value()));
  EXPECT_TRUE(verify().intact());
  const auto before = ledgerHead(shop).value().size;
  EXPECT_FALSE(signedCertificate(shop, 4711, "correct horse"));
  EXPECT_FALSE(signedCertificate(shop, 42, "wrong horse"));
  EXPECT_EQ(ledgerHead(shop).value().size, before) << "nothing is signed for a paper that does not come";
}

}  // namespace
}  // namespace steadyturn
