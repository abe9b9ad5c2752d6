// One judgement taken into one watch entry: the debounced level moves the alarm through its life cycle.
import type { Alarm, AlarmState, Level } from './alarm.ts';
import { debounce, sameMemory, standingLevel } from './debounce.ts';
import { type LifeCycleEvent, nextState } from './life-cycle.ts';
import type { Judgement, Rule, Scene } from './rules/rule.ts';
import type { AlarmChange, Effect, WatchEntry } from './watch-state.ts';

interface Outcome {
  /** The same object when nothing changed. */
  readonly entry: WatchEntry;
  readonly effects: readonly Effect[];
}

export function observeEntry(entry: WatchEntry, rule: Rule, judgement: Judgement, scene: Scene): Outcome {
  const memory = debounce(entry.memory, judgement.level, scene.nowMs, rule);
  const before = standingLevel(entry.memory);
  const level = standingLevel(memory);
  const alarm = entry.alarm ?? (level > 0 ? newAlarm(entry, rule, level, judgement, scene) : null);
  if (alarm === null) return sameMemory(entry.memory, memory) ? { entry, effects: [] } : quiet({ ...entry, memory });
  const moved = moveAlarm(alarm, rule, { before, level, judgement, nowMs: scene.nowMs, isNew: entry.alarm === null });
  if (moved.change === null && moved.alarm === alarm && sameMemory(entry.memory, memory)) return { entry, effects: [] };
  const next = { ...entry, memory, alarm: moved.alarm.state === 'normal' ? null : moved.alarm };
  return moved.change === null ? quiet(next) : { entry: next, effects: [effectOf(moved, alarm.state, scene.nowMs)] };
}

function quiet(entry: WatchEntry): Outcome {
  return { entry, effects: [] };
}

interface Move {
  readonly before: Level;
  readonly level: Level;
  readonly judgement: Judgement;
  readonly nowMs: number;
  readonly isNew: boolean;
}

interface Moved {
  readonly alarm: Alarm;
  readonly change: AlarmChange | null;
}

function moveAlarm(alarm: Alarm, rule: Rule, move: Move): Moved {
  const peaked = takePeak(alarm, rule, move);
  const step = lifeCycleStep(move);
  if (step === null) return { alarm: peaked, change: peaked === alarm ? null : 'peaked' };
  const state = step.event === null ? alarm.state : nextState(alarm.state, step.event, move.level > 0);
  const priority =
    move.level > 0 ? higher(alarm.priority, rule.priority[move.level - 1 === 1 ? 1 : 0]) : alarm.priority;
  const returnedMs = step.event === 'clear' ? move.nowMs : step.event === 'occur' ? null : alarm.returnedMs;
  const limit = move.level > 0 ? move.judgement.limit : alarm.limit;
  // Worse than what somebody acknowledged, or back again: nobody has acknowledged this.
  const isAnew = step.event === 'rise' || step.event === 'occur';
  const taken = isAnew ? { acknowledgedMs: null, acknowledgedBy: null } : {};
  return { alarm: { ...peaked, ...taken, state, priority, returnedMs, limit, level: move.level }, change: step.change };
}

function lifeCycleStep({ before, level, isNew }: Move): { event: LifeCycleEvent | null; change: AlarmChange } | null {
  if (isNew) return { event: 'occur', change: 'occurred' };
  if (level === before) return null;
  if (before === 0) return { event: 'occur', change: 'occurred-again' };
  if (level === 0) return { event: 'clear', change: 'returned' };
  return level > before ? { event: 'rise', change: 'escalated' } : { event: null, change: 'eased' };
}

function takePeak(alarm: Alarm, rule: Rule, { judgement, level, nowMs }: Move): Alarm {
  const { value } = judgement;
  if (value === null || level === 0 || judgement.level === 0) return alarm;
  if (alarm.peak !== null && rule.worse * (value - alarm.peak) <= 0) return alarm;
  return { ...alarm, value, peak: value, peakMs: nowMs };
}

function newAlarm(entry: WatchEntry, rule: Rule, level: Level, judgement: Judgement, scene: Scene): Alarm {
  const sinceMs = judgement.sinceMs ?? entry.memory.turningSinceMs[0] ?? entry.memory.turningSinceMs[1] ?? scene.nowMs;
  const subject = entry.probeId === null ? '' : `.${entry.probeId}`;
  return {
    // Made from what it is, not from chance: the same occurrence decided twice has the same id and is stored once.
    id: `${scene.chamberId}.${rule.id}${subject}.${scene.nowMs.toString(36)}`,
    chamberId: scene.chamberId,
    batchId: scene.batchId,
    rule: rule.id,
    probeId: entry.probeId,
    state: 'normal',
    level,
    priority: rule.priority[level === 2 ? 1 : 0],
    sinceMs: Math.min(sinceMs, scene.nowMs),
    occurredMs: scene.nowMs,
    limit: judgement.limit,
    value: judgement.value,
    peak: null,
    peakMs: null,
    acknowledgedMs: null,
    acknowledgedBy: null,
    returnedMs: null,
    shelvedUntilMs: null,
    shelvedReason: null,
  };
}

const order = ['low', 'medium', 'high', 'critical'] as const;

function higher(a: Alarm['priority'], b: Alarm['priority']): Alarm['priority'] {
  return order.indexOf(a) >= order.indexOf(b) ? a : b;
}

function effectOf(moved: Moved, from: AlarmState, atMs: number): Effect {
  return {
    type: 'alarm-changed',
    change: moved.change ?? 'peaked',
    atMs,
    from,
    alarm: moved.alarm,
    person: null,
    note: '',
  };
}
