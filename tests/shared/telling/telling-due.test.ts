// Who is told at minute 0, 5, 15, 20, 30 …: tables whose rows say why.
import { describe, expect, it } from 'vitest';
import type { Priority } from '../../../shared/alarms/alarm.ts';
import { crewAt } from '../../../shared/telling/crew.ts';
import { summaryNotices } from '../../../shared/telling/telling-due.ts';
import { MINUTE_MS } from '../../../shared/units.ts';
import { ASKS_MS, always, askingAlarm, hook, nurseryRoster, person, phoneOf, startNight } from './site-of-people.ts';

describe('a critical alarm that nobody takes', () => {
  const night = startNight();
  it.each([
    { minute: 0, told: ['raised → webhook:w1', 'raised → ann'], why: 'who is on duty, and the programs of the site' },
    { minute: 1, told: [], why: 'it has been said' },
    { minute: 4.9, told: [], why: 'she has five minutes' },
    { minute: 5, told: ['passed-on → bo'], why: 'the next in the order of the manager' },
    { minute: 9, told: [], why: 'bo has his time too' },
    { minute: 10, told: ['repeated → ann'], why: 'ten minutes after she was told; bo was told five minutes ago' },
    { minute: 14.9, told: [], why: 'not yet a quarter of an hour' },
    { minute: 15, told: ['passed-on → cy', 'passed-on → may'], why: 'everyone' },
    { minute: 20, told: ['repeated → bo', 'repeated → ann'], why: 'again to those who were told before' },
    { minute: 30, told: ['repeated → bo', 'repeated → ann', 'repeated → cy', 'repeated → may'], why: 'again to all' },
    { minute: 35, told: [], why: 'every ten minutes' },
    { minute: 120, told: ['repeated → bo', 'repeated → ann', 'repeated → cy', 'repeated → may'], why: 'for two hours' },
    { minute: 130, told: [], why: 'then slower' },
    { minute: 180, told: ['repeated → bo', 'repeated → ann', 'repeated → cy', 'repeated → may'], why: 'every hour' },
  ])('at minute $minute tells $told: $why', ({ minute, told }) => {
    expect(night.at(minute)).toEqual(told);
  });

  it.each([
    { minute: 19.9, siren: false, why: 'everyone knows since five minutes only' },
    { minute: 20, siren: true, why: 'nobody has taken it' },
    { minute: 600, siren: true, why: 'it goes on until somebody does' },
  ])('sounds the siren at minute $minute: $siren, for $why', ({ minute, siren }) => {
    expect(startNight().siren(minute)).toBe(siren);
  });

  it.each(['acknowledged', 'shelved', 'suppressed', 'out-of-service', 'returned-unacknowledged'] as const)(
    'asks nobody and sounds no siren when it is %s',
    (state) => {
      const quiet = startNight(nurseryRoster, [askingAlarm({ state })]);
      expect([quiet.at(0), quiet.at(30), quiet.siren(30)]).toEqual([[], [], false]);
    },
  );

  it('tells everyone who should know at once where nobody looked meanwhile, each once', () => {
    expect(startNight().at(90)).toEqual([
      ...['raised → webhook:w1', 'raised → ann', 'raised → bo', 'raised → cy', 'raised → may'],
    ]);
  });

  it('asks from the beginning when it got worse, or was taken and stands still', () => {
    const again = startNight();
    again.at(0);
    again.at(15);
    again.alarms = [askingAlarm({ asking: { sinceMs: ASKS_MS + 40 * MINUTE_MS, kind: 'asked-anew' } })];
    expect(again.at(40)).toEqual(['asked-anew → webhook:w1', 'asked-anew → ann']);
    expect(again.at(45)).toEqual(['passed-on → bo']);
  });

  it('counts no time while the clock stands before its beginning', () => {
    expect(startNight().at(-30)).toEqual(['raised → webhook:w1', 'raised → ann']);
  });

  it('asks since it was announced when an older version stored it', () => {
    const { asking: _, ...old } = askingAlarm();
    expect(startNight(nurseryRoster, [old]).at(5)).toContain('raised → bo');
  });
});

describe('by priority', () => {
  const rows: { priority: Priority; minutes: number[]; told: string[]; siren: boolean; why: string }[] = [
    {
      priority: 'high',
      minutes: [0, 5],
      told: ['raised → webhook:w1', 'raised → ann', 'passed-on → bo'],
      siren: true,
      why: 'plants will be lost soon',
    },
    {
      priority: 'medium',
      minutes: [0, 5, 15, 60],
      told: ['raised → webhook:w1', 'raised → ann'],
      siren: false,
      why: 'told once, to those on duty',
    },
    { priority: 'low', minutes: [0, 5, 15, 60], told: [], siren: false, why: 'waits on the screen' },
  ];
  it.each(rows)('$priority is told to $told: $why', ({ priority, minutes, told, siren }) => {
    const night = startNight(nurseryRoster, [askingAlarm({ priority })]);
    expect(minutes.flatMap((minute) => night.at(minute))).toEqual(told);
    expect(night.siren(60)).toBe(siren);
  });

  it('a low one of the service itself is told to the managers, once', () => {
    const night = startNight(nurseryRoster, [askingAlarm({ priority: 'low', chamberId: 'takewell' })]);
    expect([night.at(0), night.at(60)]).toEqual([['raised → may'], []]);
  });

  it('a medium one is told to who comes on duty while nobody has taken it', () => {
    const roster = {
      ...nurseryRoster,
      spans: [
        { personId: 'ann', weekday: 1, from: '20:00', to: '00:00' },
        ...always('cy').map((span) => ({ ...span, to: '08:00' })),
      ],
    };
    const night = startNight(roster, [askingAlarm({ priority: 'medium' })]);
    expect(night.at(0)).toEqual(['raised → webhook:w1', 'raised → ann']);
    expect(night.at(59)).toEqual([]);
    expect(night.at(60)).toEqual(['passed-on → cy']);
  });
});

describe('quiet hours', () => {
  const people = nurseryRoster.people.map((one) =>
    one.id === 'ann' ? person('ann', { quietFrom: '22:00', quietTo: '06:00' }) : one,
  );
  const roster = { ...nurseryRoster, people, targets: nurseryRoster.targets.filter((one) => one !== hook) };
  it.each([
    { priority: 'critical', minute: 0, told: ['raised → ann'], why: 'it breaks through' },
    { priority: 'high', minute: 0, told: ['raised → ann'], why: 'it breaks through too' },
    { priority: 'medium', minute: 0, told: [], why: 'it can wait for the morning' },
    { priority: 'medium', minute: 7 * 60 - 1, told: [], why: 'a minute before six' },
    { priority: 'medium', minute: 7 * 60, told: ['raised → ann'], why: 'they are over and it stands still' },
  ] as const)('a $priority one at minute $minute is told to $told: $why', ({ priority, minute, told }) => {
    expect(startNight(roster, [askingAlarm({ priority })]).at(minute)).toEqual(told);
  });

  it('what was held back is told once, and not at all when it is over by then', () => {
    const night = startNight(roster, [askingAlarm({ priority: 'medium' })]);
    expect([night.at(0), night.at(420), night.at(430)]).toEqual([[], ['raised → ann'], []]);
    const over = startNight(roster, [askingAlarm({ priority: 'medium' })]);
    over.at(0);
    over.alarms = [];
    expect(over.at(420)).toEqual([]);
  });
});

describe('the rota', () => {
  const twoOnDuty = { ...nurseryRoster, spans: [...always('ann'), ...always('cy')] };
  it.each([
    {
      roster: { ...nurseryRoster, spans: [] },
      told: ['bo', 'ann', 'cy', 'may'],
      why: 'without a rota everybody is on duty',
    },
    { roster: twoOnDuty, told: ['ann', 'cy'], why: 'all who are on duty are told at once' },
    {
      roster: { ...nurseryRoster, spans: always('nobody-any-more') },
      told: ['bo', 'ann', 'cy', 'may'],
      why: 'a gap tells everybody',
    },
    {
      roster: { ...nurseryRoster, targets: nurseryRoster.targets.filter(({ personId }) => personId !== 'ann') },
      told: ['bo', 'cy', 'may'],
      why: 'who is on duty cannot be told by anything',
    },
    { roster: { ...nurseryRoster, people: [person('ann')] }, told: ['ann'], why: 'one person is everybody' },
    { roster: { ...nurseryRoster, people: [] }, told: [], why: 'nobody is there: the siren is left' },
  ])('at minute 0 tells $told: $why', ({ roster, told }) => {
    const night = startNight(roster);
    expect(night.at(0).filter((one) => !one.endsWith('w1'))).toEqual(
      [...told]
        .map((id) => `raised → ${id}`)
        .sort(
          (a, b) =>
            night.roster.people.findIndex(({ id }) => a.endsWith(id)) -
            night.roster.people.findIndex(({ id }) => b.endsWith(id)),
        ),
    );
    expect(night.siren(20)).toBe(true);
  });

  it('changed in the middle, tells who is on duty now', () => {
    const night = startNight();
    night.at(0);
    night.roster = { ...nurseryRoster, spans: always('cy') };
    expect(night.at(2)).toEqual(['passed-on → cy']);
  });

  it('passes on to another when the next person was removed in the middle', () => {
    const night = startNight();
    night.at(0);
    expect(night.at(5)).toEqual(['passed-on → bo']);
    night.roster = { ...nurseryRoster, people: nurseryRoster.people.filter(({ id }) => id !== 'bo') };
    expect(night.at(6)).toEqual(['passed-on → cy']);
  });

  it('tells who signs up a phone while nobody has taken it', () => {
    const night = startNight({ ...nurseryRoster, targets: [] });
    expect([night.at(0), night.at(4)]).toEqual([[], []]);
    night.roster = nurseryRoster;
    expect(night.at(4.5)).toEqual(['raised → webhook:w1', 'raised → ann']);
  });

  it('tells a person through everything that reaches them', () => {
    const mail = { channel: 'email', targetId: 'email:ann', personId: 'ann' } as const;
    const night = startNight({ ...nurseryRoster, targets: [phoneOf('ann'), phoneOf('ann', 2), mail] });
    expect(night.at(0)).toEqual(['raised → ann', 'raised → ann', 'raised → ann']);
  });
});

describe('several alarms of a chamber', () => {
  const heat = askingAlarm({ id: 'heat', priority: 'high' });
  const dry = askingAlarm({ id: 'dry', rule: 'dry', priority: 'high' });
  const asked = (priority: Priority) => ({ ...dry, priority });

  it('that come together are told in one, the others five minutes later if nobody has taken them', () => {
    const night = startNight(nurseryRoster, [dry, heat]);
    expect(night.at(0)).toEqual(['raised → webhook:w1', 'raised → ann', 'raised → webhook:w1']);
    expect(night.at(4.9)).toEqual([]);
    expect(night.at(5)).toEqual(['passed-on → bo', 'raised → ann']);
  });

  it.each([
    { second: asked('critical'), told: true, why: 'a critical one never waits' },
    { second: asked('medium'), told: false, why: 'she has just been told of something worse there' },
    { second: { ...asked('high'), chamberId: 'elsewhere' }, told: true, why: 'another chamber is another walk' },
  ])('one of $second.priority a minute later is told: $told, for $why', ({ second, told }) => {
    const night = startNight(nurseryRoster, [heat]);
    night.at(0);
    night.alarms = [heat, second];
    expect(night.at(1).includes('raised → ann')).toBe(told);
  });
});

describe('a flood', () => {
  const alarms = [1, 2, 3].map((n) => askingAlarm({ id: `a${n}`, chamberId: `c${n}`, priority: 'high' }));
  const inFlood = { isFloodAt: (ms: number) => ms < ASKS_MS + 10 * MINUTE_MS };

  it('is told in one notice to those on duty and the programs; of its alarms the worst alone goes on to ask', () => {
    const night = startNight(nurseryRoster, alarms);
    expect(night.at(0, inFlood)).toEqual([]);
    const first = alarms[0] ?? askingAlarm();
    const summary = summaryNotices('flood', first, crewAt(nurseryRoster, ASKS_MS), ASKS_MS);
    expect(summary.map(({ kind, targetId }) => `${kind} → ${targetId}`)).toEqual([
      'flood → ann-phone-1',
      'flood → webhook:w1',
    ]);
    expect(night.at(5, inFlood)).toEqual(['raised → webhook:w1', 'raised → ann', 'raised → bo']);
    expect(new Set(night.notices.map(({ alarmId }) => alarmId))).toEqual(new Set(['a1']));
  });

  it('that somebody is at work on asks nobody else', () => {
    const night = startNight(nurseryRoster, [
      askingAlarm({ id: 'taken', priority: 'high', state: 'acknowledged' }),
      ...alarms,
    ]);
    expect([night.at(0, inFlood), night.at(30, inFlood)]).toEqual([[], []]);
  });

  it('holds back no critical alarm', () => {
    expect(startNight().at(0, inFlood)).toContain('raised → ann');
  });
});

describe('after an outage', () => {
  const high = askingAlarm({ id: 'high', priority: 'high' });
  const heat = askingAlarm({ id: 'heat', chamberId: 'c9' });
  const silent = askingAlarm({ id: 'silent', rule: 'silent-chamber' });

  it('all but critical heat waits while its summary is being written', () => {
    const night = startNight(nurseryRoster, [high, heat, silent]);
    night.at(0, { isHeld: true });
    expect(new Set(night.notices.map(({ alarmId }) => alarmId))).toEqual(new Set(['heat']));
  });

  it('the summary stands for what asked by then, which is passed on as from the summary', () => {
    const night = startNight(nurseryRoster, [high]);
    const told = { outageToldMs: ASKS_MS + 60 * MINUTE_MS };
    expect([night.at(60, told), night.at(64, told), night.siren(79, told)]).toEqual([[], [], false]);
    expect(night.at(65, told)).toEqual(['raised → webhook:w1', 'raised → ann', 'raised → bo']);
    expect(night.siren(80, told)).toBe(true);
  });

  it('the summary does not slow what begins after it', () => {
    const night = startNight(nurseryRoster, [high]);
    expect(night.at(0, { outageToldMs: ASKS_MS - 1 })).toContain('raised → ann');
  });
});
