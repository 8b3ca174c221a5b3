-- What is being typed at the bench about a tool: its check and its set-up, each a draft of its own.
-- Not evidence: a draft is replaced at every reading and goes when what it is of is recorded.
CREATE TABLE bench_draft (
  tool WORDS NOT NULL REFERENCES tool (id),
  what WORDS NOT NULL CHECK (what IN ('check', 'set-up')),
  draft WORDS NOT NULL, -- JSON, as app/shop/rules/draft_text.cpp writes it
  saved_at WORDS NOT NULL,
  PRIMARY KEY (tool, what)
);
INSERT INTO bench_draft (tool, what, draft, saved_at) SELECT tool, 'check', draft, saved_at FROM check_draft;
DROP TABLE check_draft;

SELECT let_write('bench_draft', 'INSERT, UPDATE, DELETE');
