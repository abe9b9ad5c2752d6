-- A battery is told in percent, in volts, or in a unit that nobody told (percent | volts | unclear). Until now only what could be percent was kept.
ALTER TABLE nodes RENAME COLUMN battery_percent TO battery_level;
ALTER TABLE nodes ADD COLUMN battery_unit TEXT;
UPDATE nodes SET battery_unit = 'percent' WHERE battery_level IS NOT NULL;
