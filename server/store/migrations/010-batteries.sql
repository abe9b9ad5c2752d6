-- What is left in a node's battery, percent, as it told last, and when that arrived. NULL: it has not told.
ALTER TABLE nodes ADD COLUMN battery_percent REAL;
ALTER TABLE nodes ADD COLUMN battery_ms INTEGER;
