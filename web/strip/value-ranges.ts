// Which values a strip has room for: the usual ones of a healing tent, and more where something that is drawn leaves them. Pure.
import type { ClimateSeries, ForecastView } from '../../shared/api/chambers.ts';
import { type StripKind, type ValueRange, widenRange } from './lanes.ts';

export interface ValueRanges {
  readonly humidity: ValueRange;
  readonly temperature: ValueRange;
}

/** The ranges of a strip of this kind, °C and %RH. `forecast`: as far as it is drawn. */
export function valueRanges(series: ClimateSeries, kind: StripKind, forecast: ForecastView | null): ValueRanges {
  const { humidity, temperature, houseHumidity, houseTemperature, corridor } = series;
  const humidityColumns = [humidity.min, humidity.max, houseHumidity, corridor.humidity.low];
  const temperatureColumns = [
    ...[temperature.min, temperature.max, corridor.temperature.low, corridor.temperature.highHigh],
    ...[kind === 'chart' ? houseTemperature : [], forecast?.low ?? [], forecast?.high ?? []],
  ];
  return {
    humidity: widenRange({ low: 50, high: 100 }, humidityColumns, 10),
    temperature: widenRange({ low: 16, high: 32 }, temperatureColumns, 4),
  };
}
