-- How a person is reached and spoken to. NULL = not told: no address, the language of the browser, the unit of the site, no quiet hours.
-- quiet_from, quiet_to: times of day as HH:MM on the clock of the site; low priorities wait for the end of them.
ALTER TABLE people ADD COLUMN email TEXT;
ALTER TABLE people ADD COLUMN phone_number TEXT;
ALTER TABLE people ADD COLUMN language TEXT;
ALTER TABLE people ADD COLUMN temperature_unit TEXT CHECK (temperature_unit IN ('°C', '°F'));
ALTER TABLE people ADD COLUMN quiet_from TEXT;
ALTER TABLE people ADD COLUMN quiet_to TEXT;

-- The weekly rota. weekday: 1 = Monday … 7 = Sunday, on which it begins; a span whose end is not after its beginning goes through midnight.
CREATE TABLE duty_spans (
  id INTEGER PRIMARY KEY,
  person_id TEXT NOT NULL REFERENCES people (id) ON DELETE CASCADE,
  weekday INTEGER NOT NULL CHECK (weekday BETWEEN 1 AND 7),
  from_time TEXT NOT NULL,
  to_time TEXT NOT NULL
) STRICT;

-- person_id: who is told; NULL = a program, or written before there were people in it. confirmed_ms: when the device said that it has shown it.
ALTER TABLE notices ADD COLUMN person_id TEXT;
ALTER TABLE notices ADD COLUMN confirmed_ms INTEGER;

-- Links in messages that acknowledge one alarm for one person, once. Only the hash is stored.
CREATE TABLE acknowledge_links (
  token_hash TEXT PRIMARY KEY,
  alarm_id TEXT NOT NULL,
  person_id TEXT NOT NULL REFERENCES people (id) ON DELETE CASCADE,
  expires_ms INTEGER NOT NULL,
  used_ms INTEGER
) STRICT, WITHOUT ROWID;
CREATE INDEX acknowledge_links_by_expiry ON acknowledge_links (expires_ms);
