// `air`: everything that is said about air of one temperature and humidity.
import { type AirState, describeAir } from '../../shared/air/describe-air.ts';
import { type Command, print } from './command.ts';
import { parseOptions, readNumber, requireOption } from './parse-options.ts';

const usage = `Usage: npm run takewell -- air --temperature °C --humidity %RH [--altitude m] [--json]

Describes air: saturation and vapour pressure, VPD, dew point, wet bulb, absolute humidity, humidity ratio.

  --temperature   °C, -40 to 80
  --humidity      %RH, 0 to 100
  --altitude      height of the site above the sea in m, -430 to 5000 (0 when not given)
  --json          one JSON value
`;

export const air: Command = {
  usage,
  async run(args, terminal) {
    const { options } = parseOptions(args, { temperature: 'text', humidity: 'text', altitude: 'text', json: 'flag' });
    const state = describeAir({
      temperature: readNumber(requireOption(options.temperature, 'temperature'), 'temperature', { min: -40, max: 80 }),
      humidity: readNumber(requireOption(options.humidity, 'humidity'), 'humidity', { min: 0, max: 100 }),
      altitudeM: readNumber(options.altitude ?? '0', 'altitude', { min: -430, max: 5000 }),
    });
    await print(terminal, options.json === true, state, sayAir(state));
    return 0;
  },
};

function sayAir(state: AirState): string[] {
  const rows: [string, number | null, string, number][] = [
    ['saturation pressure', state.saturationKpa, 'kPa', 4],
    ['vapour pressure', state.vapourKpa, 'kPa', 4],
    ['VPD', state.vpdKpa, 'kPa', 4],
    ['dew point', state.dewPoint, '°C', 2],
    ['wet bulb', state.wetBulb, '°C', 2],
    ['absolute humidity', state.absoluteHumidityGm3, 'g/m³', 2],
    ['humidity ratio', state.humidityRatio, 'kg/kg dry air', 5],
  ];
  return rows.map(([name, value, unit, digits]) => {
    const text = value === null ? 'none: the air is dry' : `${value.toFixed(digits)} ${unit}`;
    return `${name.padEnd(20)}${text}`;
  });
}
