// Is the service well, and if not, why; and its figures for a monitoring program.
import type { StatsFs } from 'node:fs';
import { statfs } from 'node:fs/promises';
import type { ServiceRuleId } from '../shared/alarms/alarm.ts';
import type { Health } from '../shared/api/health.ts';
import { type Finding, sayFinding, sayWholeFinding } from '../shared/finding.ts';
import { Problem } from '../shared/problem.ts';
import { DAY_MS, SECOND_MS } from '../shared/units.ts';
import type { SharedWords } from '../shared/words/shared-words.ts';
import type { Clock } from './clock.ts';
import type { BrokerVoice } from './ingest/broker.ts';
import type { Intake } from './ingest/intake.ts';
import type { Store } from './store/store.ts';

/** What has come in since the start. */
export interface Tally {
  readings: number;
  refused: number;
}

export interface HealthParts {
  readonly store: Store;
  readonly intake: Intake;
  readonly broker: Pick<BrokerVoice, 'trouble'>;
  readonly dataDir: string;
  readonly clock: Clock;
  readonly version: string;
  /** Time since the last round of the watch, ms. */
  readonly sinceRoundMs: () => number;
  /** Why the heartbeat does not arrive; null = it does, or none is set. */
  readonly heartbeatTrouble: () => Finding | null;
  /** Rules about the service itself whose condition stands. */
  readonly standing: () => readonly ServiceRuleId[];
  readonly readers: () => number;
  readonly tally: Readonly<Tally>;
}

/** Below this share of free room the disk is told to be nearly full. */
const LEAST_FREE_SHARE = 0.1;
const LONGEST_ROUND_MS = 60 * SECOND_MS;

/** Looks at every part, and says it in the words of whoever asks. `ready` is false while something keeps readings from being stored or judged. */
export async function checkHealth(parts: HealthParts, words: SharedWords): Promise<Health> {
  const { intake, broker, version } = parts;
  const say = words.health;
  const stored = await parts.store.checkHealth().then(
    () => null,
    (error: unknown) => problemOf(error, words),
  );
  // A folder that was taken away is not noticed by a database that is open in it: what it writes is gone with the process.
  const room = await statfs(parts.dataDir).catch((error: unknown) => say.folderGone(String(error)));
  const blocking = [
    typeof room === 'string' ? { code: 'store-unavailable', detail: room } : null,
    stored ?? sayProblem(intake.trouble(), words),
    sayTrouble('broker', broker.trouble(), words),
    parts.sinceRoundMs() > LONGEST_ROUND_MS ? { code: 'watch', detail: say.roundLate } : null,
  ].flatMap((one) => one ?? []);
  return {
    live: true,
    ready: blocking.length === 0,
    version,
    problems: [
      ...blocking,
      ...(typeof room === 'string' ? [] : sayLittleRoom(room, words)),
      ...sayHeartbeat(parts.heartbeatTrouble(), words),
      ...parts.standing().flatMap((rule) => sayStanding(rule, words)),
    ],
  };
}

/** Figures in the Prometheus text format. */
export async function describeMetrics({
  store,
  intake,
  broker,
  clock,
  readers,
  version,
  tally,
}: HealthParts): Promise<string> {
  const alarms = await store.alarms.page({ limit: 500, state: 'active' });
  const nowMs = clock.nowMs();
  const notices = await store.notices.summary(nowMs - DAY_MS);
  const ageSeconds = notices.oldestMs === null ? 0 : Math.max(0, Math.round((nowMs - notices.oldestMs) / SECOND_MS));
  const lines: [string, string, number][] = [
    ['takewell_readings_admitted', 'Readings admitted since the start, repeats included', tally.readings],
    ['takewell_parts_refused', 'Messages or parts of them refused since the start', tally.refused],
    ['takewell_messages_waiting', 'Messages that wait for the store', intake.waiting()],
    ['takewell_broker_up', '1 while messages can come in', broker.trouble() === null ? 1 : 0],
    ['takewell_alarms_active', 'Alarms that are not back to normal', alarms.items.length],
    ['takewell_notices_waiting', 'Notices that wait to be told', notices.waiting],
    ['takewell_notices_oldest_seconds', 'Age of the oldest notice that waits', ageSeconds],
    ['takewell_notices_given_up', 'Notices of the last day that could not be told', notices.givenUp],
    ['takewell_stream_readers', 'Open event streams', readers()],
    ['takewell_memory_bytes', 'Memory of the process', process.memoryUsage.rss()],
  ];
  const gauges = lines.map(([name, help, value]) => `# HELP ${name} ${help}\n# TYPE ${name} gauge\n${name} ${value}\n`);
  return `${gauges.join('')}# TYPE takewell_info gauge\ntakewell_info{version="${version}"} 1\n`;
}

type HealthProblem = Health['problems'][number];

/** A warning: the site itself is well. */
function sayHeartbeat(trouble: Finding | null, words: SharedWords): HealthProblem[] {
  if (trouble === null) return [];
  return [{ code: 'heartbeat', detail: words.health.noHeartbeat(sayFinding(trouble, words)) }];
}

/** Broker and disk are told above, as they are at this instant; the rest by name only, since alarms may name people and batches. */
function sayStanding(rule: ServiceRuleId, { names, health }: SharedWords): HealthProblem[] {
  if (rule === 'broker-lost' || rule === 'disk-nearly-full') return [];
  return [{ code: rule, detail: health.seeAlarms(names.rules[rule]) }];
}

function sayTrouble(code: string, trouble: Finding | null, words: SharedWords): HealthProblem | null {
  return trouble === null ? null : { code, detail: sayWholeFinding(trouble, words) };
}

function sayProblem(problem: Problem | null, words: SharedWords): HealthProblem | null {
  return problem === null ? null : { code: problem.code, detail: problem.sayIn(words) };
}

function problemOf(error: unknown, words: SharedWords): HealthProblem | null {
  if (error instanceof Problem) return sayProblem(error, words);
  return { code: 'store-unavailable', detail: words.health.storeSilent(String(error)) };
}

function sayLittleRoom({ bavail, blocks }: StatsFs, { health }: SharedWords): HealthProblem[] {
  const share = blocks === 0 ? 1 : bavail / blocks;
  return share < LEAST_FREE_SHARE ? [{ code: 'disk', detail: health.littleRoom(Math.round(share * 100)) }] : [];
}
