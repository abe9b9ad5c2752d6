// Keeps what is shown up to date through GET /api/v1/stream. Events are hints: after a lost connection everything is asked anew.
import { signal } from '@preact/signals';
import type { AlarmView } from '../shared/api/alarms.ts';
import type { StreamEvent } from '../shared/api/stream.ts';
import { MINUTE_MS, SECOND_MS } from '../shared/units.ts';
import { alarmSentence } from './alarm-sentence.ts';
import { announce } from './announce.ts';
import { ApiProblem } from './api.ts';
import { calls } from './calls.ts';
import { chamberSignal, putAlarm, putAllChambers, putChamber } from './chamber-store.ts';
import { nowMs, takeServerTime } from './clock.ts';
import { paced } from './paced.ts';
import { words } from './strings.ts';

export type Connection = 'connecting' | 'live' | 'lost';

export const connection = signal<Connection>('connecting');
/** When the service was last heard, ms by its clock; null = never. */
export const heardMs = signal<number | null>(null);
/** Counts up whenever a page that holds a list of its own should ask for it again. */
export const changes = { all: signal(0), alarms: signal(0), batches: signal(0), probes: signal(0) };
export const loadProblem = signal<ApiProblem | undefined>(undefined);

const reopenMs = 5 * SECOND_MS;
const probesMs = 5 * SECOND_MS;
let hasBeenLive = false;
let source: EventSource | undefined;
let reopening: ReturnType<typeof setTimeout> | undefined;

function heard(): void {
  heardMs.value = nowMs.peek();
}

let loading: Promise<void> | undefined;

/** Asks for every chamber; who asks while it is under way waits for the same answer. */
export function loadEverything(): Promise<void> {
  loading ??= askForEverything().finally(() => {
    loading = undefined;
  });
  return loading;
}

/** An answer kept by the offline shell counts as old from the time it was kept. */
async function askForEverything(): Promise<void> {
  try {
    const chambers = await calls.chambers();
    putAllChambers(chambers.body.items);
    loadProblem.value = undefined;
    if (chambers.keptAt === null) heard();
    else heardMs.value = Date.parse(chambers.keptAt);
  } catch (problem) {
    if (!(problem instanceof ApiProblem)) throw problem;
    loadProblem.value = problem;
  }
}

async function reloadChamber(id: string): Promise<void> {
  try {
    putChamber(await calls.chamber(id));
  } catch (problem) {
    if (!(problem instanceof ApiProblem)) throw problem;
    if (problem.status === 404) await loadEverything();
  }
}

/** Each of a hundred probes may speak every few seconds; the page that lists them asks once for all of them. */
const hintProbes = paced(() => {
  changes.probes.value++;
}, probesMs);

function isStreamEvent(value: unknown): value is StreamEvent {
  return typeof value === 'object' && value !== null && 'event' in value;
}

function takeHello(at: string): void {
  takeServerTime(at);
  const isAgain = hasBeenLive;
  hasBeenLive = true;
  connection.value = 'live';
  void loadEverything();
  if (!isAgain) return;
  changes.all.value++;
  announce(words.live.back, 'polite');
}

function takeClimate({ chamberId, climate, limits }: Extract<StreamEvent, { event: 'climate' }>): void {
  const target = chamberSignal(chamberId);
  if (target.value !== undefined) target.value = { ...target.value, climate, limits };
}

function takeAlarm(alarm: AlarmView): void {
  const isNew = putAlarm(alarm);
  changes.alarms.value++;
  if (isNew && alarm.state === 'unacknowledged')
    announce(words.alarms.newAlarm(alarm.chamberName, alarmSentence(alarm)), 'assertive');
  if (alarm.state === 'normal') announce(words.alarms.over(alarm.chamberName), 'polite');
}

/** Puts one event of the stream into what is shown. */
export function takeEvent(event: StreamEvent): void {
  heard();
  switch (event.event) {
    case 'hello':
      takeHello(event.at);
      break;
    case 'climate':
      takeClimate(event);
      break;
    case 'alarm':
      takeAlarm(event.alarm);
      break;
    case 'batch':
      changes.batches.value++;
      void reloadChamber(event.chamberId);
      break;
    case 'probe':
      hintProbes();
  }
}

function takeMessage(message: MessageEvent<string>): void {
  const parsed: unknown = JSON.parse(message.data);
  if (isStreamEvent(parsed)) takeEvent(parsed);
}

function lose(): void {
  if (connection.peek() !== 'lost') connection.value = 'lost';
  // The browser tries again by itself unless the answer was not a stream at all.
  if (source?.readyState !== EventSource.CLOSED) return;
  clearTimeout(reopening);
  reopening = setTimeout(openStream, reopenMs);
}

function openStream(): void {
  source?.close();
  source = new EventSource('/api/v1/stream');
  for (const name of ['hello', 'climate', 'alarm', 'batch', 'probe'] as const)
    source.addEventListener(name, takeMessage);
  source.addEventListener('error', lose);
}

/** Starts listening; a round of everything each minute catches what an event did not say. Returns how to stop. */
export function startLive(): () => void {
  openStream();
  void loadEverything();
  const round = setInterval(() => {
    if (document.visibilityState === 'visible') void loadEverything();
  }, MINUTE_MS);
  const onShow = () => {
    if (document.visibilityState === 'visible') void loadEverything();
  };
  document.addEventListener('visibilitychange', onShow);
  return () => {
    clearInterval(round);
    clearTimeout(reopening);
    document.removeEventListener('visibilitychange', onShow);
    source?.close();
  };
}
