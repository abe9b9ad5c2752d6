// The rota over HTTP: who may see and write it, what is refused, and what becomes of it when people and phones change.
import { describe, expect, it } from 'vitest';
import type { DutyView } from '../../../shared/api/duty.ts';
import { openTestApp } from '../../support/open-test-app.ts';
import { createTestClock } from '../../support/test-clock.ts';

const standard = { order: [], nextAfterMinutes: 5, everyoneAfterMinutes: 15, sirenAfterMinutes: 20, repeatMinutes: 10 };

async function openCrew() {
  const clock = createTestClock(Date.UTC(2026, 2, 2, 7));
  const { app, api, folder } = await openTestApp({ clock });
  await api.put('/settings', {
    siteName: 'Test',
    zone: 'Europe/Amsterdam',
    altitudeM: 0,
    temperatureUnit: '°C',
    mappings: [],
  });
  const add = async (name: string) =>
    (await api.post<{ id: string }>('/people', { name, role: 'crew', password: 'a short sentence' })).body.id;
  const [ann, bo] = [await add('Ann'), await add('Bo')];
  const everyDay = [1, 2, 3, 4, 5, 6, 7].map((weekday) => ({ personId: ann, weekday, from: '06:00', to: '14:00' }));
  const read = async () => (await api.get<DutyView>('/duty')).body;
  return { app, api, clock, folder, ann, bo, everyDay, read };
}

describe('without a rota', () => {
  it('everybody is on duty, there are no gaps, and the standard times hold', async () => {
    const { read } = await openCrew();
    const duty = await read();
    expect(duty).toMatchObject({ ...standard, spans: [], gaps: [] });
    expect(duty.people.map(({ name, isOnDuty, via }) => [name, isOnDuty, via])).toEqual([
      ['Ann', true, []],
      ['Bo', true, []],
      ['Test manager', true, []],
    ]);
  });
});

describe('with a rota', () => {
  it('says who is on duty on the clock of the site, through what they are told, and where the gaps are', async () => {
    const { api, ann, everyDay, read } = await openCrew();
    await api.put('/channels', {
      email: { host: 'mail.example.org', port: 587, security: 'starttls', from: 'takewell@example.org' },
    });
    await api.patch(`/people/${ann}`, { email: 'ann@example.org' });
    expect((await api.put('/duty', { ...standard, spans: everyDay })).status).toBe(200);
    const duty = await read();
    expect(duty.people.find(({ id }) => id === ann)).toMatchObject({ isOnDuty: true, via: ['email'] });
    expect(duty.people.filter(({ isOnDuty }) => isOnDuty)).toHaveLength(1);
    expect(duty.gaps).toHaveLength(7);
    expect(duty.gaps[0]).toEqual({ from: '2026-03-02T13:00:00Z', to: '2026-03-03T05:00:00Z', reason: 'nobody' });
  });

  it('who is on duty and cannot be told leaves a gap of another kind', async () => {
    const { api, everyDay, read } = await openCrew();
    await api.put('/duty', { ...standard, spans: everyDay });
    expect((await read()).gaps[0]).toEqual({
      from: '2026-03-02T07:00:00Z',
      to: '2026-03-02T13:00:00Z',
      reason: 'nobody-reached',
    });
  });

  it('the times of duty of who is removed go with the person', async () => {
    const { api, ann, bo, everyDay, read } = await openCrew();
    await api.put('/duty', { ...standard, order: [ann, bo], spans: [...everyDay, { ...everyDay[0], personId: bo }] });
    await api.delete(`/people/${ann}`);
    const duty = await read();
    expect(duty.spans.map(({ personId }) => personId)).toEqual([bo]);
    expect(duty.people.map(({ name }) => name)).toEqual(['Bo', 'Test manager']);
    expect((await api.put('/duty', { ...standard, order: [ann], spans: everyDay })).status).toBe(409);
    expect((await read()).spans).toHaveLength(1);
  });

  it('is read as it was written after a restart', async () => {
    const { app, api, clock, folder, ann, bo, everyDay } = await openCrew();
    const duty = { ...standard, order: [bo, ann], repeatMinutes: 7, spans: everyDay };
    await api.put('/duty', duty);
    await app.close();
    const again = await openTestApp({ clock, folder });
    expect((await again.api.get<DutyView>('/duty')).body).toMatchObject(duty);
  });
});

describe('what is refused', () => {
  it.each([
    { change: { everyoneAfterMinutes: 4 }, where: 'everyoneAfterMinutes', why: 'everyone before the next person' },
    { change: { sirenAfterMinutes: 14 }, where: 'sirenAfterMinutes', why: 'the siren before everyone' },
    { change: { repeatMinutes: 0 }, where: 'repeatMinutes', why: 'without end' },
    {
      change: { spans: [{ personId: 'a', weekday: 8, from: '06:00', to: '07:00' }] },
      where: 'weekday',
      why: 'no such day',
    },
    {
      change: { spans: [{ personId: 'a', weekday: 1, from: '6', to: '07:00' }] },
      where: 'from',
      why: 'no time of day',
    },
  ])('$where: $why', async ({ change, where }) => {
    const { api, read } = await openCrew();
    const answer = await api.put<{ faults: { where: string }[] }>('/duty', { ...standard, spans: [], ...change });
    expect(answer.status).toBe(400);
    expect(answer.body.faults.map((fault) => fault.where).join()).toContain(where);
    expect((await read()).spans).toEqual([]);
  });
});
