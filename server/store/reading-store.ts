// Readings and their one-minute roll-up. A reading is stored once for (probe, time); a later message may only complete it.
import type { Database } from 'better-sqlite3';
import type { Reading } from '../../shared/readings/reading.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { prepareCheckpoints } from './checkpoint-store.ts';
import { prepareRollUp, type RollUp } from './roll-up.ts';
import { fromScaled, packFlags, SCALE, toScaled, unpackFlags } from './scaled.ts';
import type { BucketValue, ClimateBucket, Commit, Store } from './store.ts';
import { guarded } from './store-problem.ts';

type JudgedReading = NonNullable<Commit['readings']>[number];

interface ReadingRow {
  t: number;
  temperature: number | null;
  humidity: number | null;
  flags: number;
  delay: number;
}

const insertSql = `
  INSERT INTO readings (probe, t, temperature, humidity, flags, delay) VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING`;

// Completing takes over the missing half with its flag and touches nothing else; a plain repeat changes no row.
const completeSql = `
  UPDATE readings SET
    temperature = coalesce(temperature, @temperature),
    humidity = coalesce(humidity, @humidity),
    flags = (CASE WHEN temperature IS NULL THEN @flags & 15 ELSE flags & 15 END)
      | (CASE WHEN humidity IS NULL THEN @flags & 240 ELSE flags & 240 END) | (flags & 256)
  WHERE probe = @probe AND t = @timeMs
    AND ((temperature IS NULL AND @temperature IS NOT NULL) OR (humidity IS NULL AND @humidity IS NOT NULL))`;

// Numbers above 2^31 are bound as floating-point: without the casts the division would keep its fraction, and each minute be a bucket.
const bucketOf = (timeMs: string) => `(${timeMs} - CAST(? AS INTEGER)) / CAST(? AS INTEGER)`;

const bucketColumns = (source: 'minutes' | 'readings') =>
  source === 'minutes'
    ? `min(temperature_min) tMin, max(temperature_max) tMax, sum(temperature_sum) tSum, sum(temperature_count) tCount,
       min(humidity_min) hMin, max(humidity_max) hMax, sum(humidity_sum) hSum, sum(humidity_count) hCount,
       sum(readings) readings, sum(bad) bad`
    : `min(temperature) FILTER (WHERE flags & 15 <= 2) tMin, max(temperature) FILTER (WHERE flags & 15 <= 2) tMax,
       sum(temperature) FILTER (WHERE flags & 15 <= 2) tSum, count(temperature) FILTER (WHERE flags & 15 <= 2) tCount,
       min(humidity) FILTER (WHERE (flags >> 4) & 15 <= 2) hMin, max(humidity) FILTER (WHERE (flags >> 4) & 15 <= 2) hMax,
       sum(humidity) FILTER (WHERE (flags >> 4) & 15 <= 2) hSum, count(humidity) FILTER (WHERE (flags >> 4) & 15 <= 2) hCount,
       count(*) readings, count(*) FILTER (WHERE flags & 15 IN (3, 4) OR (flags >> 4) & 15 IN (3, 4)) bad`;

interface BucketRow {
  bucket: number;
  tMin: number | null;
  tMax: number | null;
  tSum: number | null;
  tCount: number;
  hMin: number | null;
  hMax: number | null;
  hSum: number | null;
  hCount: number;
  readings: number;
  bad: number;
}

/** Writes readings and changed flags, one transaction's worth. Call inside the transaction. Answers which were new or completed one. */
export function prepareReadingWriter(db: Database) {
  const insert = db.prepare(insertSql);
  const complete = db.prepare(completeSql);
  const revise = db.prepare('UPDATE readings SET flags = (flags & 256) | ? WHERE probe = ? AND t = ?');
  const startRollUp = prepareRollUp(db);
  const store = (reading: JudgedReading, rollUp: RollUp): boolean => {
    const { probe, timeMs, receivedMs } = reading;
    const temperature = toScaled(reading.temperature);
    const humidity = toScaled(reading.humidity);
    const flags = packFlags(reading.temperatureFlag, reading.humidityFlag, reading.late);
    const row = { probe, timeMs, temperature, humidity, flags };
    if (insert.run(probe, timeMs, temperature, humidity, flags, receivedMs - timeMs).changes > 0) {
      rollUp.add(row);
      return true;
    }
    const isCompleted = complete.run(row).changes > 0;
    if (isCompleted) rollUp.recompute(probe, timeMs);
    return isCompleted;
  };
  return ({ readings = [], revised = [] }: Pick<Commit, 'readings' | 'revised'>): boolean[] => {
    const rollUp = startRollUp();
    const stored = readings.map((reading) => store(reading, rollUp));
    for (const { probe, timeMs, temperatureFlag, humidityFlag } of revised) {
      revise.run(packFlags(temperatureFlag, humidityFlag, false), probe, timeMs);
      rollUp.recompute(probe, timeMs);
    }
    rollUp.write();
    return stored;
  };
}

// A probe that speaks every five minutes has every fifth minute only: each stands until the next, for as long as the probe may be silent.
const timeAboveSql = `
  SELECT coalesce(sum(min(next - minute, @held)) FILTER (WHERE humidity_sum > @humidity * humidity_count), 0) minutes FROM (
    SELECT minute, humidity_sum, humidity_count, lead(minute, 1, @to) OVER (ORDER BY minute) next
    FROM minutes WHERE probe = @probe AND minute >= @from AND minute < @to AND humidity_count > 0)`;

const PAGE = 5_000;

export function openReadingStore(db: Database): Store['readings'] {
  const columns = 'SELECT t, temperature, humidity, flags, delay FROM readings WHERE probe = ?';
  const page = db.prepare<[number, number, number], ReadingRow>(
    `${columns} AND t >= ? AND t <= ? ORDER BY t LIMIT ${PAGE}`,
  );
  const newest = db.prepare<[number, number], ReadingRow>(`${columns} AND t <= ? ORDER BY t DESC LIMIT 1`);
  const count = db.prepare<[], { n: number }>('SELECT coalesce(sum(readings), 0) n FROM minutes');
  const mean = db.prepare<[number, number, number], Pick<BucketRow, 'tSum' | 'tCount' | 'hSum' | 'hCount'>>(
    `SELECT sum(temperature_sum) tSum, sum(temperature_count) tCount, sum(humidity_sum) hSum, sum(humidity_count) hCount
     FROM minutes WHERE probe = ? AND minute >= ? AND minute < ?`,
  );
  const timeAbove = db.prepare<
    [{ probe: number; humidity: number | null; from: number; to: number; held: number }],
    { minutes: number }
  >(timeAboveSql);
  const byMinute = db.prepare<[number, number, number, number, number], BucketRow>(
    `SELECT ${bucketOf('minute * 60000')} bucket, ${bucketColumns('minutes')} FROM minutes
     WHERE probe = ? AND minute >= ? AND minute < ? GROUP BY 1 ORDER BY 1`,
  );
  const byReading = db.prepare<[number, number, number, number, number], BucketRow>(
    `SELECT ${bucketOf('t')} bucket, ${bucketColumns('readings')} FROM readings
     WHERE probe = ? AND t >= ? AND t < ? GROUP BY 1 ORDER BY 1`,
  );
  return {
    async *range(probe, fromMs, toMs) {
      for (let next = fromMs; ; ) {
        const rows = guarded(() => page.all(probe, next, toMs));
        for (const row of rows) yield toReading(row);
        const last = rows.at(-1);
        if (last === undefined || rows.length < PAGE) return;
        next = last.t + 1;
        // The cursor is closed and the loop is free between pages: an export never holds up the ingester.
        await new Promise((resolve) => setImmediate(resolve));
      }
    },
    async newest(probe, toMs = Number.MAX_SAFE_INTEGER) {
      const row = guarded(() => newest.get(probe, toMs));
      return row === undefined ? null : toReading(row);
    },
    async buckets(probe, { fromMs, bucketMs, count: wanted }) {
      const toMs = fromMs + bucketMs * wanted;
      const isWhole = bucketMs % MINUTE_MS === 0 && fromMs % MINUTE_MS === 0;
      const rows = guarded(() =>
        isWhole
          ? byMinute.all(fromMs, bucketMs, probe, fromMs / MINUTE_MS, toMs / MINUTE_MS)
          : byReading.all(fromMs, bucketMs, probe, fromMs, toMs),
      );
      return rows.map(toBucket);
    },
    async mean(probe, fromMs, toMs) {
      const row = guarded(() => mean.get(probe, Math.floor(fromMs / MINUTE_MS), Math.floor(toMs / MINUTE_MS)));
      const of = (sum: number | null | undefined, n: number | undefined) =>
        sum === null || sum === undefined || !n ? null : fromScaled(sum / n);
      return { temperature: of(row?.tSum, row?.tCount), humidity: of(row?.hSum, row?.hCount) };
    },
    async timeAbove(probe, humidity, { fromMs, toMs, heldMs }) {
      const [from, to] = [Math.ceil(fromMs / MINUTE_MS), Math.floor(toMs / MINUTE_MS)];
      const held = Math.max(1, Math.round(heldMs / MINUTE_MS));
      const row = guarded(() => timeAbove.get({ probe, humidity: toScaled(humidity), from, to, held }));
      return (row?.minutes ?? 0) * MINUTE_MS;
    },
    checkpoints: prepareCheckpoints(db),
    async countAll() {
      return guarded(() => count.get()?.n ?? 0);
    },
  };
}

function toReading(row: ReadingRow): Reading {
  return {
    timeMs: row.t,
    temperature: fromScaled(row.temperature),
    humidity: fromScaled(row.humidity),
    receivedMs: row.t + row.delay,
    ...unpackFlags(row.flags),
  };
}

function toBucket(row: BucketRow): ClimateBucket {
  return {
    index: row.bucket,
    temperature: toValue(row.tMin, row.tMax, row.tSum, row.tCount),
    humidity: toValue(row.hMin, row.hMax, row.hSum, row.hCount),
    readings: row.readings,
    bad: row.bad,
  };
}

function toValue(min: number | null, max: number | null, sum: number | null, count: number): BucketValue | null {
  if (min === null || max === null || sum === null || count === 0) return null;
  return { min: min / SCALE, max: max / SCALE, sum: sum / SCALE, count };
}
