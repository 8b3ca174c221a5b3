-- The bench: checks being typed, the set-ups that yield the budget's spans, and what range a reference is known to cover.

-- A check being typed, one a tool. Not evidence: it is replaced at every reading and goes when the check is recorded.
CREATE TABLE check_draft (
  tool TEXT PRIMARY KEY REFERENCES tool (id),
  draft TEXT NOT NULL, -- JSON, as app/shop/rules/draft_text.cpp writes it
  saved_at TEXT NOT NULL
) STRICT;

-- Of a tool model: maker, description, type, class and maximum together. A newer one replaces an older one by its date; both stay.
CREATE TABLE bench_setup (
  id INTEGER PRIMARY KEY,
  maker TEXT NOT NULL,
  description TEXT NOT NULL,
  type TEXT NOT NULL,
  class TEXT NOT NULL,
  maximum REAL NOT NULL,
  maximum_unit TEXT NOT NULL,
  date TEXT NOT NULL,
  done_by TEXT NOT NULL,
  reference TEXT REFERENCES reference_standard (id),
  target REAL NOT NULL,
  unit TEXT NOT NULL, -- of target and readings
  readings TEXT NOT NULL, -- JSON object of arrays of arrays of texts, as typed; a run that was not taken is not in it
  span_reproducibility REAL,
  span_drive REAL,
  span_interface REAL,
  span_loading_point REAL,
  basis TEXT NOT NULL, -- where spans without readings come from
  note TEXT NOT NULL,
  entry INTEGER NOT NULL REFERENCES ledger (seq)
) STRICT;
CREATE INDEX bench_setup_by_model ON bench_setup (maker, description, date, id);

-- The newest entry of a reference counts.
CREATE TABLE reference_range (
  entry INTEGER PRIMARY KEY REFERENCES ledger (seq),
  reference TEXT NOT NULL REFERENCES reference_standard (id),
  low REAL NOT NULL,
  high REAL NOT NULL CHECK (high > low),
  unit TEXT NOT NULL
) STRICT;
CREATE INDEX reference_range_by_reference ON reference_range (reference, entry);

CREATE TRIGGER bench_setup_is_not_changed BEFORE UPDATE ON bench_setup
BEGIN
  SELECT RAISE(ABORT, 'bench set-up: evidence is added, never changed');
END;
CREATE TRIGGER bench_setup_is_not_removed BEFORE DELETE ON bench_setup
BEGIN
  SELECT RAISE(ABORT, 'bench set-up: evidence is added, never removed');
END;
CREATE TRIGGER bench_setup_is_not_replaced BEFORE INSERT ON bench_setup
WHEN EXISTS (SELECT 1 FROM bench_setup WHERE id = NEW.id)
BEGIN
  SELECT RAISE(ABORT, 'bench set-up: evidence is added, never replaced');
END;
CREATE TRIGGER reference_range_is_not_changed BEFORE UPDATE ON reference_range
BEGIN
  SELECT RAISE(ABORT, 'reference range: evidence is added, never changed');
END;
CREATE TRIGGER reference_range_is_not_removed BEFORE DELETE ON reference_range
BEGIN
  SELECT RAISE(ABORT, 'reference range: evidence is added, never removed');
END;
CREATE TRIGGER reference_range_is_not_replaced BEFORE INSERT ON reference_range
WHEN EXISTS (SELECT 1 FROM reference_range WHERE entry = NEW.entry)
BEGIN
  SELECT RAISE(ABORT, 'reference range: evidence is added, never replaced');
END;
