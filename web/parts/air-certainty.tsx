// What the shown climate is worth, in one quiet line each: the ± of VPD and dew point, and whether the film is expected to be wet.
import type { ClimateNow } from '../../shared/api/chambers.ts';
import { words } from '../strings.ts';

const { certainty } = words;

function plusMinus(value: number, uncertainty: number, digits: number): string {
  return `${value.toFixed(digits)} ± ${uncertainty.toFixed(digits)}`;
}

function UncertaintyLine({ climate }: { readonly climate: ClimateNow }) {
  const { vpdKpa, vpdKpaUncertainty, dewPoint, dewPointUncertainty } = climate;
  if (vpdKpa === null || vpdKpaUncertainty === null || dewPoint === null || dewPointUncertainty === null) return null;
  return (
    <p class="air">
      <span>{certainty.vpd(plusMinus(vpdKpa, vpdKpaUncertainty, 2))}</span>
      <span>{certainty.dewPoint(plusMinus(dewPoint, dewPointUncertainty, 1))}</span>
    </p>
  );
}

function FilmLine({ film }: { readonly film: ClimateNow['film'] }) {
  if (film.margin === null) return null;
  const side = film.margin < 0 ? certainty.below : certainty.above;
  return (
    <p class="air">
      <span>{certainty.film[film.expected]}</span>
      <span>{side(Math.abs(film.margin).toFixed(1), certainty.basis[film.basis])}</span>
    </p>
  );
}

export function AirCertainty({ climate }: { readonly climate: ClimateNow }) {
  return (
    <>
      <UncertaintyLine climate={climate} />
      <FilmLine film={climate.film} />
    </>
  );
}
