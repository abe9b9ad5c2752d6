// The alarms of a replay as rows, one an occurrence. A replay has a crew that takes every alarm at once: so each return ends its row, and what
// comes later is a row of its own.
import { reduce } from '../alarms/reduce.ts';
import { chamberRules } from '../alarms/rules/index.ts';
import type { Rule, Scene } from '../alarms/rules/rule.ts';
import { type ChamberWatch, type Effect, emptyWatch, isCalm, keyOf, subjectIdOf } from '../alarms/watch-state.ts';
import type { Warning } from '../forecast/judge-warnings.ts';
import { utcText } from '../units.ts';
import { type ReplayedAlarm, rounded } from './replay-result.ts';

type AlarmChanged = Extract<Effect, { type: 'alarm-changed' }>;
type Alarm = AlarmChanged['alarm'];

interface Row {
  alarm: Alarm;
  returnedMs: number | null;
}

export class AlarmRows {
  readonly #rules: readonly Rule[];
  #watch: ChamberWatch;
  readonly #rows: Row[] = [];
  readonly #open = new Map<string, Row>();
  #isCalm = true;

  constructor(chamberId: string, rules: readonly Rule[] = chamberRules) {
    this.#watch = emptyWatch(chamberId);
    this.#rules = rules;
  }

  /** True when nothing stands and nothing is pending: the same scene a little later would change nothing. */
  get isCalm(): boolean {
    return this.#isCalm;
  }

  /** Judges one scene by every rule. */
  observe(scene: Scene): void {
    const { state, effects } = reduce(this.#watch, { type: 'observe', scene }, this.#rules);
    this.#watch = state;
    if (effects.length === 0) return;
    this.#isCalm = Object.values(state.entries).every(isCalm);
    for (const effect of effects) if (effect.type === 'alarm-changed') this.#take(effect);
  }

  /** All occurrences in the order in which they came. */
  alarms(): ReplayedAlarm[] {
    return this.#rows.map(({ alarm, returnedMs }) => ({
      rule: alarm.rule,
      priority: alarm.priority,
      occurredAt: utcText(alarm.occurredMs),
      returnedAt: returnedMs === null ? null : utcText(returnedMs),
      peak: alarm.peak === null ? null : rounded(alarm.peak),
    }));
  }

  /** The occurrences of the rule that looks ahead, to be judged. */
  warnings(): Warning[] {
    const ahead = this.#rows.filter(({ alarm }) => alarm.rule === 'heat-ahead');
    return ahead.map(({ alarm, returnedMs }) => ({ fromMs: alarm.occurredMs, toMs: returnedMs }));
  }

  #take({ alarm, atMs }: AlarmChanged): void {
    const key = keyOf(alarm.rule, subjectIdOf(alarm));
    const row = this.#open.get(key) ?? this.#start(key, alarm);
    row.alarm = alarm;
    if (alarm.level === 0) {
      row.returnedMs = atMs;
      this.#open.delete(key);
    }
    if (alarm.state !== 'unacknowledged') return;
    this.#watch = reduce(this.#watch, { type: 'acknowledge', alarmId: alarm.id, person: 'replay', nowMs: atMs }).state;
  }

  #start(key: string, alarm: Alarm): Row {
    const row: Row = { alarm, returnedMs: null };
    this.#rows.push(row);
    this.#open.set(key, row);
    return row;
  }
}
