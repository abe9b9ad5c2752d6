// A closed tent and the surroundings it is tried in, for the tests of the tent's physics.
import { ratioOf } from '../../../server/demo/moist-air.ts';
import type { TentInputs, TentState } from '../../../server/demo/tent-flows.ts';

export const closedTent: TentState = {
  airTemperature: 22,
  humidityRatio: ratioOf(22, 96),
  filmTemperature: 21,
  benchTemperature: 22,
  floorWaterKg: 0.1,
  filmWaterKg: 0.03,
};

export const night: TentInputs = {
  houseTemperature: 18,
  houseHumidityRatio: ratioOf(18, 68),
  sunWm2: 0,
  foggerOn: false,
  gapPercent: 0,
  benchHeatWm2: 0,
};

export const inputTable: readonly { why: string; inputs: TentInputs }[] = [
  { why: 'a closed tent at night', inputs: night },
  { why: 'fog into saturated air, film and floor running over', inputs: { ...night, foggerOn: true, sunWm2: 80 } },
  { why: 'full sun with the gap open', inputs: { ...night, sunWm2: 400, gapPercent: 100 } },
  { why: 'bottom heat under a cold house', inputs: { ...night, benchHeatWm2: 120, gapPercent: 20 } },
];
