-- The bay: how a fastener is tightened in stages and who stands for its specification, what people call it, the lists a
-- service works down, and the sheet of a job.

-- Columns of a revision. Empty: nothing was said, and the ledger's entry has no such fact.
ALTER TABLE fastener_revision ADD COLUMN stages TEXT NOT NULL DEFAULT ''; -- "30;60;90deg": torques in the unit, then angles
ALTER TABLE fastener_revision ADD COLUMN sequence TEXT NOT NULL DEFAULT '';
ALTER TABLE fastener_revision ADD COLUMN limit_basis TEXT NOT NULL DEFAULT '';
ALTER TABLE fastener_revision ADD COLUMN entered_by TEXT NOT NULL DEFAULT '';

-- A second person stands for a revision. Without a row here it is not released.
CREATE TABLE fastener_approval (
  entry INTEGER PRIMARY KEY REFERENCES ledger (seq),
  fastener TEXT NOT NULL,
  number INTEGER NOT NULL,
  date TEXT NOT NULL,
  approved_by TEXT NOT NULL,
  UNIQUE (fastener, number),
  FOREIGN KEY (fastener, number) REFERENCES fastener_revision (fastener, number)
) STRICT;

-- Not evidence: phrases with the same meaning find the same fasteners. One that means itself heads its group.
CREATE TABLE fastener_synonym (
  phrase TEXT PRIMARY KEY,
  meaning TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX fastener_synonym_by_meaning ON fastener_synonym (meaning);
INSERT INTO fastener_synonym (phrase, meaning) VALUES
  ('drain plug', 'drain plug'), ('sump plug', 'drain plug'), ('oil drain screw', 'drain plug'),
  ('wheel nut', 'wheel nut'), ('lug nut', 'wheel nut'), ('wheel bolt', 'wheel nut'),
  ('oil filter housing', 'oil filter housing'), ('oil filter cap', 'oil filter housing'),
  ('brake bracket', 'brake bracket'), ('caliper bracket', 'brake bracket'), ('brake carrier', 'brake bracket'),
  ('valve cover', 'valve cover'), ('rocker cover', 'valve cover'), ('cylinder head cover', 'valve cover'),
  ('spark plug', 'spark plug'), ('ignition plug', 'spark plug'),
  ('gearbox', 'gearbox'), ('transmission', 'gearbox');

-- Not evidence: words of components and assemblies as the search knows them, for forgiving a slip in typing.
CREATE TABLE fastener_word (
  word TEXT PRIMARY KEY
) STRICT, WITHOUT ROWID;
CREATE VIRTUAL TABLE fastener_term USING fts5vocab ('fastener_search', 'col');
INSERT OR IGNORE INTO fastener_word (word)
  SELECT term FROM fastener_term WHERE col IN ('component', 'assembly') AND length(term) >= 4 AND term NOT GLOB '*[0-9]*';
DROP TABLE fastener_term;
INSERT INTO fastener_search (fastener_search, rank) VALUES ('rank', 'bm25(8, 4, 2, 1)');

-- What a service works down, in order. The newest entry of a name counts.
CREATE TABLE service_list (
  entry INTEGER PRIMARY KEY REFERENCES ledger (seq),
  name TEXT NOT NULL,
  fasteners TEXT NOT NULL -- JSON array of marks
) STRICT;
CREATE INDEX service_list_by_name ON service_list (name, entry);

-- A job's sheet is opened once and closed once.
CREATE TABLE job_event (
  entry INTEGER PRIMARY KEY REFERENCES ledger (seq),
  job TEXT NOT NULL REFERENCES job (id),
  event TEXT NOT NULL CHECK (event IN ('opened', 'closed')),
  date TEXT NOT NULL,
  service TEXT NOT NULL,
  fasteners TEXT NOT NULL, -- JSON array of marks: what is to be tightened, as the service said when the job was opened
  done_by TEXT NOT NULL,
  note TEXT NOT NULL,
  UNIQUE (job, event)
) STRICT;

-- Columns of a tightening. NULL: nothing was said, and the ledger's entry has no such fact.
ALTER TABLE tightening ADD COLUMN stages_done INTEGER;
ALTER TABLE tightening ADD COLUMN seal_renewed INTEGER CHECK (seal_renewed IN (0, 1));

CREATE TRIGGER fastener_approval_is_not_changed BEFORE UPDATE ON fastener_approval
BEGIN
  SELECT RAISE(ABORT, 'fastener approval: evidence is added, never changed');
END;
CREATE TRIGGER fastener_approval_is_not_removed BEFORE DELETE ON fastener_approval
BEGIN
  SELECT RAISE(ABORT, 'fastener approval: evidence is added, never removed');
END;
CREATE TRIGGER fastener_approval_is_not_replaced BEFORE INSERT ON fastener_approval
WHEN EXISTS (SELECT 1 FROM fastener_approval WHERE entry = NEW.entry OR (fastener = NEW.fastener AND number = NEW.number))
BEGIN
  SELECT RAISE(ABORT, 'fastener approval: evidence is added, never replaced');
END;
CREATE TRIGGER service_list_is_not_changed BEFORE UPDATE ON service_list
BEGIN
  SELECT RAISE(ABORT, 'service list: evidence is added, never changed');
END;
CREATE TRIGGER service_list_is_not_removed BEFORE DELETE ON service_list
BEGIN
  SELECT RAISE(ABORT, 'service list: evidence is added, never removed');
END;
CREATE TRIGGER service_list_is_not_replaced BEFORE INSERT ON service_list
WHEN EXISTS (SELECT 1 FROM service_list WHERE entry = NEW.entry)
BEGIN
  SELECT RAISE(ABORT, 'service list: evidence is added, never replaced');
END;
CREATE TRIGGER job_event_is_not_changed BEFORE UPDATE ON job_event
BEGIN
  SELECT RAISE(ABORT, 'job event: evidence is added, never changed');
END;
CREATE TRIGGER job_event_is_not_removed BEFORE DELETE ON job_event
BEGIN
  SELECT RAISE(ABORT, 'job event: evidence is added, never removed');
END;
CREATE TRIGGER job_event_is_not_replaced BEFORE INSERT ON job_event
WHEN EXISTS (SELECT 1 FROM job_event WHERE entry = NEW.entry OR (job = NEW.job AND event = NEW.event))
BEGIN
  SELECT RAISE(ABORT, 'job event: evidence is added, never replaced');
END;
