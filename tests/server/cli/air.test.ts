// The `air` command: the figures of the air module, nothing rounded, and both sides of what it takes.
import { describe, expect, it } from 'vitest';
import { describeAir } from '../../../shared/air/describe-air.ts';
import { runForJson, runTakewell } from './run-takewell.ts';

describe('air --json', () => {
  it('prints the figures of the air, by their names in the contract', async () => {
    const printed = await runForJson(['air', '--temperature', '25', '--humidity', '95']);
    expect(printed).toEqual(describeAir({ temperature: 25, humidity: 95, altitudeM: 0 }));
    const names = [
      'saturationKpa',
      'vapourKpa',
      'vpdKpa',
      'dewPoint',
      'wetBulb',
      'absoluteHumidityGm3',
      'humidityRatio',
    ];
    expect(Object.keys(printed as object)).toEqual(names);
  });

  it('takes the altitude into account', async () => {
    const printed = await runForJson(['air', '--temperature', '25', '--humidity', '50', '--altitude', '1500']);
    expect(printed).toEqual(describeAir({ temperature: 25, humidity: 50, altitudeM: 1500 }));
  });

  it('takes a negative temperature as a value', async () => {
    const printed = await runForJson(['air', '--temperature', '-5.5', '--humidity', '80']);
    expect(printed).toEqual(describeAir({ temperature: -5.5, humidity: 80, altitudeM: 0 }));
  });

  it('has no dew point for perfectly dry air', async () => {
    expect(await runForJson(['air', '--temperature', '25', '--humidity', '0'])).toMatchObject({
      dewPoint: null,
      vapourKpa: 0,
    });
  });
});

describe('air for a reader', () => {
  it('names each figure with its unit', async () => {
    const { code, stdout } = await runTakewell(['air', '--temperature', '25', '--humidity', '95']);
    expect(code).toBe(0);
    expect(stdout).toMatch(/^VPD +0\.1585 kPa$/m);
    expect(stdout).toMatch(/^dew point +24\.14 °C$/m);
  });
});

const limits: [string, string, string, string, 0 | 2][] = [
  ['the warmest it takes', '80', '50', '0', 0],
  ['warmer', '80.1', '50', '0', 2],
  ['the coldest it takes', '-40', '50', '0', 0],
  ['colder', '-40.1', '50', '0', 2],
  ['saturated air', '20', '100', '0', 0],
  ['more than saturated', '20', '100.1', '0', 2],
  ['drier than dry', '20', '-0.1', '0', 2],
  ['the highest site', '20', '50', '5000', 0],
  ['higher', '20', '50', '5001', 2],
  ['the lowest site', '20', '50', '-430', 0],
  ['lower', '20', '50', '-431', 2],
  ['a comma for a point', '20,5', '50', '0', 2],
  ['an empty number', ' ', '50', '0', 2],
  ['a number of another kind', '0x10', '50', '0', 2],
];

describe('what air takes', () => {
  it.each(limits)('%s', async (_, temperature, humidity, altitude, exit) => {
    const { code } = await runTakewell([
      'air',
      '--temperature',
      temperature,
      '--humidity',
      humidity,
      '--altitude',
      altitude,
    ]);
    expect(code).toBe(exit);
  });
});
