-- Times are milliseconds since the epoch, UTC. Readings are scaled integers (ten-thousandths): smallest on disk, exact for what sensors send.
CREATE TABLE settings (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT, WITHOUT ROWID;

CREATE TABLE people (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL UNIQUE COLLATE NOCASE,
  role TEXT NOT NULL CHECK (role IN ('viewer', 'crew', 'manager')),
  password_hash TEXT NOT NULL,
  created_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE sessions (
  token_hash TEXT PRIMARY KEY,
  person_id TEXT NOT NULL REFERENCES people (id) ON DELETE CASCADE,
  created_ms INTEGER NOT NULL,
  expires_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE tokens (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  scope TEXT NOT NULL CHECK (scope IN ('read', 'full')),
  token_hash TEXT NOT NULL UNIQUE,
  created_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE chambers (
  id TEXT PRIMARY KEY,
  name TEXT NOT NULL UNIQUE COLLATE NOCASE,
  created_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE nodes (
  id TEXT PRIMARY KEY,
  status TEXT NOT NULL DEFAULT 'unknown' CHECK (status IN ('online', 'offline', 'unknown')),
  status_ms INTEGER,
  password_hash TEXT,
  discovered_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE probes (
  number INTEGER PRIMARY KEY,
  node_id TEXT NOT NULL REFERENCES nodes (id),
  address TEXT NOT NULL,
  name TEXT NOT NULL,
  silence_ms INTEGER NOT NULL,
  out_of_service INTEGER NOT NULL DEFAULT 0,
  discovered_ms INTEGER NOT NULL,
  UNIQUE (node_id, address)
) STRICT;

-- Where a probe stood and when: a batch's record reads the probes that were in its chamber then. A house probe has no chamber.
CREATE TABLE placements (
  id INTEGER PRIMARY KEY,
  probe INTEGER NOT NULL REFERENCES probes (number),
  chamber_id TEXT REFERENCES chambers (id) ON DELETE CASCADE,
  place TEXT NOT NULL CHECK (place IN ('canopy', 'film', 'house')),
  from_ms INTEGER NOT NULL,
  to_ms INTEGER
) STRICT;
CREATE INDEX placements_by_chamber ON placements (chamber_id, from_ms);
CREATE INDEX placements_by_probe ON placements (probe, from_ms);

-- flags: temperature flag in bits 0–3, humidity flag in bits 4–7 (QARTOD), late in bit 8. delay: received minus measured, ms.
CREATE TABLE readings (
  probe INTEGER NOT NULL,
  t INTEGER NOT NULL,
  temperature INTEGER,
  humidity INTEGER,
  flags INTEGER NOT NULL,
  delay INTEGER NOT NULL,
  PRIMARY KEY (probe, t)
) STRICT, WITHOUT ROWID;

-- One-minute roll-up of the good readings (flag 1 or 2), kept in step within the transaction that changes readings.
CREATE TABLE minutes (
  probe INTEGER NOT NULL,
  minute INTEGER NOT NULL,
  temperature_count INTEGER NOT NULL,
  temperature_sum INTEGER,
  temperature_min INTEGER,
  temperature_max INTEGER,
  humidity_count INTEGER NOT NULL,
  humidity_sum INTEGER,
  humidity_min INTEGER,
  humidity_max INTEGER,
  readings INTEGER NOT NULL,
  bad INTEGER NOT NULL,
  PRIMARY KEY (probe, minute)
) STRICT, WITHOUT ROWID;

CREATE TABLE refused (
  id INTEGER PRIMARY KEY,
  at_ms INTEGER NOT NULL,
  topic TEXT NOT NULL,
  reason TEXT NOT NULL,
  place TEXT NOT NULL,
  payload_start BLOB NOT NULL
) STRICT;

CREATE TABLE profile_versions (
  profile_id TEXT NOT NULL,
  version INTEGER NOT NULL,
  document TEXT NOT NULL,
  created_ms INTEGER NOT NULL,
  created_by TEXT NOT NULL,
  PRIMARY KEY (profile_id, version)
) STRICT, WITHOUT ROWID;

CREATE TABLE batches (
  id TEXT PRIMARY KEY,
  code TEXT NOT NULL,
  chamber_id TEXT NOT NULL,
  profile_id TEXT NOT NULL,
  profile_version INTEGER NOT NULL,
  scion TEXT NOT NULL,
  rootstock TEXT NOT NULL,
  method TEXT NOT NULL,
  trays INTEGER NOT NULL,
  plants INTEGER NOT NULL,
  opened_ms INTEGER NOT NULL,
  closed_ms INTEGER,
  finished_ms INTEGER,
  taken_plants INTEGER,
  FOREIGN KEY (profile_id, profile_version) REFERENCES profile_versions (profile_id, version)
) STRICT, WITHOUT ROWID;
CREATE INDEX batches_by_opening ON batches (opened_ms);
CREATE UNIQUE INDEX one_open_batch_a_chamber ON batches (chamber_id) WHERE finished_ms IS NULL;

CREATE TABLE holds (
  batch_id TEXT NOT NULL REFERENCES batches (id) ON DELETE CASCADE,
  from_ms INTEGER NOT NULL,
  to_ms INTEGER,
  PRIMARY KEY (batch_id, from_ms)
) STRICT, WITHOUT ROWID;

CREATE TABLE moves (
  batch_id TEXT NOT NULL REFERENCES batches (id) ON DELETE CASCADE,
  stage TEXT NOT NULL,
  at_ms INTEGER NOT NULL,
  PRIMARY KEY (batch_id, stage)
) STRICT, WITHOUT ROWID;

CREATE TABLE log_entries (
  id TEXT PRIMARY KEY,
  batch_id TEXT NOT NULL REFERENCES batches (id) ON DELETE CASCADE,
  at_ms INTEGER NOT NULL,
  kind TEXT NOT NULL,
  gap_percent REAL,
  note TEXT NOT NULL,
  person TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX log_entries_by_batch ON log_entries (batch_id, at_ms);

CREATE TABLE check_answers (
  batch_id TEXT NOT NULL REFERENCES batches (id) ON DELETE CASCADE,
  check_id TEXT NOT NULL,
  answer TEXT NOT NULL CHECK (answer IN ('yes', 'no')),
  at_ms INTEGER NOT NULL,
  person TEXT NOT NULL,
  note TEXT NOT NULL,
  PRIMARY KEY (batch_id, check_id)
) STRICT, WITHOUT ROWID;

-- One row an occurrence; the document is the alarm itself. state and times are copied out for look-ups.
CREATE TABLE alarms (
  id TEXT PRIMARY KEY,
  chamber_id TEXT NOT NULL,
  batch_id TEXT,
  state TEXT NOT NULL,
  occurred_ms INTEGER NOT NULL,
  document TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX alarms_by_time ON alarms (occurred_ms);
CREATE INDEX alarms_by_batch ON alarms (batch_id, occurred_ms);
CREATE INDEX alarms_active ON alarms (state) WHERE state <> 'normal';

CREATE TABLE alarm_events (
  id INTEGER PRIMARY KEY,
  alarm_id TEXT NOT NULL REFERENCES alarms (id),
  at_ms INTEGER NOT NULL,
  change TEXT NOT NULL,
  from_state TEXT NOT NULL,
  to_state TEXT NOT NULL,
  priority TEXT NOT NULL,
  limit_value REAL,
  value REAL,
  person TEXT,
  note TEXT NOT NULL
) STRICT;
CREATE INDEX alarm_events_by_alarm ON alarm_events (alarm_id, id);

CREATE TABLE watch_entries (
  chamber_id TEXT NOT NULL,
  entry_key TEXT NOT NULL,
  entry TEXT NOT NULL,
  PRIMARY KEY (chamber_id, entry_key)
) STRICT, WITHOUT ROWID;

CREATE TABLE phones (
  id TEXT PRIMARY KEY,
  person_id TEXT NOT NULL REFERENCES people (id) ON DELETE CASCADE,
  name TEXT NOT NULL,
  endpoint TEXT NOT NULL UNIQUE,
  p256dh TEXT NOT NULL,
  auth TEXT NOT NULL,
  created_ms INTEGER NOT NULL,
  last_result TEXT,
  last_result_ms INTEGER
) STRICT, WITHOUT ROWID;

-- The outbox: written with the alarm that causes the notice.
CREATE TABLE notices (
  id TEXT PRIMARY KEY,
  alarm_id TEXT NOT NULL,
  chamber_id TEXT NOT NULL,
  kind TEXT NOT NULL,
  channel TEXT NOT NULL,
  target_id TEXT NOT NULL,
  urgent INTEGER NOT NULL,
  decided_ms INTEGER NOT NULL,
  state TEXT NOT NULL DEFAULT 'waiting' CHECK (state IN ('waiting', 'sent', 'given-up')),
  attempts INTEGER NOT NULL DEFAULT 0,
  next_try_ms INTEGER NOT NULL,
  result TEXT,
  result_ms INTEGER
) STRICT, WITHOUT ROWID;
CREATE INDEX notices_waiting ON notices (next_try_ms) WHERE state = 'waiting';
CREATE INDEX notices_by_alarm ON notices (alarm_id);
