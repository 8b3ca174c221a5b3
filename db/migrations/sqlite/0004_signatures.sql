-- Proof that goes beyond the file: keys that sign the ledger's head, what they signed, papers that were handed out, and the
-- tree's inner hashes.

-- A later key replaces an earlier one; both stay. Hashes, keys and signatures are hexadecimal digits.
CREATE TABLE signing_key (
  entry INTEGER PRIMARY KEY REFERENCES ledger (seq),
  id TEXT NOT NULL UNIQUE,
  public_key TEXT NOT NULL UNIQUE,
  holder TEXT NOT NULL,
  made_at TEXT NOT NULL,
  replaces TEXT NOT NULL UNIQUE, -- id of the key it retires; empty for the first
  lost_reason TEXT NOT NULL, -- why the key before could not sign; empty where it did
  size INTEGER NOT NULL, -- entries of the ledger before it
  root TEXT NOT NULL, -- theirs
  signature TEXT NOT NULL, -- by this key
  old_signature TEXT NOT NULL -- by the one before
) STRICT;

-- Not evidence: the private key of the newest signing key under its passphrase, which may be changed. It names no fact that
-- anybody relies on: a seal that was changed opens no more.
CREATE TABLE key_seal (
  key TEXT PRIMARY KEY REFERENCES signing_key (id),
  salt BLOB NOT NULL,
  passes INTEGER NOT NULL, -- Argon2id
  memory INTEGER NOT NULL, -- bytes
  nonce BLOB NOT NULL,
  box BLOB NOT NULL
) STRICT;

CREATE TABLE signed_checkpoint (
  entry INTEGER PRIMARY KEY REFERENCES ledger (seq),
  size INTEGER NOT NULL, -- entries that it counts: those before its own
  root TEXT NOT NULL,
  at TEXT NOT NULL,
  key TEXT NOT NULL REFERENCES signing_key (id),
  occasion TEXT NOT NULL,
  signature TEXT NOT NULL
) STRICT;

-- A paper that left the program, known again by its bytes.
CREATE TABLE issued_report (
  entry INTEGER PRIMARY KEY REFERENCES ledger (seq),
  subject TEXT NOT NULL,
  subject_id TEXT NOT NULL,
  file TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  size INTEGER NOT NULL
) STRICT;
CREATE INDEX issued_report_by_hash ON issued_report (sha256);

-- Not evidence, but kept and checked: roots of complete subtrees of 2^level leaves (levels 4, 8, 12 …), counted from 0, so that
-- no proof has to read every leaf. db/ledger/tree_nodes.h.
CREATE TABLE tree_node (
  level INTEGER NOT NULL,
  position INTEGER NOT NULL,
  hash BLOB NOT NULL CHECK (length(hash) = 32),
  PRIMARY KEY (level, position)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER signing_key_is_not_changed BEFORE UPDATE ON signing_key
BEGIN
  SELECT RAISE(ABORT, 'signing key: evidence is added, never changed');
END;
CREATE TRIGGER signing_key_is_not_removed BEFORE DELETE ON signing_key
BEGIN
  SELECT RAISE(ABORT, 'signing key: evidence is added, never removed');
END;
CREATE TRIGGER signing_key_is_not_replaced BEFORE INSERT ON signing_key
WHEN EXISTS (SELECT 1 FROM signing_key WHERE entry = NEW.entry OR id = NEW.id OR public_key = NEW.public_key OR replaces = NEW.replaces)
BEGIN
  SELECT RAISE(ABORT, 'signing key: evidence is added, never replaced');
END;
CREATE TRIGGER signed_checkpoint_is_not_changed BEFORE UPDATE ON signed_checkpoint
BEGIN
  SELECT RAISE(ABORT, 'signed checkpoint: evidence is added, never changed');
END;
CREATE TRIGGER signed_checkpoint_is_not_removed BEFORE DELETE ON signed_checkpoint
BEGIN
  SELECT RAISE(ABORT, 'signed checkpoint: evidence is added, never removed');
END;
CREATE TRIGGER signed_checkpoint_is_not_replaced BEFORE INSERT ON signed_checkpoint
WHEN EXISTS (SELECT 1 FROM signed_checkpoint WHERE entry = NEW.entry)
BEGIN
  SELECT RAISE(ABORT, 'signed checkpoint: evidence is added, never replaced');
END;
CREATE TRIGGER issued_report_is_not_changed BEFORE UPDATE ON issued_report
BEGIN
  SELECT RAISE(ABORT, 'issued report: evidence is added, never changed');
END;
CREATE TRIGGER issued_report_is_not_removed BEFORE DELETE ON issued_report
BEGIN
  SELECT RAISE(ABORT, 'issued report: evidence is added, never removed');
END;
CREATE TRIGGER issued_report_is_not_replaced BEFORE INSERT ON issued_report
WHEN EXISTS (SELECT 1 FROM issued_report WHERE entry = NEW.entry)
BEGIN
  SELECT RAISE(ABORT, 'issued report: evidence is added, never replaced');
END;
