// What a chamber needs from the people who look at it, as one state with its shape, sentence and rank. Pure.
import type { AlarmView } from '../shared/api/alarms.ts';
import type { ChamberView } from '../shared/api/chambers.ts';
import { isOld, spanWords } from './age.ts';
import { limitText, withCelsius, withHumidity } from './quantities.ts';
import { words } from './strings.ts';
import { dayAndTime } from './when.ts';

export type Shape =
  | 'hot'
  | 'cold'
  | 'dry'
  | 'wet'
  | 'silent'
  | 'gone'
  | 'old'
  | 'overdue'
  | 'due'
  | 'watch'
  | 'hold'
  | 'order'
  | 'empty';

/** `alarm` needs someone now, `soon` is due or being dealt with, `fine` needs nothing. */
export type Urgency = 'alarm' | 'soon' | 'fine';

export interface ChamberState {
  readonly shape: Shape;
  readonly sentence: string;
  readonly advice: string;
  readonly urgency: Urgency;
  /** Lower is worse. */
  readonly rank: number;
  readonly alarm: AlarmView | null;
}

const ruleShapes: Record<AlarmView['rule'], Shape> = {
  heat: 'hot',
  cold: 'cold',
  dry: 'dry',
  wet: 'wet',
  'silent-probe': 'silent',
  'silent-chamber': 'gone',
  vpd: 'dry',
  'suspect-probe': 'silent',
  'check-overdue': 'overdue',
  'check-failed': 'overdue',
  'plan-late': 'wet',
};

/** The shape that goes with an alarm of this rule. */
export function shapeOfRule(rule: AlarmView['rule']): Shape {
  return ruleShapes[rule];
}

/** True while somebody still has to acknowledge it. */
export function isOpen(alarm: AlarmView): boolean {
  return alarm.state === 'unacknowledged' || alarm.state === 'returned-unacknowledged';
}

/** True for alarms that were put aside on purpose. */
export function isQuiet(alarm: AlarmView): boolean {
  return alarm.state === 'shelved' || alarm.state === 'suppressed' || alarm.state === 'out-of-service';
}

const stateRank = { unacknowledged: 0, acknowledged: 8, 'returned-unacknowledged': 4 } as const;
const priorityRank = { critical: 0, high: 1, medium: 2, low: 3 } as const;

/** Worst first: what nobody has acknowledged before what somebody has, then by priority. */
export function alarmRank(alarm: AlarmView): number {
  const state = alarm.state in stateRank ? stateRank[alarm.state as keyof typeof stateRank] : 20;
  return state + priorityRank[alarm.priority];
}

/** The server's sentence without a shape at its beginning: the page draws its own. */
export function plainSentence(sentence: string): string {
  return sentence.replace(/^[▲▼△▽□■○●◇◆◐…‖?\s]+/u, '');
}

function fromAlarm(alarm: AlarmView): ChamberState {
  const urgency = isOpen(alarm) ? 'alarm' : 'soon';
  return {
    shape: shapeOfRule(alarm.rule),
    sentence: plainSentence(alarm.sentence),
    advice: alarm.advice,
    urgency,
    rank: alarmRank(alarm),
    alarm,
  };
}

const plain = (shape: Shape, sentence: string, advice: string, urgency: Urgency, rank: number): ChamberState => ({
  ...{ shape, sentence, advice, urgency, rank },
  alarm: null,
});

function unknownClimate(chamber: ChamberView, nowMs: number, zone: string): ChamberState {
  const { at } = chamber.climate;
  // While the tent is being filled people are in it; from closing on nobody would notice.
  const urgency = chamber.batch?.closedAt === null ? 'soon' : 'alarm';
  if (chamber.climate.canopyProbes === 0)
    return plain('old', words.state.noProbe, words.state.noProbeAdvice, urgency, 7);
  const sentence =
    at === null
      ? words.state.neverHeard
      : chamber.climate.temperature === null
        ? words.state.noClimate(dayAndTime(Date.parse(at), nowMs, zone))
        : words.state.old(spanWords(nowMs - Date.parse(at)));
  return plain('old', sentence, words.state.noClimateAdvice, urgency, 7);
}

/** A value outside the limits that is not an alarm (yet), as shape and sentence; null when all is inside. */
function beyondPlan(chamber: ChamberView): readonly [Shape, string] | null {
  const { climate, limits } = chamber;
  if (limits === null) return null;
  const { temperature, humidity } = limits;
  const coldest = climate.temperature;
  if (climate.hottest !== null && climate.hottest > temperature.high)
    return ['watch', words.state.watchHot(withCelsius(climate.hottest), limitText(temperature.high))];
  if (coldest !== null && coldest < temperature.low)
    return ['watch', words.state.watchCold(withCelsius(coldest), limitText(temperature.low))];
  if (climate.driest !== null && climate.driest < humidity.low)
    return ['watch', words.state.watchDry(withHumidity(climate.driest), limitText(humidity.low))];
  if (climate.humidity !== null && humidity.high < 100 && climate.humidity > humidity.high)
    return ['watch', words.state.watchWet(withHumidity(climate.humidity), limitText(humidity.high))];
  return null;
}

function withBatch(chamber: ChamberView, nowMs: number, zone: string, silenceMs: number): ChamberState {
  const due = chamber.nextDue;
  if (isOld(chamber.climate.at, nowMs, silenceMs) || chamber.climate.temperature === null)
    return unknownClimate(chamber, nowMs, zone);
  if (due?.status === 'overdue') return plain('overdue', words.state.overdue(due.question), '', 'soon', 14);
  if (due?.status === 'due') return plain('due', words.state.due(due.question), '', 'soon', 16);
  const beyond = beyondPlan(chamber);
  const advice = chamber.alarms.some(isQuiet) ? words.state.watchShelved : words.state.watchAdvice;
  if (beyond !== null) return plain(beyond[0], beyond[1], advice, 'soon', 18);
  const { endsAt, onHold, stage } = chamber.batch ?? { endsAt: null, onHold: false, stage: null };
  if (endsAt !== null && Date.parse(endsAt) <= nowMs) return plain('due', words.state.over, '', 'soon', 20);
  if (onHold) return plain('hold', words.state.onHold, '', 'fine', 30);
  if (stage === 'loading') return plain('order', words.state.loading, '', 'fine', 31);
  return plain('order', words.state.inOrder, '', 'fine', 32);
}

/** The alarm that speaks for a chamber; undefined when none does. */
export function worstAlarm(chamber: ChamberView): AlarmView | undefined {
  return chamber.alarms
    .filter((alarm) => alarm.state !== 'normal' && !isQuiet(alarm))
    .sort((one, other) => alarmRank(one) - alarmRank(other))[0];
}

/** The state of a chamber now. An alarm goes before all else; a value older than `silenceMs` is never called in order. */
export function chamberState(chamber: ChamberView, nowMs: number, zone: string, silenceMs: number): ChamberState {
  const worst = worstAlarm(chamber);
  const below = chamber.batch === null ? null : withBatch(chamber, nowMs, zone, silenceMs);
  if (worst !== undefined) return fromAlarm(worst);
  return below ?? plain('empty', words.state.empty, words.state.emptyHint, 'fine', 40);
}
