-- The bay: how a fastener is tightened in stages and who stands for its specification, what people call it, the lists a
-- service works down, and the sheet of a job.

-- Columns of a revision. Empty: nothing was said, and the ledger's entry has no such fact.
ALTER TABLE fastener_revision ADD COLUMN stages WORDS NOT NULL DEFAULT ''; -- "30;60;90deg": torques in the unit, then angles
ALTER TABLE fastener_revision ADD COLUMN sequence WORDS NOT NULL DEFAULT '';
ALTER TABLE fastener_revision ADD COLUMN limit_basis WORDS NOT NULL DEFAULT '';
ALTER TABLE fastener_revision ADD COLUMN entered_by WORDS NOT NULL DEFAULT '';

-- A second person stands for a revision. Without a row here it is not released.
CREATE TABLE fastener_approval (
  entry BIGINT PRIMARY KEY REFERENCES ledger (seq),
  fastener WORDS NOT NULL,
  number BIGINT NOT NULL,
  date WORDS NOT NULL,
  approved_by WORDS NOT NULL,
  UNIQUE (fastener, number),
  FOREIGN KEY (fastener, number) REFERENCES fastener_revision (fastener, number)
);

-- Not evidence: phrases with the same meaning find the same fasteners. One that means itself heads its group.
CREATE TABLE fastener_synonym (
  phrase WORDS PRIMARY KEY,
  meaning WORDS NOT NULL
);
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
  word WORDS PRIMARY KEY
);

-- What a service works down, in order. The newest entry of a name counts.
CREATE TABLE service_list (
  entry BIGINT PRIMARY KEY REFERENCES ledger (seq),
  name WORDS NOT NULL,
  fasteners WORDS NOT NULL -- JSON array of marks
);
CREATE INDEX service_list_by_name ON service_list (name, entry);

-- A job's sheet is opened once and closed once.
CREATE TABLE job_event (
  entry BIGINT PRIMARY KEY REFERENCES ledger (seq),
  job WORDS NOT NULL REFERENCES job (id),
  event WORDS NOT NULL CHECK (event IN ('opened', 'closed')),
  date WORDS NOT NULL,
  service WORDS NOT NULL,
  fasteners WORDS NOT NULL, -- JSON array of marks: what is to be tightened, as the service said when the job was opened
  done_by WORDS NOT NULL,
  note WORDS NOT NULL,
  UNIQUE (job, event)
);

-- Columns of a tightening. NULL: nothing was said, and the ledger's entry has no such fact.
ALTER TABLE tightening ADD COLUMN stages_done BIGINT;
ALTER TABLE tightening ADD COLUMN seal_renewed BIGINT CHECK (seal_renewed IN (0, 1));

SELECT let_write('fastener_synonym', 'INSERT, UPDATE, DELETE');
SELECT let_write('fastener_word', 'INSERT');
SELECT keep_as_evidence('fastener_approval', 'fastener approval');
SELECT keep_as_evidence('service_list', 'service list');
SELECT keep_as_evidence('job_event', 'job event');
