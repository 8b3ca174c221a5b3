-- The people: who may write in a shop. What happens to accounts is evidence; what a PIN is held against is not.

CREATE TABLE account_event (
  entry INTEGER PRIMARY KEY REFERENCES ledger (seq),
  account TEXT NOT NULL, -- '' where the shop got a new recovery code
  change TEXT NOT NULL,
  role TEXT NOT NULL, -- '' where it stays
  secret TEXT NOT NULL -- SHA-256 of account_secret.hash, hex; '' where it stays. The hash holds a salt of 128 bits that stands nowhere else, so this helps nobody to guess.
) STRICT;
CREATE INDEX account_event_by_account ON account_event (account, entry);
CREATE UNIQUE INDEX account_event_added_once ON account_event (account) WHERE change = 'added';

-- Not evidence: Argon2id of a PIN (or, of account '', of the recovery code), and how many tries in a row were wrong.
CREATE TABLE account_secret (
  account TEXT PRIMARY KEY,
  hash TEXT NOT NULL,
  failures INTEGER NOT NULL DEFAULT 0,
  last_failure TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TRIGGER account_event_is_not_changed BEFORE UPDATE ON account_event
BEGIN
  SELECT RAISE(ABORT, 'account event: evidence is added, never changed');
END;
CREATE TRIGGER account_event_is_not_removed BEFORE DELETE ON account_event
BEGIN
  SELECT RAISE(ABORT, 'account event: evidence is added, never removed');
END;
CREATE TRIGGER account_event_is_not_replaced BEFORE INSERT ON account_event
WHEN EXISTS (SELECT 1 FROM account_event WHERE entry = NEW.entry OR (account = NEW.account AND change = 'added' AND NEW.change = 'added'))
BEGIN
  SELECT RAISE(ABORT, 'account event: evidence is added, never replaced');
END;
