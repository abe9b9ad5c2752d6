// The form of a calibration: what is sent for what was typed, and where a refusal is shown.
import { describe, expect, it } from 'vitest';
import { ApiProblem } from '../../web/api.ts';
import { atFields, calibrationBody } from '../../web/calibration-body.ts';

const zone = 'Europe/Amsterdam';

function form(values: Record<string, string>): FormData {
  const fields = new FormData();
  for (const [name, value] of Object.entries(values)) fields.append(name, value);
  return fields;
}

describe('an offset', () => {
  it.each([
    [{ temperatureOffset: '-0.3' }, { temperature: { offset: -0.3 } }],
    [{ humidityOffset: '1,5', temperatureOffset: '' }, { humidity: { offset: 1.5 } }],
    [{ temperatureOffset: '0' }, { temperature: { offset: 0 } }],
    [{ temperatureOffset: 'warm' }, {}],
  ])('typed as %j is sent as %j', (typed, sent) => {
    expect(calibrationBody(form({ kind: 'offset', note: ' by the book ', ...typed }), zone)).toEqual({
      ...{ kind: 'offset', note: 'by the book' },
      ...sent,
    });
  });

  it('holds from the wall time of the site', () => {
    const body = calibrationBody(form({ kind: 'offset', humidityOffset: '1', from: '2026-07-01T09:00' }), zone);
    expect(body).toMatchObject({ from: '2026-07-01T07:00:00.000Z' });
  });
});

describe('two salts', () => {
  const typed = {
    ...{ kind: 'two-point', airTemperature: '25' },
    ...{ salt0: 'sodium chloride', measured0: '77,3', salt1: 'potassium sulfate', measured1: '97.3' },
  };

  it('are sent with their humidity at that temperature', () => {
    expect(calibrationBody(form(typed), zone)).toEqual({
      ...{ kind: 'two-point', note: '' },
      humidity: [
        { reference: 75.3, measured: 77.3 },
        { reference: 97.3, measured: 97.3 },
      ],
    });
  });

  it.each(['19.9', '30.1', ''])('at "%s" °C are not known, and the field says so', (airTemperature) => {
    const send = () => calibrationBody(form({ ...typed, airTemperature }), zone);
    expect(send).toThrow(expect.objectContaining({ faults: [expect.objectContaining({ where: 'airTemperature' })] }));
  });
});

describe('a refusal', () => {
  it.each([
    ['/temperature/offset', 'temperatureOffset'],
    ['/humidity/offset', 'humidityOffset'],
    ['/humidity/0/measured', 'measured0'],
    ['/humidity/1/measured', 'measured1'],
    ['/humidity', 'measured1'],
    ['', 'temperatureOffset'],
    ['/from', '/from'],
  ])('at %j is shown at %s', (where, field) => {
    const problem = atFields(new ApiProblem('not right', 400, [{ where, reason: 'too much' }]));
    expect(problem.faults).toEqual([{ where: field, reason: 'too much' }]);
    expect(problem).toMatchObject({ status: 400, message: 'not right' });
  });
});
