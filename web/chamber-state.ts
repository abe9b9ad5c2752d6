// What a chamber needs from the people who look at it, as one state with its shape, sentence and rank. Pure.

import type { AlarmView } from '../shared/api/alarms.ts';
import type { ChamberView } from '../shared/api/chambers.ts';
import { MINUTE_MS } from '../shared/units.ts';
import { isOld, spanWords } from './age.ts';
import { alarmRank, isOpen, isSpeaking, worstAlarm } from './alarm-order.ts';
import { alarmAdvice, alarmSentence } from './alarm-sentence.ts';
import { beyondPlan } from './beyond-plan.ts';
import { planText } from './plan-text.ts';
import { humidityLimitText, temperatureLimitText, withHumidity, withTemperature } from './quantities.ts';
import { words } from './strings.ts';
import { dayAndTime } from './when.ts';

/** A check that is due, missed or still to come. */
export type NextDue = NonNullable<ChamberView['nextDue']>;

export type Shape =
  | 'hot'
  | 'warming'
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
  /** The check that the sentence asks for. */
  readonly asked: NextDue | null;
}

const ruleShapes: Record<AlarmView['rule'], Shape> = {
  heat: 'hot',
  cold: 'cold',
  dry: 'dry',
  wet: 'wet',
  'silent-probe': 'silent',
  'silent-chamber': 'gone',
  'heat-ahead': 'warming',
  vpd: 'dry',
  'suspect-probe': 'silent',
  'check-overdue': 'overdue',
  'check-failed': 'overdue',
  'plan-late': 'wet',
  'broker-lost': 'gone',
  'disk-nearly-full': 'overdue',
  'clock-jumped': 'old',
  restarted: 'old',
  'delivery-failing': 'silent',
  'nobody-on-duty': 'due',
  'nobody-reachable': 'silent',
};

/** The shape that goes with an alarm of this rule. */
export function shapeOfRule(rule: AlarmView['rule']): Shape {
  return ruleShapes[rule];
}

/** How old this climate may be before it no longer looks fresh, ms. */
export function silenceMsOf(climate: ChamberView['climate']): number {
  return climate.silenceMinutes * MINUTE_MS;
}

function fromAlarm(alarm: AlarmView): ChamberState {
  const urgency = isOpen(alarm) ? 'alarm' : 'soon';
  return {
    shape: shapeOfRule(alarm.rule),
    sentence: alarmSentence(alarm),
    advice: alarmAdvice(alarm),
    urgency,
    rank: alarmRank(alarm),
    alarm,
    asked: null,
  };
}

const plain = (shape: Shape, sentence: string, advice: string, urgency: Urgency, rank: number): ChamberState => ({
  ...{ shape, sentence, advice, urgency, rank },
  ...{ alarm: null, asked: null },
});

/** A check that is due or was missed; null when it is still to come. */
function askFor(due: NextDue, nowMs: number, zone: string): ChamberState | null {
  if (due.status === 'to-come') return null;
  const sentence = words.state[due.status](planText(due.question), dayAndTime(Date.parse(due.dueAt), nowMs, zone));
  return { ...plain(due.status, sentence, '', 'soon', due.status === 'overdue' ? 14 : 16), asked: due };
}

/** As urgent as an alarm of high priority that nobody has: so it will be told when it lasts. */
const BLIND_RANK = 1.5;

function unknownClimate(chamber: ChamberView, nowMs: number, zone: string): ChamberState {
  const { at, heardAt } = chamber.climate;
  // While the tent is being filled people are in it; from closing on nobody would notice.
  const urgency = chamber.batch?.closedAt === null ? 'soon' : 'alarm';
  if (chamber.climate.canopyProbes === 0)
    return plain('old', words.state.noProbe, words.state.noProbeAdvice, urgency, BLIND_RANK);
  const hasOldValue = at !== null && chamber.climate.temperature !== null;
  const sentence =
    at !== null && !hasOldValue
      ? words.state.noClimate(dayAndTime(Date.parse(at), nowMs, zone))
      : lastHeardWords(hasOldValue ? at : heardAt, nowMs);
  return plain('old', sentence, words.state.noClimateAdvice, urgency, BLIND_RANK);
}

function lastHeardWords(at: string | null, nowMs: number): string {
  return at === null ? words.state.neverHeard : words.state.old(spanWords(nowMs - Date.parse(at)));
}

interface Watched {
  readonly rule: 'heat' | 'cold' | 'dry' | 'wet';
  readonly sentence: string;
}

const watchRules = { hot: 'heat', cold: 'cold', dry: 'dry', wet: 'wet' } as const;

/** A value outside the limits that is not an alarm (yet), and the rule that watches it; null when all is inside. */
function watchedValue(chamber: ChamberView): Watched | null {
  const { climate, limits } = chamber;
  if (limits === null) return null;
  const { temperature, humidity } = limits;
  const { state } = words;
  const sentences = {
    hot: () => state.watchHot(withTemperature(climate.hottest), temperatureLimitText(temperature.high)),
    cold: () => state.watchCold(withTemperature(climate.coldest), temperatureLimitText(temperature.low)),
    dry: () => state.watchDry(withHumidity(climate.driest), humidityLimitText(humidity.low)),
    wet: () => state.watchWet(withHumidity(climate.humidity), humidityLimitText(humidity.high)),
  };
  const beyond = beyondPlan(chamber);
  const worst = beyond.temperature ?? beyond.humidity;
  return worst === null ? null : { rule: watchRules[worst], sentence: sentences[worst]() };
}

/** What comes of a value outside the limits. Disturbed air quiets every rule of the air but heat. */
function watchAdvice({ alarms, outOfService, suppression }: ChamberView, { rule }: Watched, nowMs: number): string {
  const isDisturbed = suppression !== null && Date.parse(suppression.until) > nowMs;
  if (outOfService.some((taken) => taken.rule === rule) || (isDisturbed && rule !== 'heat'))
    return words.state.watchQuiet;
  return alarms.some(({ state }) => state === 'shelved') ? words.state.watchShelved : words.state.watchAdvice;
}

function isUnknown({ climate }: ChamberView, nowMs: number): boolean {
  return isOld(climate.at, nowMs, silenceMsOf(climate)) || climate.temperature === null;
}

function withBatch(chamber: ChamberView, nowMs: number, zone: string): ChamberState {
  const { nextDue } = chamber;
  if (isUnknown(chamber, nowMs)) return unknownClimate(chamber, nowMs, zone);
  const asked = nextDue === null ? null : askFor(nextDue, nowMs, zone);
  if (asked !== null) return asked;
  const beyond = watchedValue(chamber);
  if (beyond !== null) return plain('watch', beyond.sentence, watchAdvice(chamber, beyond, nowMs), 'soon', 18);
  const { endsAt, onHold, stage } = chamber.batch ?? { endsAt: null, onHold: false, stage: null };
  if (endsAt !== null && Date.parse(endsAt) <= nowMs) return plain('due', words.state.over, '', 'soon', 20);
  if (onHold) return plain('hold', words.state.onHold, '', 'fine', 30);
  if (stage === 'loading') return plain('order', words.state.loading, '', 'fine', 31);
  return plain('order', words.state.inOrder, '', 'fine', 32);
}

/** That the chamber is blind and no alarm says so yet or any more, as just after a silence began anew; null otherwise. */
function untoldBlindness(chamber: ChamberView, nowMs: number, zone: string): ChamberState | null {
  const isTold = chamber.alarms.some((alarm) => alarm.rule === 'silent-chamber' && isSpeaking(alarm));
  const isBlind = chamber.batch !== null && chamber.batch.closedAt !== null && isUnknown(chamber, nowMs);
  return isBlind && !isTold ? unknownClimate(chamber, nowMs, zone) : null;
}

/** The state of a chamber now, the worst that is true. A value older than its silence is never called in order. */
export function chamberState(chamber: ChamberView, nowMs: number, zone: string): ChamberState {
  const worst = worstAlarm(chamber);
  const blind = worst === undefined ? null : untoldBlindness(chamber, nowMs, zone);
  if (worst !== undefined) return blind !== null && blind.rank < alarmRank(worst) ? blind : fromAlarm(worst);
  if (chamber.batch !== null) return withBatch(chamber, nowMs, zone);
  return plain('empty', words.state.empty, words.state.emptyHint, 'fine', 40);
}
