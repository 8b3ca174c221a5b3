-- A shop on a PostgreSQL server: the tables, and who may do what to them. The same versions as in db/migrations/sqlite, so that a
-- shop can move between the two.
-- Dates are ISO 8601 text, instants UTC with milliseconds, percentages are %, torques are numbers beside their unit's code.
-- `entry` is the ledger's sequence of the entry that proves a row.

-- Text sorts by its bytes here as it does in a file, whatever the server's language is.
CREATE DOMAIN words AS text COLLATE "C";

-- Two roles of the server stand for the program: one that writes and one that looks. Whoever works in the shop is a member of one
-- of them, and the program takes that role on before it touches the shop, its owner among them. Neither owns anything.
CREATE FUNCTION writer_role() RETURNS name STABLE LANGUAGE sql RETURN left('steadyturn_write_' || current_database(), 63)::name;
CREATE FUNCTION looker_role() RETURNS name STABLE LANGUAGE sql RETURN left('steadyturn_look_' || current_database(), 63)::name;

DO $roles$
DECLARE
  role name;
BEGIN
  FOREACH role IN ARRAY ARRAY[writer_role(), looker_role()] LOOP
    IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = role) THEN
      EXECUTE format('CREATE ROLE %I NOLOGIN', role);
    END IF;
    EXECUTE format('GRANT USAGE ON SCHEMA steadyturn TO %I', role);
  END LOOP;
  IF NOT pg_has_role(session_user, writer_role(), 'MEMBER') THEN
    EXECUTE format('GRANT %I TO %I', writer_role(), session_user);
  END IF;
END
$roles$;

-- What the program may do to a table besides looking at it.
CREATE FUNCTION let_write(shop_table regclass, rights text) RETURNS void LANGUAGE plpgsql AS $$
BEGIN
  EXECUTE format('GRANT SELECT ON %s TO %I', shop_table, looker_role());
  EXECUTE format('GRANT SELECT, %s ON %s TO %I', rights, shop_table, writer_role());
END
$$;

CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '%: evidence is added, never %', TG_ARGV[0], CASE TG_OP WHEN 'UPDATE' THEN 'changed' ELSE 'removed' END;
END
$$;

-- Evidence is added, never changed: the program holds no right to do anything else, and the table's owner would have to take the
-- guard away first.
CREATE FUNCTION keep_as_evidence(evidence regclass, called text) RETURNS void LANGUAGE plpgsql AS $$
BEGIN
  PERFORM let_write(evidence, 'INSERT');
  EXECUTE format('CREATE TRIGGER rows_stay BEFORE UPDATE OR DELETE ON %s FOR EACH ROW EXECUTE FUNCTION refuse_change(%L)', evidence, called);
  EXECUTE format('CREATE TRIGGER table_stays BEFORE TRUNCATE ON %s FOR EACH STATEMENT EXECUTE FUNCTION refuse_change(%L)', evidence, called);
END
$$;

CREATE TABLE schema_migration (
  version BIGINT PRIMARY KEY,
  name WORDS NOT NULL,
  sha256 WORDS NOT NULL,
  applied_at WORDS NOT NULL
);

CREATE TABLE ledger (
  seq BIGINT PRIMARY KEY,
  at WORDS NOT NULL,
  who WORDS NOT NULL,
  kind WORDS NOT NULL,
  entry BYTEA NOT NULL, -- canonical JSON, hashed as it stands
  leaf BYTEA NOT NULL CHECK (length(leaf) = 32)
);

CREATE TABLE shop_setting (
  name WORDS PRIMARY KEY,
  value WORDS NOT NULL,
  entry BIGINT NOT NULL REFERENCES ledger (seq)
);

CREATE TABLE imported_file (
  kind WORDS NOT NULL,
  sha256 WORDS NOT NULL,
  row_count BIGINT NOT NULL,
  entry BIGINT NOT NULL REFERENCES ledger (seq),
  PRIMARY KEY (kind, sha256, entry)
);

CREATE TABLE tool (
  id WORDS PRIMARY KEY,
  description WORDS NOT NULL,
  maker WORDS NOT NULL,
  serial WORDS NOT NULL,
  type WORDS NOT NULL,
  class WORDS NOT NULL,
  unit WORDS NOT NULL,
  minimum DOUBLE PRECISION,
  maximum DOUBLE PRECISION NOT NULL,
  resolution DOUBLE PRECISION,
  drive WORDS NOT NULL,
  interval_days BIGINT,
  limit_percent DOUBLE PRECISION,
  status WORDS NOT NULL,
  status_reason WORDS NOT NULL,
  entry BIGINT NOT NULL REFERENCES ledger (seq)
);

CREATE TABLE tool_status_event (
  entry BIGINT PRIMARY KEY REFERENCES ledger (seq),
  tool WORDS NOT NULL REFERENCES tool (id),
  date WORDS NOT NULL,
  status WORDS NOT NULL,
  reason WORDS NOT NULL
);
CREATE INDEX tool_status_event_by_tool ON tool_status_event (tool, entry);

CREATE TABLE reference_standard (
  id WORDS PRIMARY KEY,
  description WORDS NOT NULL,
  serial WORDS NOT NULL,
  certificate WORDS NOT NULL,
  calibrated WORDS,
  due WORDS,
  expanded_uncertainty_percent DOUBLE PRECISION NOT NULL,
  coverage_factor DOUBLE PRECISION,
  error_percent DOUBLE PRECISION,
  entry BIGINT NOT NULL REFERENCES ledger (seq)
);

CREATE TABLE fastener_revision (
  id BIGINT PRIMARY KEY,
  fastener WORDS NOT NULL,
  number BIGINT NOT NULL CHECK (number >= 1),
  assembly WORDS NOT NULL,
  component WORDS NOT NULL,
  thread WORDS NOT NULL,
  property_class WORDS NOT NULL,
  part_material WORDS NOT NULL,
  drive WORDS NOT NULL,
  unit WORDS NOT NULL,
  target DOUBLE PRECISION NOT NULL,
  low DOUBLE PRECISION,
  high DOUBLE PRECISION,
  angle_deg DOUBLE PRECISION,
  part_limit DOUBLE PRECISION,
  seal WORDS NOT NULL,
  renew BIGINT CHECK (renew IN (0, 1)),
  lubrication WORDS NOT NULL,
  seat_check WORDS NOT NULL,
  source WORDS NOT NULL,
  revision WORDS NOT NULL,
  revision_reason WORDS NOT NULL,
  entry BIGINT NOT NULL REFERENCES ledger (seq),
  UNIQUE (fastener, number)
);

-- Newest revisions by their words; a row's rowid is the revision's id. db/tables/fastener_search.cpp keeps it and asks it: full
-- text search is where engines differ.
CREATE TABLE fastener_search (
  rowid BIGINT PRIMARY KEY,
  fastener WORDS NOT NULL,
  component WORDS NOT NULL,
  assembly WORDS NOT NULL,
  thread WORDS NOT NULL,
  terms TSVECTOR NOT NULL -- the search's own words, weighted A to D in the order of the columns
);
CREATE INDEX fastener_search_by_term ON fastener_search USING gin (terms);

CREATE TABLE check_record (
  id BIGINT PRIMARY KEY,
  tool WORDS NOT NULL REFERENCES tool (id),
  date WORDS NOT NULL,
  phase WORDS NOT NULL,
  reference WORDS REFERENCES reference_standard (id),
  checked_by WORDS NOT NULL,
  direction WORDS NOT NULL,
  temperature_c DOUBLE PRECISION,
  humidity_percent DOUBLE PRECISION,
  note WORDS NOT NULL,
  limit_percent DOUBLE PRECISION NOT NULL,
  rule WORDS NOT NULL,
  reference_expanded_percent DOUBLE PRECISION NOT NULL,
  reference_coverage_factor DOUBLE PRECISION NOT NULL,
  reference_error_percent DOUBLE PRECISION NOT NULL,
  span_reproducibility DOUBLE PRECISION,
  span_drive DOUBLE PRECISION,
  span_interface DOUBLE PRECISION,
  span_loading_point DOUBLE PRECISION,
  verdict WORDS NOT NULL,
  corrects BIGINT REFERENCES check_record (id),
  correction_reason WORDS NOT NULL,
  entry BIGINT NOT NULL REFERENCES ledger (seq)
);
CREATE INDEX check_record_by_tool ON check_record (tool, date, phase, id);
CREATE INDEX check_record_by_date ON check_record (date, id);
CREATE UNIQUE INDEX check_record_corrected_once ON check_record (corrects) WHERE corrects IS NOT NULL;

CREATE TABLE check_point (
  check_id BIGINT NOT NULL REFERENCES check_record (id),
  position BIGINT NOT NULL,
  target DOUBLE PRECISION NOT NULL,
  unit WORDS NOT NULL,
  readings WORDS NOT NULL, -- JSON array of texts, as typed
  reading_count BIGINT NOT NULL,
  mean_deviation DOUBLE PRECISION NOT NULL,
  repeatability DOUBLE PRECISION,
  standard_uncertainty DOUBLE PRECISION NOT NULL,
  interval_percent DOUBLE PRECISION NOT NULL,
  conformity_probability DOUBLE PRECISION NOT NULL,
  verdict WORDS NOT NULL,
  PRIMARY KEY (check_id, position)
);

CREATE TABLE job (
  id WORDS PRIMARY KEY,
  vehicle WORDS NOT NULL
);

CREATE TABLE tightening (
  id BIGINT PRIMARY KEY,
  job WORDS NOT NULL REFERENCES job (id),
  date WORDS NOT NULL,
  fastener WORDS NOT NULL,
  fastener_number BIGINT NOT NULL,
  tool WORDS NOT NULL REFERENCES tool (id),
  setting WORDS NOT NULL, -- as typed
  unit WORDS NOT NULL,
  seat_checked BIGINT CHECK (seat_checked IN (0, 1)),
  done_by WORDS NOT NULL,
  entry BIGINT NOT NULL REFERENCES ledger (seq),
  FOREIGN KEY (fastener, fastener_number) REFERENCES fastener_revision (fastener, number)
);
CREATE INDEX tightening_by_tool ON tightening (tool, date, id);
CREATE INDEX tightening_by_job ON tightening (job, fastener, date, id);

-- The ledger grows by one at its end. Two who add at the same time name the same number: the second waits for the first and is
-- refused, so there is no gap and no fork whatever a program does. Its names mean the shop's things whoever asks, not what a
-- caller's own path puts before them.
CREATE FUNCTION grow_at_the_end() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, steadyturn, pg_temp AS $$
BEGIN
  IF NEW.seq IS DISTINCT FROM (SELECT COALESCE(MAX(seq), 0) + 1 FROM ledger) THEN
    RAISE EXCEPTION 'the ledger grows at its end, by one entry at a time';
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER ledger_grows_at_its_end BEFORE INSERT ON ledger FOR EACH ROW EXECUTE FUNCTION grow_at_the_end();

SELECT let_write('schema_migration', 'SELECT');
SELECT let_write('shop_setting', 'INSERT, UPDATE (value, entry)');
SELECT let_write('tool', 'INSERT, UPDATE (status, status_reason)');
SELECT let_write('reference_standard', 'INSERT');
SELECT let_write('job', 'INSERT');
SELECT let_write('fastener_search', 'INSERT, DELETE');
SELECT keep_as_evidence('ledger', 'ledger');
SELECT keep_as_evidence('imported_file', 'imported file');
SELECT keep_as_evidence('tool_status_event', 'tool status event');
SELECT keep_as_evidence('fastener_revision', 'fastener revision');
SELECT keep_as_evidence('check_record', 'check record');
SELECT keep_as_evidence('check_point', 'check point');
SELECT keep_as_evidence('tightening', 'tightening');
