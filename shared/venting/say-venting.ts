// What to do with the gap next, in words: a proposal, or why there is none. Pure.
import { sayShort } from '../saying.ts';
import type { SharedWords } from '../words/shared-words.ts';
import { LEAST_READINGS } from './fit-rate.ts';
import type { VentProposal } from './propose-vent.ts';
import type { LimpAct, NoOpening } from './why-not.ts';

type OfProposal = Pick<
  VentProposal,
  'gapPercent' | 'fromPercent' | 'expectedHumidity' | 'plusMinus' | 'settlesInMinutes' | 'shortBy'
>;

/** "Open to 20 %: it should settle at 82 ± 3 %RH in about 25 min." and why it is no more, where it does not reach the step. */
export function sayProposal(proposal: OfProposal, { venting: say }: SharedWords): string {
  const { gapPercent, fromPercent, expectedHumidity, plusMinus, settlesInMinutes, shortBy } = proposal;
  const settles = say.settles(whole(expectedHumidity), String(Math.ceil(plusMinus)), Math.ceil(settlesInMinutes));
  const act = gapPercent > fromPercent ? say.open(gapPercent, settles) : say.close(gapPercent, settles);
  return shortBy === null ? act : `${act} ${say.partOfTheWay[shortBy]}`;
}

/** Why there is none, and what to do about it. */
export function sayNoOpening(no: NoOpening, words: SharedWords): string {
  const say = words.venting;
  switch (no.why) {
    case 'too-few-readings':
      return say.readings(no.readings, LEAST_READINGS);
    case 'uncertain':
      return say.uncertain(no.percent);
    case 'poor-fit':
      return say.poorFit(no.percent);
    case 'too-few-gaps':
      return say.tooFewGaps(no.gapPercent);
    case 'limp':
      return say.limp(no.acts.map((act) => sayAct(act, no.backToPercent, words)).join(', '));
    case 'no-air-now':
      return say.noAirNow[no.place];
    case 'still-settling':
      return say.stillSettling(no.minutes);
    case 'does-not-match':
      return say.doesNotMatch(whole(no.expected), whole(no.measured));
    case 'house-too-wet':
      return say.houseTooWet(whole(no.humidity));
    case 'house-too-dry':
      return say.houseTooDry(no.gapPercent, whole(no.humidity));
    case 'no-gap-left':
      return no.isTooDry ? say.noNarrowerGap : say.noWiderGap;
    case 'not-sure-enough':
      return no.isTooDry ? say.noSureNarrowerGap : say.noSureWiderGap;
    case 'dries-too-fast':
      return say.driesTooFast(sayShort(no.gracePerHour, { words }));
    case 'not-yet':
      return sayNotYet(no, words);
    default:
      return say.fixed[no.why];
  }
}

function sayNotYet({ isFarOff, unknown }: NoOpening & { readonly why: 'not-yet' }, words: SharedWords): string {
  const say = words.venting;
  if (isFarOff) return say.farOff;
  return unknown === null ? say.notYet : `${say.notYet} ${say.exchangeUnknown(sayNoOpening(unknown, words))}`;
}

function sayAct(act: LimpAct, backToPercent: number, { venting: { limpActs } }: SharedWords): string {
  if (act !== 'close') return limpActs[act];
  return backToPercent === 0 ? limpActs.closed : limpActs.closeTo(backToPercent);
}

function whole(value: number): string {
  return value.toFixed(0);
}
