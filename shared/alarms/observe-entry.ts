// One judgement taken into one watch entry: the debounced level moves the alarm through its life cycle.
import type { Alarm, AlarmState, Level, Priority } from './alarm.ts';
import { askNow } from './ask-anew.ts';
import { debounce, sameMemory, standingLevel } from './debounce.ts';
import { type LifeCycleEvent, nextState } from './life-cycle.ts';
import type { Judgement, PlaceScene, RuleTraits } from './rules/rule.ts';
import { type AlarmChange, type Effect, isCalm, subjectIdOf, type WatchEntry, type Worst } from './watch-state.ts';
import { peakOf, worst, worstSeen } from './worst.ts';

interface Outcome {
  /** The same object when nothing changed. */
  readonly entry: WatchEntry;
  readonly effects: readonly Effect[];
}

/** `isQuiet`: the rule is suppressed or out of service, so that no occurrence begins; one that is set aside goes on being judged. */
export function observeEntry(
  entry: WatchEntry,
  rule: RuleTraits,
  judgement: Judgement,
  scene: PlaceScene,
  isQuiet: boolean,
): Outcome {
  if (judgement.level === 0 && isCalm(entry)) return { entry, effects: [] };
  const delays = isQuiet && entry.alarm === null ? { ...rule, onDelayMs: forEver } : rule;
  const memory = debounce(entry.memory, judgement.level, scene.nowMs, delays);
  const level = standingLevel(memory);
  const pending = level > 0 ? null : pendingWorst(entry, rule, judgement, scene.nowMs);
  const alarm = entry.alarm ?? (level > 0 ? newAlarm(entry, rule, level, judgement, scene) : null);
  const before = entry.alarm === null ? null : standingLevel(entry.memory);
  const moved = alarm === null ? null : moveAlarm(alarm, rule, { entry, before, level, judgement, nowMs: scene.nowMs });
  if (moved === null) return quiet(entry, { ...entry, memory, pending });
  const next = { ...entry, memory, pending, alarm: moved.alarm.state === 'normal' ? null : moved.alarm };
  return { entry: next, effects: [effectOf(moved, alarm?.state ?? 'normal', scene.nowMs)] };
}

/** What is seen meanwhile counts for the delay, so that it is told with its true beginning once the rule serves again. */
const forEver = [Infinity, Infinity] as const;

function quiet(entry: WatchEntry, next: WatchEntry): Outcome {
  const isSame = sameMemory(entry.memory, next.memory) && entry.pending === next.pending;
  return { entry: isSame ? entry : next, effects: [] };
}

/** What an on-delay that runs has seen at worst; forgotten when the condition goes away in time. */
function pendingWorst(entry: WatchEntry, rule: RuleTraits, judgement: Judgement, nowMs: number): Worst | null {
  return judgement.level === 0 ? null : worst(rule, [entry.pending, worstSeen(judgement, nowMs)]);
}

interface Move {
  readonly entry: WatchEntry;
  /** The level that stood; null = the alarm is new. */
  readonly before: Level | null;
  readonly level: Level;
  readonly judgement: Judgement;
  readonly nowMs: number;
}

interface Moved {
  readonly alarm: Alarm;
  readonly change: AlarmChange;
}

/** The alarm after a judgement; null when nothing about it changed. */
function moveAlarm(alarm: Alarm, rule: RuleTraits, move: Move): Moved | null {
  const { entry, level, judgement, nowMs } = move;
  const step = lifeCycleStep(move);
  const seen = level > 0 ? worst(rule, [peakOf(alarm), entry.pending, worstSeen(judgement, nowMs)]) : peakOf(alarm);
  const isWorse = seen !== null && seen.value !== alarm.peak;
  if (step === null && !isWorse) return null;
  const measured = {
    value: judgement.value ?? alarm.value,
    ...(isWorse && { peak: seen.value, peakMs: seen.atMs }),
    ...(level > 0 && { limit: judgement.limits[level - 1] ?? alarm.limit }),
    ...(level > 0 && judgement.expected !== undefined && { expected: judgement.expected() }),
    ...(level > 0 && judgement.service !== undefined && { service: judgement.service }),
  };
  if (step === null) return { alarm: { ...alarm, ...measured }, change: 'peaked' };
  const state = step.event === null ? alarm.state : nextState(alarm.state, step.event, level > 0);
  return { alarm: { ...alarm, ...measured, ...stepped(alarm, rule, step, move), state, level }, change: step.change };
}

interface Step {
  /** null = the state stays. */
  readonly event: LifeCycleEvent | null;
  readonly change: AlarmChange;
}

function lifeCycleStep({ before, level }: Move): Step | null {
  if (before === null) return { event: 'occur', change: 'occurred' };
  if (level === before) return null;
  if (before === 0) return { event: 'occur', change: 'occurred-again' };
  if (level === 0) return { event: 'clear', change: 'returned' };
  return level > before ? { event: 'rise', change: 'escalated' } : { event: null, change: 'eased' };
}

/** What a step of the life cycle writes beside state and level. */
function stepped(
  alarm: Alarm,
  rule: RuleTraits,
  { event }: Step,
  { entry, level, judgement, nowMs }: Move,
): Partial<Alarm> {
  if (event === 'clear') return { returnedMs: nowMs };
  const priority = higher(alarm.priority, priorityAt(rule, level));
  // Worse than what somebody acknowledged, or back again: nobody has acknowledged this.
  const asking = event === null ? {} : askNow(nowMs, event === 'rise' ? 'escalated' : 'raised');
  const again = event === 'occur' ? { returnedMs: null, sinceMs: beganMs(entry, judgement, nowMs) } : {};
  return { priority, ...asking, ...again };
}

function newAlarm(entry: WatchEntry, rule: RuleTraits, level: Level, judgement: Judgement, scene: PlaceScene): Alarm {
  const subjectId = subjectIdOf(entry);
  const subject = subjectId === null ? '' : `.${subjectId}`;
  return {
    // Made from what it is, not from chance: the same occurrence decided twice has the same id and is stored once.
    id: `${scene.chamberId}.${rule.id}${subject}.${scene.nowMs.toString(36)}`,
    chamberId: scene.chamberId,
    batchId: scene.batchId,
    rule: rule.id,
    probeId: entry.probeId,
    ...(judgement.about !== undefined && { about: judgement.about }),
    state: 'normal',
    level,
    priority: priorityAt(rule, level),
    sinceMs: beganMs(entry, judgement, scene.nowMs),
    occurredMs: scene.nowMs,
    limit: null,
    value: null,
    peak: null,
    peakMs: null,
    acknowledgedMs: null,
    acknowledgedBy: null,
    returnedMs: null,
    shelvedUntilMs: null,
    shelvedReason: null,
  };
}

function beganMs({ memory }: WatchEntry, judgement: Judgement, nowMs: number): number {
  const [first, second] = memory.turningSinceMs;
  return Math.min(judgement.sinceMs ?? first ?? second ?? nowMs, nowMs);
}

function priorityAt(rule: RuleTraits, level: Level): Priority {
  return rule.priority[level === 2 ? 1 : 0];
}

const order = ['low', 'medium', 'high', 'critical'] as const;

function higher(a: Priority, b: Priority): Priority {
  return order.indexOf(a) >= order.indexOf(b) ? a : b;
}

function effectOf({ alarm, change }: Moved, from: AlarmState, atMs: number): Effect {
  return { type: 'alarm-changed', change, atMs, from, alarm, person: null, note: '' };
}
