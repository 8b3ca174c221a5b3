-- The bench: checks being typed, the set-ups that yield the budget's spans, and what range a reference is known to cover.

-- A check being typed, one a tool. Not evidence: it is replaced at every reading and goes when the check is recorded.
CREATE TABLE check_draft (
  tool WORDS PRIMARY KEY REFERENCES tool (id),
  draft WORDS NOT NULL, -- JSON, as app/shop/rules/draft_text.cpp writes it
  saved_at WORDS NOT NULL
);

-- Of a tool model: maker, description, type, class and maximum together. A newer one replaces an older one by its date; both stay.
CREATE TABLE bench_setup (
  id BIGINT PRIMARY KEY,
  maker WORDS NOT NULL,
  description WORDS NOT NULL,
  type WORDS NOT NULL,
  class WORDS NOT NULL,
  maximum DOUBLE PRECISION NOT NULL,
  maximum_unit WORDS NOT NULL,
  date WORDS NOT NULL,
  done_by WORDS NOT NULL,
  reference WORDS REFERENCES reference_standard (id),
  target DOUBLE PRECISION NOT NULL,
  unit WORDS NOT NULL, -- of target and readings
  readings WORDS NOT NULL, -- JSON object of arrays of arrays of texts, as typed; a run that was not taken is not in it
  span_reproducibility DOUBLE PRECISION,
  span_drive DOUBLE PRECISION,
  span_interface DOUBLE PRECISION,
  span_loading_point DOUBLE PRECISION,
  basis WORDS NOT NULL, -- where spans without readings come from
  note WORDS NOT NULL,
  entry BIGINT NOT NULL REFERENCES ledger (seq)
);
-- Not by maker and description: they may be longer than an index takes.
CREATE INDEX bench_setup_by_model ON bench_setup (maximum, date, id);

-- The newest entry of a reference counts.
CREATE TABLE reference_range (
  entry BIGINT PRIMARY KEY REFERENCES ledger (seq),
  reference WORDS NOT NULL REFERENCES reference_standard (id),
  low DOUBLE PRECISION NOT NULL,
  high DOUBLE PRECISION NOT NULL CHECK (high > low),
  unit WORDS NOT NULL
);
CREATE INDEX reference_range_by_reference ON reference_range (reference, entry);

SELECT let_write('check_draft', 'INSERT, UPDATE, DELETE');
SELECT keep_as_evidence('bench_setup', 'bench set-up');
SELECT keep_as_evidence('reference_range', 'reference range');
