// Durations in milliseconds and the two temperature scales. Everything inside is °C, %RH, kPa and milliseconds since the epoch.

export const SECOND_MS = 1_000;
export const MINUTE_MS = 60_000;
export const HOUR_MS = 3_600_000;
export const DAY_MS = 86_400_000;

/** °F → °C. */
export function celsiusFromFahrenheit(fahrenheit: number): number {
  return ((fahrenheit - 32) * 5) / 9;
}

/** °C → °F, for display only. */
export function fahrenheitFromCelsius(celsius: number): number {
  return (celsius * 9) / 5 + 32;
}

/** RFC 3339 UTC text of an instant; whole seconds are written without a fraction. */
export function utcText(ms: number): string {
  return new Date(ms).toISOString().replace('.000Z', 'Z');
}
