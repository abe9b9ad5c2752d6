import { describe, expect, test } from 'vitest';
import { calibrationBodySchema, readCalibration } from '../../../shared/api/calibrations.ts';

const NOW_MS = Date.parse('2026-03-02T07:00:00Z');
const salts = [
  { reference: 75.3, measured: 77.3 },
  { reference: 97.3, measured: 97.1 },
];

describe('the body of a calibration', () => {
  test.each([
    { body: { kind: 'offset', temperature: { offset: -0.3 } }, why: 'one quantity' },
    {
      body: { kind: 'offset', temperature: { offset: -0.3 }, humidity: { offset: 1 }, note: 'ice water' },
      why: 'both',
    },
    { body: { kind: 'two-point', humidity: salts, from: '2026-03-01T12:00:00+01:00' }, why: 'salts, from a date on' },
  ])('is taken: $why', ({ body }) => {
    expect(calibrationBodySchema.safeParse(body).success).toBe(true);
  });

  test.each([
    { body: { kind: 'offset' }, path: '', why: 'nothing is corrected' },
    { body: { kind: 'offset', humidity: { offset: 12 } }, path: 'humidity.offset', why: 'too large' },
    { body: { kind: 'two-point', humidity: [salts[0], salts[0]] }, path: 'humidity', why: 'two equal points' },
    { body: { kind: 'two-point', humidity: [salts[0]] }, path: 'humidity', why: 'one point is no line' },
    {
      body: { kind: 'two-point', humidity: [salts[0], { reference: 130, measured: 97 }] },
      path: 'humidity.1.reference',
      why: 'no such air',
    },
    { body: { kind: 'offset', humidity: { offset: 1 }, from: 'yesterday' }, path: 'from', why: 'not a time' },
    { body: { kind: 'offset', humidty: { offset: 1 } }, path: '', why: 'a field that does not exist' },
    { body: { kind: 'gain', gain: 1.1 }, path: 'kind', why: 'an unknown kind' },
  ])('is refused at "$path": $why', ({ body, path }) => {
    const { error } = calibrationBodySchema.safeParse(body);
    expect(error?.issues.map((issue) => issue.path.join('.'))).toContain(path);
  });

  test('without a date it holds from now on', () => {
    const body = calibrationBodySchema.parse({ kind: 'offset', humidity: { offset: 1.5 } });
    expect(readCalibration(body, NOW_MS)).toMatchObject({ kind: 'offset', fromMs: NOW_MS, humidity: { offset: 1.5 } });
  });

  test('with a date it holds from that instant on', () => {
    const body = calibrationBodySchema.parse({ kind: 'two-point', humidity: salts, from: '2026-03-01T12:00:00+01:00' });
    const fromMs = Date.parse('2026-03-01T11:00:00Z');
    expect(readCalibration(body, NOW_MS)).toMatchObject({ kind: 'two-point', fromMs, humidity: salts });
  });
});
