// Water vapour in air: saturation pressure, its inverse the dew point, humidity ratio and VPD.
// All of it over liquid water. Ice is out of scope: a healing chamber does not freeze.

const KELVIN_OFFSET = 273.15;
/** Ratio of the molar masses of water and dry air (ASHRAE Fundamentals 2017 ch. 1). */
const MASS_RATIO = 0.621945;
/** Outside these °C the equation is held at its value on the border, so that any number in gives a finite number out. */
const LOWEST = -100;
const HIGHEST = 200;

/** The saturation equation has ended once Newton's step is below this, in °C: far under any sensor's noise. */
const DEW_POINT_STEP = 1e-11;

/**
 * Saturation vapour pressure over liquid water, kPa, at a temperature in °C.
 * Hyland & Wexler 1983, as printed in ASHRAE Fundamentals 2017 ch. 1 eq. 6; meant for 0–60 °C.
 * Below 0 °C it goes on over supercooled water (not ice); below −100 and above 200 °C it stays at the border value.
 */
export function saturationKpa(temperature: number): number {
  return Math.exp(logSaturationPa(kelvin(temperature))) / 1000;
}

/**
 * Dew point, °C, of air with this vapour pressure in kPa: the exact inverse of `saturationKpa` between −100 and 200 °C.
 * Below 0 °C it is the dew point over water, not the frost point. `null` when there is no vapour, since dry air has none.
 */
export function dewPoint(vapourKpa: number): number | null {
  if (!(vapourKpa > 0)) return null;
  const target = Math.log(vapourKpa) + Math.log(1000);
  let t = hold(firstGuess(vapourKpa));
  for (let i = 0; i < 20; i++) {
    const step = (target - logSaturationPa(kelvin(t))) / logSaturationSlope(kelvin(t));
    t = hold(t + step);
    if (Math.abs(step) < DEW_POINT_STEP) break;
  }
  return t;
}

/** Vapour pressure, kPa, from °C and %RH. Humidity is held to 0–100: a wet sensor that reads 103 means saturated air. */
export function vapourKpa(temperature: number, humidity: number): number {
  return (saturationKpa(temperature) * Math.min(100, Math.max(0, humidity))) / 100;
}

/** Vapour pressure deficit, kPa, from °C and %RH; never negative, 0 at 100 %RH and above. */
export function vpdKpa(temperature: number, humidity: number): number {
  return saturationKpa(temperature) - vapourKpa(temperature, humidity);
}

/**
 * Humidity ratio, kg of water to 1 kg of dry air (ASHRAE Fundamentals 2017 ch. 1 eq. 20).
 * Infinite where the vapour alone makes up the whole pressure: that is steam, no longer air.
 */
export function humidityRatio(vapourKpa: number, pressureKpa: number): number {
  if (vapourKpa >= pressureKpa) return Number.POSITIVE_INFINITY;
  return (MASS_RATIO * vapourKpa) / (pressureKpa - vapourKpa);
}

function logSaturationPa(t: number): number {
  return (
    -5.8002206e3 / t +
    1.3914993 +
    t * (-4.8640239e-2 + t * (4.1764768e-5 + t * -1.4452093e-8)) +
    6.5459673 * Math.log(t)
  );
}

function logSaturationSlope(t: number): number {
  return 5.8002206e3 / (t * t) - 4.8640239e-2 + t * (2 * 4.1764768e-5 + t * -3 * 1.4452093e-8) + 6.5459673 / t;
}

/** The Magnus form of FAO-56 eq. 11 turned round: within a degree where it matters, Newton does the rest. */
function firstGuess(vapourKpa: number): number {
  const x = Math.log(vapourKpa / 0.6108);
  return x < 17 ? (237.3 * x) / (17.27 - x) : HIGHEST;
}

function hold(temperature: number): number {
  return Math.min(HIGHEST, Math.max(LOWEST, temperature));
}

function kelvin(temperature: number): number {
  return hold(temperature) + KELVIN_OFFSET;
}
