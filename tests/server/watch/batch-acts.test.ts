// What people do to a batch, from opening to the take: each act is logged with its person, and what does not fit is refused with a reason.
import { describe, expect, it } from 'vitest';
import type { BatchActs } from '../../../server/watch/batch-acts.ts';
import type { Batch } from '../../../shared/healing/batch.ts';
import { plainNote } from '../../../shared/healing/batch-log.ts';
import type { ProblemCode } from '../../../shared/problem.ts';
import { DAY_MS, HOUR_MS, MINUTE_MS, utcText } from '../../../shared/units.ts';
import { openTent, TENT_MS, TENT_PROFILE, type Tent } from '../../support/open-tent.ts';

type Wanted = Parameters<BatchActs['open']>[0];

interface Bench extends Tent {
  readonly acts: BatchActs;
  open(given?: Partial<Wanted>): Promise<Batch>;
  /** The log of a batch, as `kind by person: note`; the note as the record hands it on. */
  log(id: string): Promise<string[]>;
}

async function openBench(): Promise<Bench> {
  const tent = await openTent();
  const acts = tent.app.parts.batchActs;
  const usual = { chamberId: tent.chamberId, profileId: TENT_PROFILE, code: 'T-1', scion: 'A', rootstock: 'B' };
  return {
    ...tent,
    acts,
    open: (given = {}) => acts.open({ ...usual, method: 'clip', trays: 10, plants: 1000, ...given }, 'Ann'),
    log: async (id) => {
      const profile = await tent.app.store.profiles.get(TENT_PROFILE);
      if (profile === null) throw new Error('the profile of the tent is not stored');
      const lines = await tent.app.store.batches.log(id);
      return lines.map((line) => `${line.kind} by ${line.person}: ${plainNote(line, profile.document)}`);
    },
  };
}

async function refused(act: Promise<unknown>, code: ProblemCode, text: RegExp): Promise<void> {
  await expect(act).rejects.toMatchObject({ name: 'Problem', code, message: expect.stringMatching(text) });
}

describe('opening a batch', () => {
  it('without times means now, with the chamber still being loaded', async () => {
    const bench = await openBench();
    const batch = await bench.open();
    expect(batch).toMatchObject({
      openedMs: TENT_MS,
      closedMs: null,
      finishedMs: null,
      profileVersion: 1,
      plants: 1000,
    });
    expect(await bench.log(batch.id)).toEqual(['opened by Ann: ']);
    expect((await bench.chamber()).batch).toMatchObject({ code: 'T-1', stage: 'loading', healingDay: 0 });
  });

  it('may say that the chamber was closed a while ago: then it was opened by then at the latest', async () => {
    const bench = await openBench();
    const batch = await bench.open({ closedMs: TENT_MS - 30 * HOUR_MS });
    expect(batch).toMatchObject({ openedMs: TENT_MS - 30 * HOUR_MS, closedMs: TENT_MS - 30 * HOUR_MS });
    expect((await bench.chamber()).batch).toMatchObject({ stage: 'closed', healingDay: 2 });
    const log = await bench.app.store.batches.log(batch.id);
    expect(log.map(({ kind, atMs }) => [kind, atMs])).toEqual([
      ['opened', TENT_MS - 30 * HOUR_MS],
      ['closed', TENT_MS - 30 * HOUR_MS],
    ]);
  });

  it('pins the version of the profile that stands then', async () => {
    const bench = await openBench();
    const batch = await bench.open({ closedMs: TENT_MS });
    const profile = await bench.app.store.profiles.get(TENT_PROFILE);
    const stages = profile?.document.stages.map((stage) => ({ ...stage, temperature: cooler })) ?? [];
    if (profile === null) throw new Error('the standard profile is missing');
    await bench.app.store.profiles.addVersion(TENT_PROFILE, { ...profile.document, stages }, TENT_MS, 'Ann');
    await bench.acts.log(batch.id, 'mist', {}, 'Ann');
    expect((await bench.chamber()).limits?.temperature.high).toBe(28);
    await bench.acts.finish(batch.id, 900, '', 'Ann');
    expect((await bench.open({ code: 'T-2', closedMs: TENT_MS })).profileVersion).toBe(2);
    expect((await bench.chamber()).limits?.temperature.high).toBe(21);
  });

  it.each<{ why: string; given: Partial<Wanted>; code: ProblemCode; text: RegExp }>([
    { why: 'no such chamber', given: { chamberId: 'nowhere' }, code: 'not-found', text: /no such chamber/ },
    { why: 'no such profile', given: { profileId: 'nothing' }, code: 'not-found', text: /no such profile/ },
    {
      why: 'closed in the future',
      given: { closedMs: TENT_MS + 5 * MINUTE_MS + 1 },
      code: 'bad-input',
      text: /still to come/,
    },
    {
      why: 'opened in the future',
      given: { openedMs: TENT_MS + 5 * MINUTE_MS + 1 },
      code: 'bad-input',
      text: /still to come/,
    },
    {
      why: 'closed before it was opened',
      given: { openedMs: TENT_MS - HOUR_MS, closedMs: TENT_MS - HOUR_MS - 1 },
      code: 'bad-input',
      text: /before the batch was opened/,
    },
  ])('is refused: $why', async ({ given, code, text }) => {
    const bench = await openBench();
    await refused(bench.open(given), code, text);
    expect((await bench.chamber()).batch).toBeNull();
  });

  it('takes a time a little ahead for a clock that differs', async () => {
    const bench = await openBench();
    const closedMs = TENT_MS + 5 * MINUTE_MS;
    expect(await bench.open({ closedMs })).toMatchObject({ closedMs, openedMs: TENT_MS });
  });

  it('is refused while another is in the chamber, also when both are opened at once', async () => {
    const bench = await openBench();
    const both = await Promise.allSettled([bench.open(), bench.open({ code: 'T-2' })]);
    expect(both.map(({ status }) => status)).toEqual(['fulfilled', 'rejected']);
    await refused(bench.open({ code: 'T-3' }), 'conflict', /Batch T-1 is in Tent 1: finish it first/);
    expect(await bench.app.store.batches.open()).toHaveLength(1);
  });
});

describe('closing the chamber', () => {
  it('now, or at the time in the past at which it was done', async () => {
    const bench = await openBench();
    const first = await bench.open({ openedMs: TENT_MS - 5 * HOUR_MS });
    const closed = await bench.acts.closeChamber(first.id, TENT_MS - 2 * HOUR_MS, 'Bea');
    expect(closed.closedMs).toBe(TENT_MS - 2 * HOUR_MS);
    expect(await bench.log(first.id)).toEqual(['opened by Ann: ', 'closed by Bea: ']);
    await bench.acts.finish(first.id, 1, '', 'Ann');
    const second = await bench.open({ code: 'T-2' });
    expect((await bench.acts.closeChamber(second.id, undefined, 'Bea')).closedMs).toBe(TENT_MS);
  });

  it('is refused in the future, before the opening, twice, and for no batch', async () => {
    const bench = await openBench();
    const { id } = await bench.open();
    const close = (closedMs?: number) => bench.acts.closeChamber(id, closedMs, 'Ann');
    await refused(close(TENT_MS + 5 * MINUTE_MS + 1), 'bad-input', /still to come/);
    await refused(close(TENT_MS - 1), 'bad-input', /before the batch was opened/);
    await close();
    await refused(close(), 'conflict', /closed already/);
    await refused(bench.acts.closeChamber('none', undefined, 'Ann'), 'not-found', /no such batch/);
  });
});

describe('holding', () => {
  it('stops the clock until it is resumed: what follows moves by as much', async () => {
    const bench = await openBench();
    const { id } = await bench.open({ closedMs: TENT_MS - 2 * DAY_MS });
    const endsAt = async () => Date.parse((await bench.chamber()).batch?.endsAt ?? '');
    const planned = await endsAt();
    await bench.acts.hold(id, 'scions limp', 'Ann');
    expect((await bench.chamber()).batch?.onHold).toBe(true);
    bench.clock.advance(DAY_MS);
    await bench.acts.resume(id, 'Bea');
    expect((await bench.chamber()).batch?.onHold).toBe(false);
    expect(await endsAt()).toBe(planned + DAY_MS);
    expect((await bench.log(id)).slice(-2)).toEqual(['hold by Ann: scions limp', 'resume by Bea: ']);
  });

  it('is refused before closing, twice, and when there is nothing to resume', async () => {
    const bench = await openBench();
    const { id } = await bench.open();
    await refused(bench.acts.hold(id, '', 'Ann'), 'conflict', /before the chamber is closed/);
    await refused(bench.acts.resume(id, 'Ann'), 'conflict', /not on hold/);
    await bench.acts.closeChamber(id, undefined, 'Ann');
    await bench.acts.hold(id, '', 'Ann');
    await refused(bench.acts.hold(id, '', 'Ann'), 'conflict', /on hold already/);
  });
});

describe('moving on', () => {
  it('begins a later stage now, whatever the plan said', async () => {
    const bench = await openBench();
    const { id } = await bench.open({ closedMs: TENT_MS - 2 * DAY_MS });
    await bench.acts.moveOn(id, 'venting', 'Ann');
    expect((await bench.chamber()).batch?.stage).toBe('venting');
    expect((await bench.log(id)).at(-1)).toBe('moved-on by Ann: venting');
    expect((await bench.app.store.batches.log(id)).at(-1)).toMatchObject({ about: { stage: 'venting' }, note: '' });
    bench.clock.advance(MINUTE_MS);
    await bench.acts.moveOn(id, 'hardening', 'Ann');
    expect((await bench.chamber()).batch?.stage).toBe('hardening');
  });

  it('is refused to where it is or was, before closing, and after the end of the plan', async () => {
    const bench = await openBench();
    const { id } = await bench.open({ openedMs: TENT_MS - 3 * DAY_MS });
    await refused(
      bench.acts.moveOn(id, 'closed', 'Ann'),
      'conflict',
      /is at the stage loading: it cannot move on to closed/,
    );
    await bench.acts.closeChamber(id, TENT_MS - 2 * DAY_MS, 'Ann');
    await refused(
      bench.acts.moveOn(id, 'closed', 'Ann'),
      'conflict',
      /is at the stage closed: it cannot move on to closed/,
    );
    await bench.acts.moveOn(id, 'venting', 'Ann');
    await refused(bench.acts.moveOn(id, 'closed', 'Ann'), 'conflict', /is at the stage venting/);
    bench.clock.advance(30 * DAY_MS);
    await refused(bench.acts.moveOn(id, 'hardening', 'Ann'), 'conflict', /The plan of the batch has ended/);
  });
});

describe('the log', () => {
  it('keeps what was seen or done, when, and by whom; a gap is how far the tent is open from then on', async () => {
    const bench = await openBench();
    const { id } = await bench.open({ closedMs: TENT_MS - DAY_MS });
    await bench.acts.log(id, 'gap', { gapPercent: 20, atMs: TENT_MS - HOUR_MS }, 'Ann');
    await bench.acts.log(id, 'gap', { gapPercent: 5, atMs: TENT_MS - 2 * HOUR_MS }, 'Bea');
    await bench.acts.log(id, 'note', { note: 'two trays limp' }, 'Bea');
    expect((await bench.chamber()).batch?.gapPercent).toBe(20);
    expect((await bench.log(id)).slice(-3)).toEqual(['gap by Bea: ', 'gap by Ann: ', 'note by Bea: two trays limp']);
  });

  it('refuses what is still to come', async () => {
    const bench = await openBench();
    const { id } = await bench.open();
    await refused(
      bench.acts.log(id, 'mist', { atMs: TENT_MS + 5 * MINUTE_MS + 1 }, 'Ann'),
      'bad-input',
      /still to come/,
    );
    await bench.acts.log(id, 'mist', { atMs: TENT_MS + 5 * MINUTE_MS }, 'Ann');
  });
});

describe('checks', () => {
  it('are answered once each, a later answer takes the place of the first, and both stay in the log', async () => {
    const bench = await openBench();
    const { id } = await bench.open({ closedMs: TENT_MS - 4 * HOUR_MS });
    await bench.acts.answer(id, 'film-wet.1', { answer: 'no', note: 'dry at the door' }, 'Ann');
    await bench.acts.answer(id, 'film-wet.1', { answer: 'yes', note: '' }, 'Bea');
    const [answer, ...more] = await bench.app.store.batches.answers(id);
    expect(more).toEqual([]);
    expect(answer).toMatchObject({ checkId: 'film-wet.1', answer: 'yes', person: 'Bea' });
    const log = (await bench.log(id)).filter((line) => line.startsWith('check'));
    expect(log).toEqual([
      'check by Ann: Is the film wet on the inside? no: dry at the door',
      'check by Bea: Is the film wet on the inside? yes',
    ]);
    const check = { id: 'film-wet', checkId: 'film-wet.1' };
    expect((await bench.app.store.batches.log(id)).slice(-2)).toMatchObject([
      { about: { check: { ...check, answer: 'no' } }, note: 'dry at the door' },
      { about: { check: { ...check, answer: 'yes' } }, note: '' },
    ]);
  });

  it('that the plan does not have cannot be answered', async () => {
    const bench = await openBench();
    const { id } = await bench.open({ closedMs: TENT_MS - 4 * HOUR_MS });
    await refused(
      bench.acts.answer(id, 'film-wet.9', { answer: 'yes', note: '' }, 'Ann'),
      'not-found',
      /has no such check/,
    );
  });
});

describe('correcting', () => {
  it('says in the log what stood before', async () => {
    const bench = await openBench();
    const { id } = await bench.open({ scion: '' });
    const corrected = await bench.acts.correct(id, { plants: 980, scion: 'C', trays: 10 }, 'Bea');
    expect(corrected).toMatchObject({ plants: 980, scion: 'C', trays: 10 });
    expect((await bench.log(id)).at(-1)).toBe('corrected by Bea: scion: (empty) → C; plants: 1000 → 980');
    const changes = [
      { field: 'scion', before: '', after: 'C' },
      { field: 'plants', before: 1000, after: 980 },
    ];
    expect((await bench.app.store.batches.log(id)).at(-1)).toMatchObject({ about: { changes }, note: '' });
  });

  it('to what it is already leaves no trace', async () => {
    const bench = await openBench();
    const { id } = await bench.open();
    await bench.acts.correct(id, { plants: 1000 }, 'Bea');
    expect(await bench.log(id)).toHaveLength(1);
  });
});

describe('correcting the closing time', () => {
  const closedMs = TENT_MS - DAY_MS;
  const openedMs = TENT_MS - 2 * DAY_MS;

  it('moves the healing day and the stages, and says in the log what stood before', async () => {
    const bench = await openBench();
    const { id } = await bench.open({ openedMs, closedMs });
    expect((await bench.chamber()).batch?.healingDay).toBe(2);
    await bench.acts.correct(id, { closedMs: closedMs + HOUR_MS }, 'Bea');
    expect((await bench.chamber()).batch).toMatchObject({ healingDay: 1, closedAt: utcText(closedMs + HOUR_MS) });
    expect((await bench.log(id)).at(-1)).toBe('corrected by Bea: closed: 2026-02-28T12:00:00Z → 2026-02-28T13:00:00Z');
  });

  it.each([
    ['the opening itself', openedMs, null],
    ['before the opening', openedMs - 1, 'bad-input'],
    ['the present', TENT_MS, null],
    ['as far ahead as clocks may differ', TENT_MS + 5 * MINUTE_MS, null],
    ['the future', TENT_MS + 5 * MINUTE_MS + 1, 'bad-input'],
  ])('to %s is as it should be', async (_, toMs, code) => {
    const bench = await openBench();
    const { id } = await bench.open({ openedMs, closedMs });
    const correct = bench.acts.correct(id, { closedMs: toMs }, 'Bea');
    if (code === null) expect(await correct).toMatchObject({ closedMs: toMs });
    else {
      await expect(correct).rejects.toMatchObject({ code });
      expect((await bench.app.store.batches.get(id))?.closedMs).toBe(closedMs);
    }
  });

  it('is refused before the chamber was closed at all', async () => {
    const bench = await openBench();
    const { id } = await bench.open();
    await refused(bench.acts.correct(id, { closedMs }, 'Bea'), 'conflict', /not been closed yet/);
  });

  it('is refused past a hold or a move, which need a clock that runs', async () => {
    const bench = await openBench();
    const { id } = await bench.open({ openedMs, closedMs });
    await bench.acts.hold(id, '', 'Ann');
    await bench.acts.resume(id, 'Ann');
    await refused(bench.acts.correct(id, { closedMs: TENT_MS + 1 }, 'Bea'), 'conflict', /held or moved on at/);
    expect(await bench.acts.correct(id, { closedMs: TENT_MS }, 'Bea')).toMatchObject({ closedMs: TENT_MS });
  });
});

describe('finishing', () => {
  it('counts the take and frees the chamber', async () => {
    const bench = await openBench();
    const { id } = await bench.open({ closedMs: TENT_MS - 9 * DAY_MS });
    const finished = await bench.acts.finish(id, 1000, 'all of them', 'Ann');
    expect(finished).toMatchObject({ finishedMs: TENT_MS, takenPlants: 1000 });
    expect((await bench.log(id)).at(-1)).toBe('finished by Ann: all of them');
    expect((await bench.chamber()).batch).toBeNull();
  });

  it('is refused when more has taken than went in', async () => {
    const bench = await openBench();
    const { id } = await bench.open();
    await refused(bench.acts.finish(id, 1001, '', 'Ann'), 'bad-input', /Only 1000 plants went in/);
    expect((await bench.app.store.batches.get(id))?.finishedMs).toBeNull();
  });

  it('ends a hold that stands', async () => {
    const bench = await openBench();
    const { id } = await bench.open({ closedMs: TENT_MS - DAY_MS });
    await bench.acts.hold(id, '', 'Ann');
    bench.clock.advance(HOUR_MS);
    const finished = await bench.acts.finish(id, 0, '', 'Ann');
    expect(finished.holds).toEqual([{ fromMs: TENT_MS, toMs: TENT_MS + HOUR_MS }]);
  });

  it('is the end: nothing more can be done to a finished batch, its record stands', async () => {
    const bench = await openBench();
    const { id } = await bench.open({ closedMs: TENT_MS - DAY_MS });
    await bench.acts.finish(id, 900, '', 'Ann');
    const { acts } = bench;
    const all = [
      acts.correct(id, { plants: 1 }, 'Ann'),
      acts.closeChamber(id, undefined, 'Ann'),
      acts.hold(id, '', 'Ann'),
      acts.resume(id, 'Ann'),
      acts.moveOn(id, 'venting', 'Ann'),
      acts.log(id, 'mist', {}, 'Ann'),
      acts.answer(id, 'film-wet.1', { answer: 'yes', note: '' }, 'Ann'),
      acts.finish(id, 901, '', 'Ann'),
    ];
    for (const act of await Promise.allSettled(all))
      expect(act).toMatchObject({ status: 'rejected', reason: { code: 'conflict', message: /its record stands/ } });
    expect(await bench.app.store.batches.get(id)).toMatchObject({ takenPlants: 900, plants: 1000 });
  });

  it('ends its alarms with it, and none of them is found by the next batch', async () => {
    const bench = await openBench();
    const { id } = await bench.open({ closedMs: TENT_MS - DAY_MS });
    await bench.stay(28.5, MINUTE_MS);
    const [hot] = await bench.alarms();
    await bench.acts.finish(id, 900, '', 'Ann');
    expect(await bench.alarms()).toEqual([]);
    const events = await bench.app.store.alarms.events(hot?.id ?? '');
    expect(events.map(({ change, toState, note }) => [change, toState, note])).toEqual([
      ['occurred', 'unacknowledged', ''],
      ['returned', 'normal', 'the batch is over'],
    ]);
    const next = await bench.open({ code: 'T-2', closedMs: bench.clock.nowMs() });
    expect(await bench.alarms()).toEqual([]);
    await bench.stay(28.5, MINUTE_MS);
    expect(await bench.alarms()).toMatchObject([{ batchId: next.id, batchCode: 'T-2', acknowledgedBy: null }]);
  });
});

const constant = (value: number) => ({ shape: 'constant', value, basis: 'ours' }) as const;
const cooler = { low: constant(15), high: constant(21) };
