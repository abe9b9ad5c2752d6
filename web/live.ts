// Puts what the stream tells into what is shown. Events are hints: after a lost connection everything is asked anew, and only then is it called live.
import { signal } from '@preact/signals';
import type { AlarmView } from '../shared/api/alarms.ts';
import type { StreamEvent } from '../shared/api/stream.ts';
import { SECOND_MS } from '../shared/units.ts';
import { alarmSentence } from './alarm-sentence.ts';
import { announce } from './announce.ts';
import { ApiProblem } from './api.ts';
import { calls } from './calls.ts';
import { chamberSignal, putAlarm, putAllChambers, putChamber, putServiceAlarms } from './chamber-store.ts';
import { nowMs, takeServerTime } from './clock.ts';
import { paced } from './paced.ts';
import { words } from './strings.ts';

export type Connection = 'connecting' | 'live' | 'lost';

export const connection = signal<Connection>('connecting');
/** When the service was last heard, ms by its clock; null = never. */
export const heardMs = signal<number | null>(null);
/** Counts up whenever a page that holds a list of its own should ask for it again. */
export const changes = { all: signal(0), alarms: signal(0), batches: signal(0), probes: signal(0), reach: signal(0) };
export const loadProblem = signal<ApiProblem | undefined>(undefined);

const probesMs = 5 * SECOND_MS;
let hasBeenLive = false;

/** What is shown is as new as the service. Not while it is being caught up with: then it is older than what was just heard. */
function heard(): void {
  if (connection.peek() === 'live') heardMs.value = nowMs.peek();
}

let loading: Promise<void> | undefined;
let isKept = false;

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
    const { body, keptAt } = await calls.chambers();
    isKept = keptAt !== null;
    loadProblem.value = undefined;
    const asOfMs = keptAt === null ? nowMs.peek() : Date.parse(keptAt);
    // What is shown may have gone on by events after it was kept.
    if (isKept && asOfMs <= (heardMs.peek() ?? 0)) return;
    putAllChambers(body.items);
    // Not kept by the offline shell: of a service that is not reached nothing is known.
    if (keptAt === null) putServiceAlarms(await calls.serviceAlarms());
    heardMs.value = asOfMs;
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

let isCatchingUp = false;

/** Counts as live only when everything has been asked anew: what happened meanwhile is in no event. */
async function catchUp(): Promise<void> {
  // An answer that is under way may have been given before the connection came back.
  await loading;
  await loadEverything();
  if (loadProblem.peek() !== undefined || isKept) return;
  connection.value = 'live';
  const isAgain = hasBeenLive;
  hasBeenLive = true;
  if (!isAgain) return;
  changes.all.value++;
  announce(words.live.back, 'polite');
}

function startCatchingUp(): void {
  if (isCatchingUp) return;
  isCatchingUp = true;
  void catchUp().finally(() => {
    isCatchingUp = false;
  });
}

function takeHello(at: string): void {
  takeServerTime(at);
  startCatchingUp();
}

/** Also tries again to catch up, where the first try after a lost connection failed. */
function takePulse(at: string): void {
  takeServerTime(at);
  if (connection.peek() !== 'live') startCatchingUp();
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
    case 'pulse':
      takePulse(event.at);
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
    case 'reach':
      changes.reach.value++;
      break;
    case 'probe':
      hintProbes();
  }
}
