// `npm run bench`: every benchmark, each as a ratio to its floor in the same run, printed and written to bench-results.json. It asserts nothing.
import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { measureAlertLatency } from './alert-latency.ts';
import { type BenchLine, sayLine } from './bench-line.ts';
import { measureChart } from './chart.ts';
import { measureIngest } from './ingest.ts';
import { measureOverview } from './overview.ts';
import { measureRecord } from './record-csv.ts';
import { measureReplay } from './replay.ts';
import { measureScreens } from './screens.ts';

/** One entry a topic; each gives its lines as they are measured. */
const benchmarks: readonly (() => AsyncIterable<BenchLine>)[] = [
  measureIngest,
  measureAlertLatency,
  measureReplay,
  measureRecord,
  measureChart,
  measureOverview,
  measureScreens,
];

const lines: BenchLine[] = [];
for (const measure of benchmarks) {
  for await (const line of measure()) {
    lines.push(line);
    process.stdout.write(`${sayLine(line)}\n`);
  }
}
const machine = { node: process.version, cpu: cpus()[0]?.model ?? 'unknown', cores: cpus().length };
const results = { measuredAt: new Date().toISOString(), machine, lines };
writeFileSync('bench-results.json', `${JSON.stringify(results, null, 2)}\n`);
