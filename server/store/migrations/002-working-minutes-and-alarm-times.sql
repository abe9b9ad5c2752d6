-- How long work in a tent was said to take; only entries of kind 'working' have it.
ALTER TABLE log_entries ADD COLUMN minutes REAL;

-- The statistics of alarms and the detection of floods ask for steps by time.
CREATE INDEX alarm_events_by_time ON alarm_events (at_ms);
