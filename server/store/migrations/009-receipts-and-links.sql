-- A link may be made for a program too: person_id NULL, and said_by names who is said to have it when it is used. Nothing was kept in it before.
DROP TABLE acknowledge_links;
CREATE TABLE acknowledge_links (
  token_hash TEXT PRIMARY KEY,
  alarm_id TEXT NOT NULL,
  person_id TEXT REFERENCES people (id) ON DELETE CASCADE,
  said_by TEXT NOT NULL,
  expires_ms INTEGER NOT NULL,
  used_ms INTEGER
) STRICT, WITHOUT ROWID;
CREATE INDEX acknowledge_links_by_expiry ON acknowledge_links (expires_ms);

-- push_key: the public key that the browser subscribed with; NULL = the one there was before keys could be changed.
-- refusals: how many pushes in a row were refused, refused_since_ms: since when. confirmed_ms: when the phone last said that it has shown one.
ALTER TABLE phones ADD COLUMN push_key TEXT;
ALTER TABLE phones ADD COLUMN refusals INTEGER NOT NULL DEFAULT 0;
ALTER TABLE phones ADD COLUMN refused_since_ms INTEGER;
ALTER TABLE phones ADD COLUMN confirmed_ms INTEGER;

-- Phones that were dropped because they take no more alerts, until their person has seen it.
CREATE TABLE lost_phones (
  id TEXT PRIMARY KEY,
  person_id TEXT NOT NULL REFERENCES people (id) ON DELETE CASCADE,
  name TEXT NOT NULL,
  reason TEXT NOT NULL,
  lost_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
