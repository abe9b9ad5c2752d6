// Whether the film over a chamber is expected to be wet inside: dew forms where the chamber's dew point is above the film's temperature.
// It expects, it does not see: water left from before keeps a film wet in air that forms no dew. The look of a person decides.
import { accuracyInWetAir, airUncertainty, type ProbeAccuracy, usualProbe } from './air-uncertainty.ts';
import { dewPoint, vapourKpa } from './vapour.ts';

export type FilmBasis = 'film probe' | 'house air, an estimate' | 'nothing to tell by';

/** What is heard around the film, °C and %RH; null = not heard. */
export interface FilmScene {
  readonly temperature: number | null;
  readonly humidity: number | null;
  /** Of a probe under the film. */
  readonly filmTemperature: number | null;
  readonly houseTemperature: number | null;
}

/** Margins are °C of dew point above film; all three are null where they cannot be told. */
export interface FilmExpectation {
  readonly expected: 'wet' | 'dry' | 'unknown';
  readonly margin: number | null;
  /** The least and the greatest that the uncertainty allows: where zero lies between them, or on one of them, the film is `unknown`. */
  readonly leastMargin: number | null;
  readonly greatestMargin: number | null;
  readonly basis: FilmBasis;
}

/** A film inside calm tent air and outside stirred house air stands nearer to the house: at most half-way to the chamber (ours). */
const FARTHEST_FROM_HOUSE = 0.5;
/** Sun on the film warms it, a clear sky above the house cools it, °C: what an estimate from house air cannot know (ours). */
const SUN_AND_SKY = 0.5;

interface FilmTemperature {
  readonly basis: FilmBasis;
  readonly value: number;
  readonly coldest: number;
  readonly warmest: number;
  /** Independent ± of the figure, °C. */
  readonly plusMinus: number;
}

/**
 * What to expect of the film now. With a film probe the uncertainty is that of dew point and probe; without one house air stands in: the film
 * is taken to be between house air and half-way to the chamber. The margin's ± are joined as the root of the sum of squares.
 */
export function expectCondensation(
  scene: FilmScene,
  accuracy: ProbeAccuracy = accuracyInWetAir(usualProbe),
): FilmExpectation {
  const { temperature, humidity } = scene;
  const film = filmTemperature(scene, accuracy);
  if (temperature === null || humidity === null || film === null) return unknown(film?.basis ?? 'nothing to tell by');
  const dew = dewPoint(vapourKpa(temperature, humidity));
  if (dew === null) return { ...unknown(film.basis), expected: 'dry' };
  // Pressure changes nothing here: dew point and its ± are the same at any altitude.
  const dewPlusMinus = airUncertainty({ temperature, humidity, altitudeM: 0 }, accuracy).dewPoint ?? 0;
  const zone = Math.hypot(dewPlusMinus, film.plusMinus);
  const leastMargin = dew - film.warmest - zone;
  const greatestMargin = dew - film.coldest + zone;
  const expected = leastMargin > 0 ? 'wet' : greatestMargin < 0 ? 'dry' : 'unknown';
  return { expected, margin: dew - film.value, leastMargin, greatestMargin, basis: film.basis };
}

function filmTemperature(scene: FilmScene, accuracy: ProbeAccuracy): FilmTemperature | null {
  const { filmTemperature: film, houseTemperature: house, temperature } = scene;
  if (film !== null) return { basis: 'film probe', ...level(film, film), plusMinus: accuracy.temperature };
  if (house === null) return null;
  const halfWay = temperature === null ? house : house + FARTHEST_FROM_HOUSE * (temperature - house);
  const plusMinus = Math.hypot(accuracy.temperature, SUN_AND_SKY);
  return { basis: 'house air, an estimate', ...level(house, halfWay), plusMinus };
}

function level(value: number, other: number): Pick<FilmTemperature, 'value' | 'coldest' | 'warmest'> {
  return { value, coldest: Math.min(value, other), warmest: Math.max(value, other) };
}

function unknown(basis: FilmBasis): FilmExpectation {
  return { expected: 'unknown', margin: null, leastMargin: null, greatestMargin: null, basis };
}
