// A gap in the watch in words: how long nobody watched, what the chambers did meanwhile, and what is not known of it.
import { saySpan } from '../../say-span.ts';
import { type Saying, sayPercent, sayTemperatureLimit } from '../../saying.ts';
import { MINUTE_MS } from '../../units.ts';
import type { OutageClimate, OutageFacts } from '../service-facts.ts';

/** Such as "Back after 47 min; Chamber 2 was above 28 °C for 31 of them". */
export function sayOutage({ cause, fromMs, toMs, chambers, inForce }: OutageFacts, saying: Saying): string {
  const { service } = saying.words;
  const span = saySpan(toMs - fromMs, saying);
  const told = chambers.flatMap((one) => sayClimate(one, (toMs - fromMs) / MINUTE_MS, saying));
  const standing = inForce.map(({ chamberName, rule }) => `${chamberName} (${saying.words.names.rules[rule]})`);
  return [
    cause === 'broker' ? service.readingsBack(span) : service.back(span),
    ...told,
    ...(chambers.length > 0 && told.length === 0 ? [service.allWell] : []),
    ...(standing.length === 0 ? [] : [service.stillInAlarm(standing.join(', '))]),
  ].join('; ');
}

function sayClimate(one: OutageClimate, wholeMinutes: number, saying: Saying): string[] {
  const { service } = saying.words;
  const part = (minutes: number) => sayPart(minutes, wholeMinutes, saying);
  const high =
    one.high === null ? service.itsLimit : `${sayTemperatureLimit(one.high, saying)} ${saying.temperatureUnit}`;
  const low = one.low === null ? service.itsLimit : sayPercent(one.low, saying);
  const known = [
    ...(one.minutesHot < 1 ? [] : [service.above(high, part(one.minutesHot))]),
    ...(one.minutesDry < 1 ? [] : [service.below(low, part(one.minutesDry))]),
  ];
  return [
    ...(known.length === 0 ? [] : [service.was(one.chamberName, known.reduce(service.both))]),
    ...(one.minutesUnknown < 1 ? [] : [service.unknown(one.chamberName, part(one.minutesUnknown))]),
  ];
}

/** As part of the whole while that is said in minutes. */
function sayPart(minutes: number, wholeMinutes: number, saying: Saying): string {
  return wholeMinutes < 120 ? saying.words.service.ofThem(Math.round(minutes)) : saySpan(minutes * MINUTE_MS, saying);
}
