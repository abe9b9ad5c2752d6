// The one-minute roll-up of the good readings (flag 1 or 2). New readings are added to their minute; a minute in which a reading was completed
// or judged anew is recomputed from the readings themselves. Either way it is what a recomputation would give.
import type { Database, Statement } from 'better-sqlite3';
import { MINUTE_MS } from '../../shared/units.ts';

/** A row of the table of readings: scaled values, packed flags. */
export interface StoredRow {
  readonly probe: number;
  readonly timeMs: number;
  readonly temperature: number | null;
  readonly humidity: number | null;
  readonly flags: number;
}

export interface RollUp {
  /** A reading that was not there before. */
  add(row: StoredRow): void;
  /** A reading that was there has changed. */
  recompute(probe: number, timeMs: number): void;
  /** Writes what has come together; call once, inside the transaction. */
  write(): void;
}

const recomputeSql = `
  INSERT OR REPLACE INTO minutes
  SELECT @probe, @minute,
    count(temperature) FILTER (WHERE flags & 15 <= 2), sum(temperature) FILTER (WHERE flags & 15 <= 2),
    min(temperature) FILTER (WHERE flags & 15 <= 2), max(temperature) FILTER (WHERE flags & 15 <= 2),
    count(humidity) FILTER (WHERE (flags >> 4) & 15 <= 2), sum(humidity) FILTER (WHERE (flags >> 4) & 15 <= 2),
    min(humidity) FILTER (WHERE (flags >> 4) & 15 <= 2), max(humidity) FILTER (WHERE (flags >> 4) & 15 <= 2),
    count(*),
    count(*) FILTER (WHERE (temperature IS NOT NULL AND flags & 15 IN (3, 4)) OR (humidity IS NOT NULL AND (flags >> 4) & 15 IN (3, 4)))
  FROM readings WHERE probe = @probe AND t >= @minute * 60000 AND t < (@minute + 1) * 60000`;

// min and max of two values are NULL when either is; a sum is NULL while there is nothing to sum, as an aggregate's is.
const merged = (name: string) => `
  ${name}_count = ${name}_count + excluded.${name}_count,
  ${name}_sum = coalesce(${name}_sum + excluded.${name}_sum, ${name}_sum, excluded.${name}_sum),
  ${name}_min = coalesce(min(${name}_min, excluded.${name}_min), ${name}_min, excluded.${name}_min),
  ${name}_max = coalesce(max(${name}_max, excluded.${name}_max), ${name}_max, excluded.${name}_max)`;

const addSql = `
  INSERT INTO minutes VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
  ON CONFLICT (probe, minute) DO UPDATE SET ${merged('temperature')}, ${merged('humidity')},
    readings = readings + excluded.readings, bad = bad + excluded.bad`;

/** Prepares the statements; what it answers begins the roll-up of one transaction, so that one rolled back leaves nothing behind. */
export function prepareRollUp(db: Database): () => RollUp {
  const recompute = db.prepare(recomputeSql);
  const add = db.prepare(addSql);
  return () => startRollUp(add, recompute);
}

function startRollUp(add: Statement, recompute: Statement): RollUp {
  const sums = new Map<number, MinuteSum>();
  const changed = new Map<number, { readonly probe: number; readonly minute: number }>();
  return {
    add({ probe, timeMs, temperature, humidity, flags }) {
      const minute = Math.floor(timeMs / MINUTE_MS);
      const key = keyOf(probe, minute);
      const sum = sums.get(key) ?? newSum(probe, minute);
      sums.set(key, sum);
      addReading(sum, temperature, humidity, flags);
    },
    recompute(probe, timeMs) {
      const minute = Math.floor(timeMs / MINUTE_MS);
      changed.set(keyOf(probe, minute), { probe, minute });
    },
    write() {
      for (const [key, { probe, minute, temperature: t, humidity: h, readings, bad }] of sums) {
        if (changed.has(key)) continue;
        add.run(probe, minute, t.count, t.sum, t.min, t.max, h.count, h.sum, h.min, h.max, readings, bad);
      }
      for (const one of changed.values()) recompute.run(one);
    },
  };
}

interface QuantitySum {
  count: number;
  sum: number | null;
  min: number | null;
  max: number | null;
}

interface MinuteSum {
  readonly probe: number;
  readonly minute: number;
  readonly temperature: QuantitySum;
  readonly humidity: QuantitySum;
  readings: number;
  bad: number;
}

/** Unique: a minute since the epoch stays below 10^9 for longer than anybody will read. */
function keyOf(probe: number, minute: number): number {
  return probe * 1_000_000_000 + minute;
}

function newSum(probe: number, minute: number): MinuteSum {
  const nothing = () => ({ count: 0, sum: null, min: null, max: null });
  return { probe, minute, temperature: nothing(), humidity: nothing(), readings: 0, bad: 0 };
}

function addReading(sum: MinuteSum, temperature: number | null, humidity: number | null, flags: number): void {
  const isTemperatureBad = addValue(sum.temperature, temperature, flags & 15);
  const isHumidityBad = addValue(sum.humidity, humidity, (flags >> 4) & 15);
  sum.readings += 1;
  if (isTemperatureBad || isHumidityBad) sum.bad += 1;
}

/** True when there is a value and it is not good. */
function addValue(sum: QuantitySum, value: number | null, flag: number): boolean {
  if (value === null) return false;
  if (flag > 2) return true;
  sum.count += 1;
  sum.sum = (sum.sum ?? 0) + value;
  sum.min = sum.min === null ? value : Math.min(sum.min, value);
  sum.max = sum.max === null ? value : Math.max(sum.max, value);
  return false;
}
