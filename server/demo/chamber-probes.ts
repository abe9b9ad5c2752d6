// The probes of one simulated chamber: two at canopy height, perhaps one under the film, one in the house.
import { humidityOf } from './moist-air.ts';
import { createNoise } from './seeded-noise.ts';
import { createSensor, type ProbeValues, type SimulatedSensor } from './sensor-effects.ts';
import type { TentState } from './tent-flows.ts';
import type { Weather } from './weather.ts';

export interface ProbeSet {
  /** The surroundings of the probes for the next `seconds`. */
  readonly follow: (tent: TentState, weather: Weather, seconds: number) => void;
  readonly read: () => {
    readonly canopy: readonly [ProbeValues, ProbeValues];
    readonly film: ProbeValues | null;
    readonly house: ProbeValues;
  };
}

/** Ours: the second canopy probe hangs nearer to the end of the tent, a little cooler and drier than the first. */
const BETWEEN_CANOPY_PROBES = { temperature: -0.18, humidity: -0.7 };
/** A probe clipped to the film feels nearly nothing but the film. */
const FILM_SHARE = 0.9;

/** Probes whose offsets (within ±0.1 °C and ±0.3 %RH) and noise depend on `seed` only. */
export function createProbes(seed: number, withFilm: boolean): ProbeSet {
  const make = sensorMaker(seed);
  const canopy = [make(1, { temperature: 0, humidity: 0 }), make(2, BETWEEN_CANOPY_PROBES)] as const;
  const house = make(3, { temperature: 0, humidity: 0 });
  const film = withFilm ? make(4, { temperature: 0, humidity: 0 }) : null;
  return {
    follow: (tent, weather, seconds) => {
      const humidity = humidityOf(tent.airTemperature, tent.humidityRatio);
      for (const sensor of canopy) sensor.follow(tent.airTemperature, humidity, seconds);
      house.follow(weather.houseTemperature, weather.houseHumidity, seconds);
      if (film !== null) followFilm(film, tent, seconds);
    },
    read: () => ({ canopy: [canopy[0].read(), canopy[1].read()], film: film?.read() ?? null, house: house.read() }),
  };
}

function sensorMaker(seed: number): (place: number, extra: ProbeValues) => SimulatedSensor {
  return (place, extra) => {
    const noise = createNoise(seed * 16 + place);
    return createSensor({
      seed: seed * 16 + place + 8,
      temperatureOffset: extra.temperature + 0.2 * (noise.uniform() - 0.5),
      humidityOffset: extra.humidity + 0.6 * (noise.uniform() - 0.5),
    });
  };
}

function followFilm(film: SimulatedSensor, tent: TentState, seconds: number): void {
  const temperature = FILM_SHARE * tent.filmTemperature + (1 - FILM_SHARE) * tent.airTemperature;
  film.follow(temperature, Math.min(100, humidityOf(temperature, tent.humidityRatio)), seconds);
}
