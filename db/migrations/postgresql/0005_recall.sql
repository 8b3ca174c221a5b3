-- What was decided about the tightenings that a failed check put in doubt, and that all of them are.

CREATE TABLE recall_decision (
  entry BIGINT PRIMARY KEY REFERENCES ledger (seq),
  failed_check BIGINT NOT NULL REFERENCES check_record (id),
  tightening BIGINT NOT NULL REFERENCES tightening (id),
  action WORDS NOT NULL CHECK (action IN ('accept', 're-torque', 'replace-part')),
  reason WORDS NOT NULL,
  date WORDS NOT NULL,
  decided_by WORDS NOT NULL
);
CREATE INDEX recall_decision_by_check ON recall_decision (failed_check, tightening, entry);

CREATE TABLE recall_closing (
  entry BIGINT PRIMARY KEY REFERENCES ledger (seq),
  failed_check BIGINT NOT NULL UNIQUE REFERENCES check_record (id),
  tightenings BIGINT NOT NULL,
  date WORDS NOT NULL,
  closed_by WORDS NOT NULL,
  note WORDS NOT NULL
);

CREATE FUNCTION refuse_after_the_closing() RETURNS trigger LANGUAGE plpgsql SET search_path = pg_catalog, steadyturn, pg_temp AS $$
BEGIN
  IF EXISTS (SELECT FROM recall_closing WHERE failed_check = NEW.failed_check) THEN
    RAISE EXCEPTION 'recall decision: this recall is closed';
  END IF;
  RETURN NEW;
END
$$;
CREATE TRIGGER recall_decision_ends_with_the_closing BEFORE INSERT ON recall_decision
FOR EACH ROW EXECUTE FUNCTION refuse_after_the_closing();

SELECT keep_as_evidence('recall_decision', 'recall decision');
SELECT keep_as_evidence('recall_closing', 'recall closing');
