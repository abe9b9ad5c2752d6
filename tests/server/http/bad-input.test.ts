// What cannot be is refused at the door, with a sentence that says what to change; and nothing of it is stored.
import { describe, expect, it } from 'vitest';
import type { ProblemDetails } from '../../../shared/api/common.ts';
import { standardProfiles } from '../../../shared/healing/standard-profiles.ts';
import { HOUR_MS, MINUTE_MS, utcText } from '../../../shared/units.ts';
import { openBatch, openTent, TENT_MS, TENT_PROFILE } from '../../support/open-tent.ts';

type Plan = { stages: { afterHours?: number; temperature: { low: object; high: object } }[] };

/** A shipped profile with something changed, as JSON sends it. */
function profileWith(change: (document: Plan & Record<string, unknown>) => void): object {
  const document = structuredClone(standardProfiles[0]?.document) as unknown as Plan & Record<string, unknown>;
  change(document);
  return { id: 'of-my-own', document };
}

const constant = (value: unknown) => ({ shape: 'constant', value, basis: 'ours' });
const stageOf = (document: Plan, index: number) => {
  const stage = document.stages[index];
  if (stage === undefined) throw new Error(`the profile has no stage ${index}`);
  return stage;
};

describe('a profile', () => {
  it.each([
    {
      why: 'whose stages overlap',
      body: profileWith((document) => {
        stageOf(document, 2).afterHours = 200;
        stageOf(document, 3).afterHours = 120;
      }),
      where: '/stages/3/afterHours',
      says: /must be later|after/,
    },
    {
      why: 'with low above high',
      body: profileWith((document) => {
        Object.assign(stageOf(document, 1).temperature, { low: constant(31), high: constant(28) });
      }),
      where: '/stages/1/temperature',
      says: /low|high/,
    },
    {
      why: 'with NaN, which JSON can only write as null',
      body: profileWith((document) => Object.assign(document, { silenceMinutes: Number.NaN })),
      where: '/silenceMinutes',
      says: /must be a number/,
    },
  ])('$why is refused with its place', async ({ body, where, says }) => {
    const { api } = await openTent();
    const answer = await api.post<ProblemDetails>('/profiles', body);
    expect(answer.status).toBe(400);
    const fault = answer.body.faults?.find((one) => one.where.startsWith(where));
    expect(fault?.reason, JSON.stringify(answer.body)).toMatch(says);
    expect((await api.get('/profiles/of-my-own')).status).toBe(404);
  });
});

it('a site in an unknown zone is refused with an example of one', async () => {
  const { api } = await openTent();
  const settings = { siteName: 'Test', zone: 'Europe/Atlantis', altitudeM: 0, temperatureUnit: '°C', mappings: [] };
  const answer = await api.put<ProblemDetails>('/settings', settings);
  expect(answer.status).toBe(400);
  expect(JSON.stringify(answer.body)).toMatch(/time zone.*Europe\/Amsterdam/);
  expect((await api.get<{ zone: string }>('/settings')).body.zone).toBe('UTC');
});

describe('a batch', () => {
  const wanted = (chamberId: string) => ({ chamberId, profileId: TENT_PROFILE, code: 'T-9', plants: 10 });
  const conflict = (detail: RegExp) => ({ status: 409, body: { detail: expect.stringMatching(detail) } });

  it('in a chamber without a probe is refused, and said where to place one', async () => {
    const { api } = await openTent();
    const { body: bare } = await api.post<{ id: string }>('/chambers', { name: 'Bare tent' });
    expect(await api.post('/batches', wanted(bare.id))).toMatchObject(
      conflict(/^No canopy probe stands in Bare tent.*place one there under Sensors first\.$/),
    );
  });

  it.each([
    { change: { place: 'film' }, why: 'a film probe does not say how the plants have it' },
    { change: { outOfService: true }, why: 'a probe out of service measures nothing' },
    { change: { place: null }, why: 'the probe was taken away' },
  ])('is refused too where $why', async ({ change }) => {
    const { api, chamberId, probeId } = await openTent();
    await api.patch(`/probes/${probeId}`, change);
    expect(await api.post('/batches', wanted(chamberId))).toMatchObject(conflict(/^No canopy probe stands in Tent 1/));
  });

  it('may be opened before its probe has spoken', async () => {
    const { api, chamberId } = await openTent();
    expect((await api.post('/batches', wanted(chamberId))).status).toBe(201);
  });

  it('beside another in one chamber is refused, naming the one to finish', async () => {
    const tent = await openTent();
    await openBatch(tent);
    expect(await tent.api.post('/batches', wanted(tent.chamberId))).toMatchObject(
      conflict(/^Batch T-1 is in Tent 1: finish it first\.$/),
    );
  });

  it.each([
    { path: 'open', why: 'when it is opened' },
    { path: 'close', why: 'when the chamber is closed' },
    { path: 'correct', why: 'when the closing is corrected' },
  ])('with a closing still to come is refused $why', async ({ path }) => {
    const tent = await openTent();
    const closedAt = utcText(TENT_MS + 6 * MINUTE_MS);
    const answer = await (async () => {
      if (path === 'open') return tent.api.post('/batches', { ...wanted(tent.chamberId), closedAt });
      const { body } = await tent.api.post<{ id: string }>('/batches', wanted(tent.chamberId));
      if (path === 'close') return tent.api.post(`/batches/${body.id}/close-chamber`, { closedAt });
      await tent.api.post(`/batches/${body.id}/close-chamber`, {});
      return tent.api.patch(`/batches/${body.id}`, { closedAt: utcText(TENT_MS + HOUR_MS) });
    })();
    expect(answer).toMatchObject({
      status: 400,
      body: { detail: expect.stringMatching(/still to come: give the time it happened/) },
    });
  });
});
