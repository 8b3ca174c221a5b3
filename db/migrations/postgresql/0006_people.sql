-- The people: who may write in a shop. What happens to accounts is evidence; what a PIN is held against is not.

CREATE TABLE account_event (
  entry BIGINT PRIMARY KEY REFERENCES ledger (seq),
  account WORDS NOT NULL, -- '' where the shop got a new recovery code
  change WORDS NOT NULL,
  role WORDS NOT NULL, -- '' where it stays
  secret WORDS NOT NULL -- SHA-256 of account_secret.hash, hex; '' where it stays. The hash holds a salt of 128 bits that stands nowhere else, so this helps nobody to guess.
);
CREATE INDEX account_event_by_account ON account_event (account, entry);
CREATE UNIQUE INDEX account_event_added_once ON account_event (account) WHERE change = 'added';

-- Not evidence: Argon2id of a PIN (or, of account '', of the recovery code), and how many tries in a row were wrong.
CREATE TABLE account_secret (
  account WORDS PRIMARY KEY,
  hash WORDS NOT NULL,
  failures BIGINT NOT NULL DEFAULT 0,
  last_failure WORDS NOT NULL DEFAULT ''
);

SELECT let_write('account_secret', 'INSERT, UPDATE');
SELECT keep_as_evidence('account_event', 'account event');
