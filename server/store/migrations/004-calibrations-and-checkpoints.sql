-- What corrects the raw readings of a probe, and from when. Rows are never changed or removed: of two that begin together the later one holds.
-- entry: the correction as JSON (shared/readings/calibration.ts).
CREATE TABLE calibrations (
  id INTEGER PRIMARY KEY,
  probe INTEGER NOT NULL REFERENCES probes (number),
  from_ms INTEGER NOT NULL,
  entry TEXT NOT NULL,
  note TEXT NOT NULL,
  person TEXT NOT NULL,
  entered_ms INTEGER NOT NULL
) STRICT;
CREATE INDEX calibrations_by_probe ON calibrations (probe, from_ms);

-- The memory of a probe's quality tests before its first reading in each six hours in which it was heard: readings around a late one are judged
-- again from there. slot_ms: beginning of the six hours. memory: JSON (shared/readings/quality/judge-reading.ts); a migration that changes
-- its shape must empty this table.
CREATE TABLE quality_checkpoints (
  probe INTEGER NOT NULL,
  slot_ms INTEGER NOT NULL,
  memory TEXT NOT NULL,
  PRIMARY KEY (probe, slot_ms)
) STRICT, WITHOUT ROWID;
