// The rules about the service itself: both sides of each limit, and the whole way of an alarm through the reducer.

import { describe, expect, it } from 'vitest';
import { type RuleId, SERVICE_ID } from '../../../../shared/alarms/alarm.ts';
import { reduceService } from '../../../../shared/alarms/reduce.ts';
import { sayAlarm } from '../../../../shared/alarms/say-alarm.ts';
import type { PersonReach, ReachNow, ServiceScene } from '../../../../shared/alarms/service/service-scene.ts';
import { type ChamberWatch, emptyWatch } from '../../../../shared/alarms/watch-state.ts';
import { finding } from '../../../../shared/finding.ts';
import { plainEnglish } from '../../../../shared/plain-english.ts';
import type { Saying } from '../../../../shared/saying.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS, SECOND_MS } from '../../../../shared/units.ts';
import { wordsOf } from '../../../../shared/words/words-of.ts';

const NOON_MS = Date.UTC(2026, 2, 1, 12);
const tent = { chamberId: 'c1', chamberName: 'Tent 1', batchCode: 'A-12' };
const calm: ServiceScene = {
  ...{ nowMs: NOON_MS, chamberId: SERVICE_ID, batchId: null, openBatches: [tent], brokerTrouble: null },
  ...{ disk: { freePercent: 50, storeTrouble: null }, clockJumpMs: null, outage: null, reach: null },
};

/** Looks every so often for so long; answers with the alarms at the end and every change as `rule change priority`. */
function watchFor(
  scene: Partial<ServiceScene>,
  forMs: number,
  before: ChamberWatch = emptyWatch(SERVICE_ID),
  fromMs = NOON_MS,
) {
  let state = before;
  const told: string[] = [];
  for (let nowMs = fromMs; nowMs <= fromMs + forMs; nowMs += 5 * SECOND_MS) {
    const step = reduceService(state, { type: 'observe', scene: { ...calm, ...scene, nowMs } });
    state = step.state;
    for (const effect of step.effects)
      if (effect.type === 'alarm-changed') told.push(`${effect.alarm.rule} ${effect.change} ${effect.alarm.priority}`);
  }
  const say = (rule: RuleId, atMs: number, saying: Saying = plainEnglish) => {
    const alarm = Object.values(state.entries).find((entry) => entry.rule === rule)?.alarm;
    return alarm ? sayAlarm(alarm, atMs, saying) : null;
  };
  return { state, told, say };
}

const person = (more: Partial<PersonReach> = {}): PersonReach => ({
  ...{ personId: 'p1', name: 'Ada', isOnDuty: false, ways: [{ channel: 'web-push', works: true, trouble: null }] },
  ...more,
});
const reach = (more: Partial<ReachNow> = {}): ReachNow => ({
  people: [person()],
  hasProgram: false,
  duty: null,
  ...more,
});

it.each([
  { scene: {}, forMs: HOUR_MS, told: [], why: 'all is well' },
  {
    scene: { brokerTrouble: finding('brokerLost', 'mqtt://b') },
    forMs: 119 * SECOND_MS,
    told: [],
    why: 'a broker may be restarted',
  },
  {
    scene: { brokerTrouble: finding('brokerLost', 'mqtt://b') },
    forMs: 2 * MINUTE_MS,
    told: ['broker-lost occurred critical'],
    why: 'tents are blind',
  },
  {
    scene: { brokerTrouble: finding('brokerLost', 'mqtt://b'), openBatches: [] },
    forMs: 2 * MINUTE_MS,
    told: ['broker-lost occurred medium'],
    why: 'nothing is in the tents',
  },
  { scene: { disk: { freePercent: 10, storeTrouble: null } }, forMs: HOUR_MS, told: [], why: 'a tenth is left' },
  {
    scene: { disk: { freePercent: 9.9, storeTrouble: null } },
    forMs: MINUTE_MS,
    told: ['disk-nearly-full occurred high'],
    why: 'less than a tenth is left',
  },
  {
    scene: { disk: { freePercent: 50, storeTrouble: finding('diskFull') } },
    forMs: 5 * SECOND_MS,
    told: [],
    why: 'a moment only',
  },
  {
    scene: { disk: { freePercent: 0, storeTrouble: finding('diskFull') } },
    forMs: 10 * SECOND_MS,
    told: ['disk-nearly-full occurred critical'],
    why: 'readings are not stored',
  },
  {
    scene: { disk: { freePercent: null, storeTrouble: null } },
    forMs: HOUR_MS,
    told: [],
    why: 'not known is no alarm',
  },
])('tells $told: $why', ({ scene, forMs, told }) => {
  expect(watchFor(scene, forMs).told).toEqual(told);
});

describe('words', () => {
  it('say which batches are blind', () => {
    const { say } = watchFor({ brokerTrouble: finding('brokerLost', 'mqtt://b') }, 3 * MINUTE_MS);
    expect(say('broker-lost', NOON_MS + 5 * MINUTE_MS)).toBe(
      '✕ No readings come in, for 5 min: the broker mqtt://b is not reached. Not measured: Tent 1 (A-12)',
    );
  });

  it.each([
    {
      rule: 'broker-lost' as const,
      scene: { brokerTrouble: finding('brokerFails', 'mqtt://b', 'connect ECONNREFUSED') },
      said: '✕ Er komen geen metingen binnen, al 16 min: de broker mqtt://b is niet bereikbaar (connect ECONNREFUSED). Niet gemeten: Tent 1 (A-12)',
    },
    {
      rule: 'disk-nearly-full' as const,
      scene: { disk: { freePercent: 0, storeTrouble: finding('storeUnusable', 'SQLITE_IOERR') } },
      said: '▦ Metingen worden niet opgeslagen, al 16 min: de gegevensmap is nu niet te gebruiken (SQLITE_IOERR): controleer de schijf en de rechten',
    },
    {
      rule: 'delivery-failing' as const,
      scene: {
        reach: reach({
          people: [
            person({ ways: [{ channel: 'email', works: false, trouble: finding('mailSignIn', 'mail.b', 535) }] }),
          ],
        }),
      },
      said: '✉ Alarmen bereiken Ada niet, al 16 min: mail.b accepteert gebruiker en wachtwoord niet (535): vul ze opnieuw in',
    },
  ])('of $rule say what is wrong in the language of who hears it', ({ rule, scene, said }) => {
    const { say } = watchFor(scene, 16 * MINUTE_MS);
    expect(say(rule, NOON_MS + 16 * MINUTE_MS, { words: wordsOf.nl, temperatureUnit: '°C' })).toBe(said);
  });

  it.each([
    { jumpMs: 2 * HOUR_MS, said: '◷ The clock of the machine was set forward by 2 h 0 min' },
    { jumpMs: -90 * MINUTE_MS, said: '◷ The clock of the machine was set back by 90 min' },
  ])('of a jump of $jumpMs ms stay the same when it is over', ({ jumpMs, said }) => {
    const jumped = watchFor({ clockJumpMs: jumpMs }, 0);
    expect(jumped.say('clock-jumped', NOON_MS)).toBe(said);
    const later = watchFor({}, MINUTE_MS, jumped.state, NOON_MS + 5 * SECOND_MS);
    expect(later.told).toEqual(['clock-jumped returned medium']);
    expect(later.say('clock-jumped', NOON_MS + HOUR_MS)).toBe(said);
  });

  it('of a gap name what the tents did, what is not known, and what still stands', () => {
    const hot = { minutesHot: 31.2, high: 28, minutesDry: 0, low: 85, minutesUnknown: 0 };
    const blind = { minutesHot: 0, high: 28, minutesDry: 4, low: null, minutesUnknown: 12 };
    const outage = {
      ...{ cause: 'stopped' as const, fromMs: NOON_MS - 47 * MINUTE_MS, toMs: NOON_MS },
      chambers: [
        { ...tent, ...hot },
        { ...tent, chamberName: 'Tent 2', ...blind },
      ],
      inForce: [{ chamberName: 'Tent 1', rule: 'heat' as const }],
    };
    const { told, say } = watchFor({ outage }, 0);
    expect(told).toEqual(['restarted occurred high']);
    expect(say('restarted', NOON_MS)).toBe(
      '↻ Back after 47 min; Tent 1 was above 28 °C for 31 of them; Tent 2 was below its limit for 4 of them; ' +
        'not known of Tent 2: 12 of them; still in alarm: Tent 1 (Heat)',
    );
  });
});

describe('a gap', () => {
  const calm = { minutesHot: 0, high: 28, minutesDry: 0, low: 85, minutesUnknown: 0 };
  it.each([
    { why: 'nothing was outside its limits', seen: {}, told: 'medium' },
    { why: 'less than a minute in all was', seen: { minutesHot: 0.5, minutesDry: 0.4 }, told: 'medium' },
    { why: 'it was hot', seen: { minutesHot: 1 }, told: 'high' },
    { why: 'it was dry', seen: { minutesDry: 5 }, told: 'high' },
    { why: 'nobody can say', seen: { minutesUnknown: 1 }, told: 'high' },
  ])('is told as $told when $why', ({ seen, told }) => {
    const times = { cause: 'stopped' as const, fromMs: NOON_MS - 47 * MINUTE_MS, toMs: NOON_MS };
    const outage = { ...times, chambers: [{ ...tent, ...calm, ...seen }], inForce: [] };
    expect(watchFor({ outage }, 0).told).toEqual([`restarted occurred ${told}`]);
  });
});

describe('the disk', () => {
  it('is well again with two points more, not with a little', () => {
    const full = watchFor({ disk: { freePercent: 9, storeTrouble: null } }, MINUTE_MS);
    const at = (freePercent: number) =>
      watchFor({ disk: { freePercent, storeTrouble: null } }, 0, full.state, NOON_MS + 2 * MINUTE_MS).told;
    expect(at(11.9)).toEqual([]);
    expect(at(12)).toEqual(['disk-nearly-full returned high']);
  });
});

describe('whom alerts reach', () => {
  const fails = { channel: 'web-push', works: false, trouble: finding('phoneTakesNoMore', 410) };
  it.each([
    { reach: reach(), told: [], why: 'one way works' },
    {
      reach: reach({ people: [person({ ways: [fails, { ...fails, works: true }] })] }),
      told: [],
      why: 'one of two works',
    },
    {
      reach: reach({ people: [person({ ways: [fails] }), person({ personId: 'p2' })] }),
      told: ['delivery-failing occurred medium'],
      why: 'every way of one fails',
    },
    {
      reach: reach({ people: [person({ ways: [fails], isOnDuty: true }), person({ personId: 'p2' })] }),
      told: ['delivery-failing occurred high'],
      why: 'and that one is on duty',
    },
    {
      reach: reach({ people: [person({ ways: [] })] }),
      told: ['nobody-reachable occurred medium'],
      why: 'no way at all',
    },
    {
      reach: reach({ people: [person({ ways: [] })], hasProgram: true }),
      told: ['nobody-reachable occurred low'],
      why: 'a program takes notices and may tell somebody',
    },
    {
      reach: reach({ duty: { isAnybodyOn: true, nextGapMs: NOON_MS + 3 * DAY_MS } }),
      told: [],
      why: 'the gap is far away',
    },
    {
      reach: reach({ duty: { isAnybodyOn: true, nextGapMs: NOON_MS + 20 * HOUR_MS } }),
      told: ['nobody-on-duty occurred low'],
      why: 'a gap within a day',
    },
    {
      reach: reach({ duty: { isAnybodyOn: false, nextGapMs: null } }),
      told: ['nobody-on-duty occurred high'],
      why: 'now, after a minute, at once as serious as it is',
    },
  ])('$why: $told', ({ reach: now, told }) => {
    expect(watchFor({ reach: now }, 16 * MINUTE_MS).told).toEqual(told);
  });

  it("is nobody's worry while no batch is open", () => {
    const failing = reach({ people: [person({ ways: [fails] })], duty: { isAnybodyOn: false, nextGapMs: null } });
    expect(watchFor({ reach: failing, openBatches: [] }, HOUR_MS).told).toEqual([]);
  });
});
