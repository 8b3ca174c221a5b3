-- Proof that goes beyond the file: keys that sign the ledger's head, what they signed, papers that were handed out, and the
-- tree's inner hashes.

-- A later key replaces an earlier one; both stay. Hashes, keys and signatures are hexadecimal digits.
CREATE TABLE signing_key (
  entry BIGINT PRIMARY KEY REFERENCES ledger (seq),
  id WORDS NOT NULL UNIQUE,
  public_key WORDS NOT NULL UNIQUE,
  holder WORDS NOT NULL,
  made_at WORDS NOT NULL,
  replaces WORDS NOT NULL UNIQUE, -- id of the key it retires; empty for the first
  lost_reason WORDS NOT NULL, -- why the key before could not sign; empty where it did
  size BIGINT NOT NULL, -- entries of the ledger before it
  root WORDS NOT NULL, -- theirs
  signature WORDS NOT NULL, -- by this key
  old_signature WORDS NOT NULL -- by the one before
);

-- Not evidence: the private key of the newest signing key under its passphrase, which may be changed. It names no fact that
-- anybody relies on: a seal that was changed opens no more.
CREATE TABLE key_seal (
  key WORDS PRIMARY KEY REFERENCES signing_key (id),
  salt BYTEA NOT NULL,
  passes BIGINT NOT NULL, -- Argon2id
  memory BIGINT NOT NULL, -- bytes
  nonce BYTEA NOT NULL,
  box BYTEA NOT NULL
);

CREATE TABLE signed_checkpoint (
  entry BIGINT PRIMARY KEY REFERENCES ledger (seq),
  size BIGINT NOT NULL, -- entries that it counts: those before its own
  root WORDS NOT NULL,
  at WORDS NOT NULL,
  key WORDS NOT NULL REFERENCES signing_key (id),
  occasion WORDS NOT NULL,
  signature WORDS NOT NULL
);

-- A paper that left the program, known again by its bytes.
CREATE TABLE issued_report (
  entry BIGINT PRIMARY KEY REFERENCES ledger (seq),
  subject WORDS NOT NULL,
  subject_id WORDS NOT NULL,
  file WORDS NOT NULL,
  sha256 WORDS NOT NULL,
  size BIGINT NOT NULL
);
CREATE INDEX issued_report_by_hash ON issued_report (sha256);

-- Not evidence, but kept and checked: roots of complete subtrees of 2^level leaves (levels 4, 8, 12 …), counted from 0, so that
-- no proof has to read every leaf. db/ledger/tree_nodes.h.
CREATE TABLE tree_node (
  level BIGINT NOT NULL,
  position BIGINT NOT NULL,
  hash BYTEA NOT NULL CHECK (length(hash) = 32),
  PRIMARY KEY (level, position)
);

SELECT let_write('key_seal', 'INSERT, UPDATE, DELETE');
SELECT let_write('tree_node', 'INSERT, UPDATE');
SELECT keep_as_evidence('signing_key', 'signing key');
SELECT keep_as_evidence('signed_checkpoint', 'signed checkpoint');
SELECT keep_as_evidence('issued_report', 'issued report');
