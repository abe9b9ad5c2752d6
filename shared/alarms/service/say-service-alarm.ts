// Alarms of the service itself in words, in the language of who hears them.
import { type Finding, sayFinding } from '../../finding.ts';
import { saySpan } from '../../say-span.ts';
import { type Saying, sayPercent } from '../../saying.ts';
import { MINUTE_MS } from '../../units.ts';
import type { Alarm, ServiceRuleId } from '../alarm.ts';
import type { BatchPlace } from '../service-facts.ts';
import { LEAST_FREE_PERCENT } from './disk-nearly-full.ts';
import { sayOutage } from './say-outage.ts';

/** Of an alarm, what its words are made of. */
export type SaidServiceAlarm = Pick<Alarm, 'level' | 'value' | 'about' | 'service'>;

type Parts = readonly [what: string, howFar: string];
type Wording = (alarm: SaidServiceAlarm, saying: Saying, span: string) => Parts;

export const serviceShapes: Record<ServiceRuleId, string> = {
  'broker-lost': '✕',
  'disk-nearly-full': '▦',
  'clock-jumped': '◷',
  restarted: '↻',
  'delivery-failing': '✉',
  'nobody-on-duty': '◌',
  'nobody-reachable': '⊗',
};

/** What is so and how far, while it is so. */
export const serviceWordings: Record<ServiceRuleId, Wording> = {
  'broker-lost'({ service }, { words }, span) {
    const far = because(service?.trouble, words, span);
    const blind = service?.blind ?? [];
    return [words.service.noReadings, blind.length === 0 ? far : `${far}. ${words.service.blind(listPlaces(blind))}`];
  },
  'disk-nearly-full'({ level, value, service }, saying, span) {
    const { words } = saying;
    if (level === 2) return [words.service.diskFull, because(service?.trouble, words, span)];
    return [
      words.service.diskNearlyFull(sayPercent(value, saying)),
      words.alarms.limitFor(String(LEAST_FREE_PERCENT), span),
    ];
  },
  'clock-jumped'({ value }, saying) {
    const { service } = saying.words;
    const size = saySpan(Math.abs(value ?? 0) * MINUTE_MS, saying);
    return [(value ?? 0) < 0 ? service.clockBack(size) : service.clockForward(size), ''];
  },
  restarted({ service }, saying) {
    return [
      service?.outage === undefined ? saying.words.service.names.restarted : sayOutage(service.outage, saying),
      '',
    ];
  },
  'delivery-failing'({ about, service }, { words }, span) {
    const person = about?.question ?? words.service.somebody;
    return [words.service.notReached(person), because(service?.trouble, words, span)];
  },
  'nobody-on-duty'({ level, value }, { words }, span) {
    if (level === 2) return [words.service.nobodyOnDuty, words.service.forSpan(span)];
    return [words.service.nobodySoon(Math.max(0, Math.round(value ?? 0))), ''];
  },
  'nobody-reachable': (_, { words }, span) => [words.service.nobodyReached, words.service.noWayWorks(span)],
};

function because(trouble: Finding | undefined, words: Saying['words'], span: string): string {
  if (trouble === undefined) return words.service.forSpan(span);
  return words.service.forSpanBecause(span, sayFinding(trouble, words).replace(/\.$/, ''));
}

function listPlaces(places: readonly BatchPlace[]): string {
  return places.map(({ chamberName, batchCode }) => `${chamberName} (${batchCode})`).join(', ');
}
