// What the shown climate is worth, in words: ± of VPD and dew point, and whether the film is expected to be wet. Pure.
// Temperatures follow the site's unit; a ± and a margin are differences, so they are scaled and never shifted.
import type { ClimateNow, FilmView } from '../shared/api/chambers.ts';
import { numberText, temperatureText, vpdText } from './quantities.ts';
import { words } from './strings.ts';
import { differenceInUnit, temperatureUnit } from './temperature-unit.ts';

const { certainty } = words;

type Uncertain = Pick<ClimateNow, 'vpdKpa' | 'vpdKpaUncertainty' | 'dewPoint' | 'dewPointUncertainty'>;

/** A difference between temperatures, given in °C, with one digit in the site's unit: "0.5", "0.9". */
function differenceText(celsius: number): string {
  return numberText(differenceInUnit(celsius, temperatureUnit.value), 1);
}

/** VPD and dew point, each with its ±; nothing while one of them is not known. */
export function uncertaintyWords(climate: Uncertain): readonly string[] {
  const { vpdKpa, vpdKpaUncertainty, dewPoint, dewPointUncertainty } = climate;
  if (vpdKpa === null || vpdKpaUncertainty === null || dewPoint === null || dewPointUncertainty === null) return [];
  const vpd = certainty.plusMinus(vpdText(vpdKpa), vpdText(vpdKpaUncertainty));
  const dew = certainty.plusMinus(temperatureText(dewPoint), differenceText(dewPointUncertainty));
  return [certainty.vpd(vpd), certainty.dewPoint(dew, temperatureUnit.value)];
}

/** What is expected of the film, and how far the dew point is from it; nothing where it cannot be told. */
export function filmWords(film: FilmView): readonly string[] {
  if (film.margin === null) return [];
  const side = film.margin < 0 ? certainty.below : certainty.above;
  const margin = differenceText(Math.abs(film.margin));
  return [certainty.film[film.expected], side(margin, temperatureUnit.value, certainty.basis[film.basis])];
}
