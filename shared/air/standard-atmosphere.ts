// Air pressure from the site's altitude. It never knows the day's weather, which moves the true pressure by some 3 kPa.

const SEA_LEVEL_KPA = 101.325;
/** The formula holds in the troposphere; outside, the border value stands so that the result is always a pressure. */
const LOWEST_M = -5_000;
const HIGHEST_M = 11_000;

/** Pressure of the ISA standard atmosphere, kPa, at an altitude in m (ASHRAE Fundamentals 2017 ch. 1 eq. 3; −5,000 to 11,000 m). */
export function pressureAtAltitudeKpa(altitudeM: number): number {
  const altitude = Math.min(HIGHEST_M, Math.max(LOWEST_M, altitudeM));
  return SEA_LEVEL_KPA * (1 - 2.25577e-5 * altitude) ** 5.2559;
}
