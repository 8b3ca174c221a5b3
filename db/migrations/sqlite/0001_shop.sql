-- A shop: its tools, reference standards and fasteners, its evidence (checks, tightenings, revisions), and the ledger that proves it.
-- Dates are ISO 8601 text, instants UTC with milliseconds, percentages are %, torques are numbers beside their unit's code.
-- `entry` is the ledger's sequence of the entry that proves a row.

PRAGMA application_id = 0x53747572; -- "Stur"

CREATE TABLE schema_migration (
  version INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  applied_at TEXT NOT NULL
) STRICT;

CREATE TABLE ledger (
  seq INTEGER PRIMARY KEY,
  at TEXT NOT NULL,
  who TEXT NOT NULL,
  kind TEXT NOT NULL,
  entry BLOB NOT NULL, -- canonical JSON, hashed as it stands
  leaf BLOB NOT NULL CHECK (length(leaf) = 32)
) STRICT;

CREATE TABLE shop_setting (
  name TEXT PRIMARY KEY,
  value TEXT NOT NULL,
  entry INTEGER NOT NULL REFERENCES ledger (seq)
) STRICT;

CREATE TABLE imported_file (
  kind TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  row_count INTEGER NOT NULL,
  entry INTEGER NOT NULL REFERENCES ledger (seq),
  PRIMARY KEY (kind, sha256, entry)
) STRICT;

CREATE TABLE tool (
  id TEXT PRIMARY KEY,
  description TEXT NOT NULL,
  maker TEXT NOT NULL,
  serial TEXT NOT NULL,
  type TEXT NOT NULL,
  class TEXT NOT NULL,
  unit TEXT NOT NULL,
  minimum REAL,
  maximum REAL NOT NULL,
  resolution REAL,
  drive TEXT NOT NULL,
  interval_days INTEGER,
  limit_percent REAL,
  status TEXT NOT NULL,
  status_reason TEXT NOT NULL,
  entry INTEGER NOT NULL REFERENCES ledger (seq)
) STRICT;

CREATE TABLE tool_status_event (
  entry INTEGER PRIMARY KEY REFERENCES ledger (seq),
  tool TEXT NOT NULL REFERENCES tool (id),
  date TEXT NOT NULL,
  status TEXT NOT NULL,
  reason TEXT NOT NULL
) STRICT;
CREATE INDEX tool_status_event_by_tool ON tool_status_event (tool, entry);

CREATE TABLE reference_standard (
  id TEXT PRIMARY KEY,
  description TEXT NOT NULL,
  serial TEXT NOT NULL,
  certificate TEXT NOT NULL,
  calibrated TEXT,
  due TEXT,
  expanded_uncertainty_percent REAL NOT NULL,
  coverage_factor REAL,
  error_percent REAL,
  entry INTEGER NOT NULL REFERENCES ledger (seq)
) STRICT;

CREATE TABLE fastener_revision (
  id INTEGER PRIMARY KEY,
  fastener TEXT NOT NULL,
  number INTEGER NOT NULL CHECK (number >= 1),
  assembly TEXT NOT NULL,
  component TEXT NOT NULL,
  thread TEXT NOT NULL,
  property_class TEXT NOT NULL,
  part_material TEXT NOT NULL,
  drive TEXT NOT NULL,
  unit TEXT NOT NULL,
  target REAL NOT NULL,
  low REAL,
  high REAL,
  angle_deg REAL,
  part_limit REAL,
  seal TEXT NOT NULL,
  renew INTEGER CHECK (renew IN (0, 1)),
  lubrication TEXT NOT NULL,
  seat_check TEXT NOT NULL,
  source TEXT NOT NULL,
  revision TEXT NOT NULL,
  revision_reason TEXT NOT NULL,
  entry INTEGER NOT NULL REFERENCES ledger (seq),
  UNIQUE (fastener, number)
) STRICT;

-- Newest revisions by their words; a row's rowid is the revision's id. db/tables/fastener_search.cpp keeps it and asks it: full
-- text search is where engines differ.
CREATE VIRTUAL TABLE fastener_search USING fts5 (
  fastener, component, assembly, thread,
  tokenize = 'unicode61 remove_diacritics 2',
  prefix = '1 2 3'
);

CREATE TABLE check_record (
  id INTEGER PRIMARY KEY,
  tool TEXT NOT NULL REFERENCES tool (id),
  date TEXT NOT NULL,
  phase TEXT NOT NULL,
  reference TEXT REFERENCES reference_standard (id),
  checked_by TEXT NOT NULL,
  direction TEXT NOT NULL,
  temperature_c REAL,
  humidity_percent REAL,
  note TEXT NOT NULL,
  limit_percent REAL NOT NULL,
  rule TEXT NOT NULL,
  reference_expanded_percent REAL NOT NULL,
  reference_coverage_factor REAL NOT NULL,
  reference_error_percent REAL NOT NULL,
  span_reproducibility REAL,
  span_drive REAL,
  span_interface REAL,
  span_loading_point REAL,
  verdict TEXT NOT NULL,
  corrects INTEGER REFERENCES check_record (id),
  correction_reason TEXT NOT NULL,
  entry INTEGER NOT NULL REFERENCES ledger (seq)
) STRICT;
CREATE INDEX check_record_by_tool ON check_record (tool, date, phase, id);
CREATE INDEX check_record_by_date ON check_record (date, id);
CREATE UNIQUE INDEX check_record_corrected_once ON check_record (corrects) WHERE corrects IS NOT NULL;

CREATE TABLE check_point (
  check_id INTEGER NOT NULL REFERENCES check_record (id),
  position INTEGER NOT NULL,
  target REAL NOT NULL,
  unit TEXT NOT NULL,
  readings TEXT NOT NULL, -- JSON array of texts, as typed
  reading_count INTEGER NOT NULL,
  mean_deviation REAL NOT NULL,
  repeatability REAL,
  standard_uncertainty REAL NOT NULL,
  interval_percent REAL NOT NULL,
  conformity_probability REAL NOT NULL,
  verdict TEXT NOT NULL,
  PRIMARY KEY (check_id, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE job (
  id TEXT PRIMARY KEY,
  vehicle TEXT NOT NULL
) STRICT;

CREATE TABLE tightening (
  id INTEGER PRIMARY KEY,
  job TEXT NOT NULL REFERENCES job (id),
  date TEXT NOT NULL,
  fastener TEXT NOT NULL,
  fastener_number INTEGER NOT NULL,
  tool TEXT NOT NULL REFERENCES tool (id),
  setting TEXT NOT NULL, -- as typed
  unit TEXT NOT NULL,
  seat_checked INTEGER CHECK (seat_checked IN (0, 1)),
  done_by TEXT NOT NULL,
  entry INTEGER NOT NULL REFERENCES ledger (seq),
  FOREIGN KEY (fastener, fastener_number) REFERENCES fastener_revision (fastener, number)
) STRICT;
CREATE INDEX tightening_by_tool ON tightening (tool, date, id);
CREATE INDEX tightening_by_job ON tightening (job, fastener, date, id);

-- The ledger grows by one at its end. Demanding the next number also stops INSERT OR REPLACE, which would pass by the DELETE guard.
CREATE TRIGGER ledger_grows_at_its_end BEFORE INSERT ON ledger
WHEN NEW.seq IS NOT (SELECT COALESCE(MAX(seq), 0) + 1 FROM ledger)
BEGIN
  SELECT RAISE(ABORT, 'the ledger grows at its end, by one entry at a time');
END;

-- Evidence is added, never changed. A REPLACE removes the old row without asking a DELETE trigger, so a taken key is refused before.
CREATE TRIGGER ledger_is_not_changed BEFORE UPDATE ON ledger
BEGIN
  SELECT RAISE(ABORT, 'ledger: evidence is added, never changed');
END;
CREATE TRIGGER ledger_is_not_removed BEFORE DELETE ON ledger
BEGIN
  SELECT RAISE(ABORT, 'ledger: evidence is added, never removed');
END;
CREATE TRIGGER imported_file_is_not_changed BEFORE UPDATE ON imported_file
BEGIN
  SELECT RAISE(ABORT, 'imported file: evidence is added, never changed');
END;
CREATE TRIGGER imported_file_is_not_removed BEFORE DELETE ON imported_file
BEGIN
  SELECT RAISE(ABORT, 'imported file: evidence is added, never removed');
END;
CREATE TRIGGER imported_file_is_not_replaced BEFORE INSERT ON imported_file
WHEN EXISTS (SELECT 1 FROM imported_file WHERE kind = NEW.kind AND sha256 = NEW.sha256 AND entry = NEW.entry)
BEGIN
  SELECT RAISE(ABORT, 'imported file: evidence is added, never replaced');
END;
CREATE TRIGGER tool_status_event_is_not_changed BEFORE UPDATE ON tool_status_event
BEGIN
  SELECT RAISE(ABORT, 'tool status event: evidence is added, never changed');
END;
CREATE TRIGGER tool_status_event_is_not_removed BEFORE DELETE ON tool_status_event
BEGIN
  SELECT RAISE(ABORT, 'tool status event: evidence is added, never removed');
END;
CREATE TRIGGER tool_status_event_is_not_replaced BEFORE INSERT ON tool_status_event
WHEN EXISTS (SELECT 1 FROM tool_status_event WHERE entry = NEW.entry)
BEGIN
  SELECT RAISE(ABORT, 'tool status event: evidence is added, never replaced');
END;
CREATE TRIGGER fastener_revision_is_not_changed BEFORE UPDATE ON fastener_revision
BEGIN
  SELECT RAISE(ABORT, 'fastener revision: evidence is added, never changed');
END;
CREATE TRIGGER fastener_revision_is_not_removed BEFORE DELETE ON fastener_revision
BEGIN
  SELECT RAISE(ABORT, 'fastener revision: evidence is added, never removed');
END;
CREATE TRIGGER fastener_revision_is_not_replaced BEFORE INSERT ON fastener_revision
WHEN EXISTS (SELECT 1 FROM fastener_revision WHERE id = NEW.id OR (fastener = NEW.fastener AND number = NEW.number))
BEGIN
  SELECT RAISE(ABORT, 'fastener revision: evidence is added, never replaced');
END;
CREATE TRIGGER check_record_is_not_changed BEFORE UPDATE ON check_record
BEGIN
  SELECT RAISE(ABORT, 'check record: evidence is added, never changed');
END;
CREATE TRIGGER check_record_is_not_removed BEFORE DELETE ON check_record
BEGIN
  SELECT RAISE(ABORT, 'check record: evidence is added, never removed');
END;
CREATE TRIGGER check_record_is_not_replaced BEFORE INSERT ON check_record
WHEN EXISTS (SELECT 1 FROM check_record WHERE id = NEW.id OR corrects = NEW.corrects)
BEGIN
  SELECT RAISE(ABORT, 'check record: evidence is added, never replaced');
END;
CREATE TRIGGER check_point_is_not_changed BEFORE UPDATE ON check_point
BEGIN
  SELECT RAISE(ABORT, 'check point: evidence is added, never changed');
END;
CREATE TRIGGER check_point_is_not_removed BEFORE DELETE ON check_point
BEGIN
  SELECT RAISE(ABORT, 'check point: evidence is added, never removed');
END;
CREATE TRIGGER check_point_is_not_replaced BEFORE INSERT ON check_point
WHEN EXISTS (SELECT 1 FROM check_point WHERE check_id = NEW.check_id AND position = NEW.position)
BEGIN
  SELECT RAISE(ABORT, 'check point: evidence is added, never replaced');
END;
CREATE TRIGGER tightening_is_not_changed BEFORE UPDATE ON tightening
BEGIN
  SELECT RAISE(ABORT, 'tightening: evidence is added, never changed');
END;
CREATE TRIGGER tightening_is_not_removed BEFORE DELETE ON tightening
BEGIN
  SELECT RAISE(ABORT, 'tightening: evidence is added, never removed');
END;
CREATE TRIGGER tightening_is_not_replaced BEFORE INSERT ON tightening
WHEN EXISTS (SELECT 1 FROM tightening WHERE id = NEW.id)
BEGIN
  SELECT RAISE(ABORT, 'tightening: evidence is added, never replaced');
END;
