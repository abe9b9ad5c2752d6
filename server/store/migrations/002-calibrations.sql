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
