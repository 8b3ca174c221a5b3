-- What was decided about the tightenings that a failed check put in doubt, and that all of them are.

CREATE TABLE recall_decision (
  entry INTEGER PRIMARY KEY REFERENCES ledger (seq),
  failed_check INTEGER NOT NULL REFERENCES check_record (id),
  tightening INTEGER NOT NULL REFERENCES tightening (id),
  action TEXT NOT NULL CHECK (action IN ('accept', 're-torque', 'replace-part')),
  reason TEXT NOT NULL,
  date TEXT NOT NULL,
  decided_by TEXT NOT NULL
) STRICT;
CREATE INDEX recall_decision_by_check ON recall_decision (failed_check, tightening, entry);

CREATE TABLE recall_closing (
  entry INTEGER PRIMARY KEY REFERENCES ledger (seq),
  failed_check INTEGER NOT NULL UNIQUE REFERENCES check_record (id),
  tightenings INTEGER NOT NULL,
  date TEXT NOT NULL,
  closed_by TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT;

CREATE TRIGGER recall_decision_is_not_changed BEFORE UPDATE ON recall_decision
BEGIN
  SELECT RAISE(ABORT, 'recall decision: evidence is added, never changed');
END;
CREATE TRIGGER recall_decision_is_not_removed BEFORE DELETE ON recall_decision
BEGIN
  SELECT RAISE(ABORT, 'recall decision: evidence is added, never removed');
END;
CREATE TRIGGER recall_decision_is_not_replaced BEFORE INSERT ON recall_decision
WHEN EXISTS (SELECT 1 FROM recall_decision WHERE entry = NEW.entry)
BEGIN
  SELECT RAISE(ABORT, 'recall decision: evidence is added, never replaced');
END;
CREATE TRIGGER recall_decision_ends_with_the_closing BEFORE INSERT ON recall_decision
WHEN EXISTS (SELECT 1 FROM recall_closing WHERE failed_check = NEW.failed_check)
BEGIN
  SELECT RAISE(ABORT, 'recall decision: this recall is closed');
END;
CREATE TRIGGER recall_closing_is_not_changed BEFORE UPDATE ON recall_closing
BEGIN
  SELECT RAISE(ABORT, 'recall closing: evidence is added, never changed');
END;
CREATE TRIGGER recall_closing_is_not_removed BEFORE DELETE ON recall_closing
BEGIN
  SELECT RAISE(ABORT, 'recall closing: evidence is added, never removed');
END;
CREATE TRIGGER recall_closing_is_not_replaced BEFORE INSERT ON recall_closing
WHEN EXISTS (SELECT 1 FROM recall_closing WHERE entry = NEW.entry OR failed_check = NEW.failed_check)
BEGIN
  SELECT RAISE(ABORT, 'recall closing: evidence is added, never replaced');
END;
