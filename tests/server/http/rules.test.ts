// Rules taken out of service over HTTP: plainly shown, kept over a restart, and refused where they change nothing.
import { describe, expect, it } from 'vitest';
import type { ChamberView } from '../../../shared/api/chambers.ts';
import type { ProblemDetails } from '../../../shared/api/common.ts';
import { MINUTE_MS } from '../../../shared/units.ts';
import { openHotTent, openTent } from '../../support/open-tent.ts';

const reason = 'the cable is being laid anew';
const path = (chamberId: string, act: string, rule = 'heat') => `/chambers/${chamberId}/rules/${rule}/${act}`;

describe('a rule out of service', () => {
  it('is shown with who, when and why, sets its alarm aside and is returned', async () => {
    const tent = await openHotTent();
    const { status, body } = await tent.api.post<ChamberView>(path(tent.chamberId, 'out-of-service'), { reason });
    expect(status).toBe(200);
    expect(body.outOfService).toEqual([
      { rule: 'heat', name: 'Heat', by: 'Test manager', at: '2026-03-01T12:01:00Z', reason },
    ]);
    expect(body.alarms).toMatchObject([{ rule: 'heat', state: 'out-of-service' }]);
    const back = await tent.api.post<ChamberView>(path(tent.chamberId, 'return-to-service'));
    expect(back.body).toMatchObject({ outOfService: [], alarms: [{ rule: 'heat', state: 'unacknowledged' }] });
  });

  it('stays so over a restart, and raises nothing', async () => {
    const tent = await openHotTent();
    await tent.api.post(path(tent.chamberId, 'out-of-service', 'dry'), { reason });
    const again = await tent.reopen();
    expect((await again.chamber()).outOfService).toMatchObject([{ rule: 'dry', by: 'Test manager' }]);
    await again.stay(24, 10 * MINUTE_MS, 82);
    expect((await again.alarms()).map(({ rule }) => rule)).toEqual(['heat']);
  });

  it('is on record with the alarm that it set aside', async () => {
    const tent = await openHotTent();
    await tent.api.post(path(tent.chamberId, 'out-of-service'), { reason });
    const steps = await tent.app.store.alarms.events(tent.hot.id);
    expect(steps.at(-1)).toMatchObject({ change: 'taken-out-of-service', person: 'Test manager', note: reason });
  });
});

describe('an act that does not fit', () => {
  it.each([
    { act: 'out-of-service', rule: 'heat', body: {}, status: 400, why: 'no reason' },
    { act: 'out-of-service', rule: 'heat', body: { reason: 'x' }, status: 400, why: 'a reason that says nothing' },
    { act: 'out-of-service', rule: 'rain', body: { reason }, status: 400, why: 'no such rule' },
    { act: 'return-to-service', rule: 'heat', body: undefined, status: 409, why: 'it is in service' },
  ])('is refused with $status: $why', async ({ act, rule, body, status }) => {
    const tent = await openTent();
    expect((await tent.api.post<ProblemDetails>(path(tent.chamberId, act, rule), body)).status).toBe(status);
  });

  it('is not found where there is no such chamber, and refused the second time', async () => {
    const tent = await openTent();
    expect((await tent.api.post(path('nowhere', 'out-of-service'), { reason })).status).toBe(404);
    await tent.api.post(path(tent.chamberId, 'out-of-service'), { reason });
    const { status, body } = await tent.api.post<ProblemDetails>(path(tent.chamberId, 'out-of-service'), { reason });
    expect([status, body.detail]).toEqual([409, 'Test manager has taken this rule out of service already.']);
  });
});
