// What the shown climate is worth: its ± from a usual probe's, and whether the film over it is expected to be wet.
import { airUncertainty, usualProbe } from '../../shared/air/air-uncertainty.ts';
import { expectCondensation } from '../../shared/air/condensation.ts';
import type { ClimateNow, FilmView } from '../../shared/api/chambers.ts';
import type { ChamberClimate } from '../../shared/readings/chamber-climate.ts';
import { chamberClimate } from '../../shared/readings/chamber-climate.ts';
import { type ProbeState, probeNow } from '../watch/probe-book.ts';
import { rounded } from './rounded.ts';

type Uncertainty = Pick<
  ClimateNow,
  'temperatureUncertainty' | 'humidityUncertainty' | 'vpdKpaUncertainty' | 'dewPointUncertainty'
>;

/** The ± of one usual probe at the shown temperature and humidity; null for what is not shown. */
export function viewUncertainty({ temperature, humidity }: ChamberClimate): Uncertainty {
  const own = {
    temperatureUncertainty: temperature === null ? null : usualProbe.temperature,
    humidityUncertainty: humidity === null ? null : usualProbe.humidity,
  };
  if (temperature === null || humidity === null) return { ...own, vpdKpaUncertainty: null, dewPointUncertainty: null };
  // Neither VPD nor dew point depends on pressure: any altitude will do.
  const { vpdKpa, dewPoint } = airUncertainty({ temperature, humidity, altitudeM: 0 }, usualProbe);
  return { ...own, vpdKpaUncertainty: rounded(vpdKpa, 4), dewPointUncertainty: rounded(dewPoint, 3) };
}

/** By the healthy film probes among the chamber's own, else by house air. */
export function viewFilm(
  { temperature, humidity }: ChamberClimate,
  own: readonly ProbeState[],
  houseTemperature: number | null,
  nowMs: number,
): FilmView {
  const { expected, margin, basis } = expectCondensation({
    temperature,
    humidity,
    filmTemperature: filmTemperature(own, nowMs),
    houseTemperature,
  });
  return { expected, margin: rounded(margin, 2), basis };
}

/** Median of the healthy probes under the film. */
function filmTemperature(own: readonly ProbeState[], nowMs: number): number | null {
  const film = own.filter(({ probe }) => probe.placement?.place === 'film').flatMap((state) => probeNow(state) ?? []);
  // Which of them are healthy is judged as in the canopy; only the place differs.
  return chamberClimate(
    film.map((one) => ({ ...one, place: 'canopy' as const })),
    nowMs,
    0,
  ).temperature;
}
