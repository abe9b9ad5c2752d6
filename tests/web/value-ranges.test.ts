// Which values a strip has room for.
import { describe, expect, it } from 'vitest';
import type { ClimateSeries, ForecastView } from '../../shared/api/chambers.ts';
import { standardProfiles } from '../../shared/healing/standard-profiles.ts';
import { planSeries } from '../../web/strip/plan-series.ts';
import { valueRanges } from '../../web/strip/value-ranges.ts';

const usual = { humidity: { low: 50, high: 100 }, temperature: { low: 16, high: 32 } };

function seriesOf(change: Partial<ClimateSeries>): ClimateSeries {
  const nothing = [null];
  const unheard = { min: nothing, mean: nothing, max: nothing };
  return {
    ...{ startsAt: '2026-03-02T07:00:00Z', bucketSeconds: 60, now: '2026-03-02T07:00:00Z', events: [], forecast: null },
    ...{ temperature: unheard, humidity: unheard, houseHumidity: nothing, houseTemperature: nothing },
    ...{ badShare: nothing, silenceSeconds: 600 },
    corridor: {
      temperature: { low: nothing, high: nothing, highHigh: nothing },
      humidity: { low: nothing, high: nothing },
    },
    ...change,
  };
}

const measured = (min: number, max: number) => ({ min: [min], mean: [(min + max) / 2], max: [max] });
const foretold: ForecastView = { from: '2026-03-02T07:00:00Z', minutes: [0], low: [14], middle: [30], high: [41] };

describe('a strip has room', () => {
  it.each<[string, Partial<ClimateSeries>, Parameters<typeof valueRanges>[1], ForecastView | null, object]>([
    ['for the usual values of a tent when nothing was heard', {}, 'chart', null, {}],
    ['for cold and hot air', { temperature: measured(11, 35) }, 'row', null, { temperature: { low: 8, high: 36 } }],
    ['for dry air', { humidity: measured(34, 90) }, 'row', null, { humidity: { low: 30, high: 100 } }],
    ['for the humidity of the house', { houseHumidity: [41] }, 'row', null, { humidity: { low: 40, high: 100 } }],
    [
      'on a chart for the house’s warmth',
      { houseTemperature: [38] },
      'chart',
      null,
      { temperature: { low: 16, high: 40 } },
    ],
    ['on a row not: it is not drawn there', { houseTemperature: [38] }, 'row', null, {}],
    ['for what is foretold', {}, 'chart', foretold, { temperature: { low: 12, high: 44 } }],
    ['not for what is foretold and not drawn', { forecast: foretold }, 'chart', null, {}],
  ])('%s', (_why, change, kind, forecast, found) => {
    expect(valueRanges(seriesOf(change), kind, forecast)).toEqual({ ...usual, ...found });
  });

  it.each(standardProfiles.map(({ id, document }) => [id, document] as const))(
    'for every limit of the plan of %s, where its handles stand',
    (_, document) => {
      const series = planSeries(document);
      const { humidity, temperature } = valueRanges(series, 'plan', null);
      const { corridor } = series;
      for (const low of corridor.humidity.low) expect(low ?? humidity.low).toBeGreaterThanOrEqual(humidity.low);
      for (const low of corridor.temperature.low)
        expect(low ?? temperature.low).toBeGreaterThanOrEqual(temperature.low);
      for (const top of corridor.temperature.highHigh)
        expect(top ?? temperature.high).toBeLessThanOrEqual(temperature.high);
    },
  );
});
