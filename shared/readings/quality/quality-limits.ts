// The numbers of the quality tests, with where each is from, and the shape in which they may be changed.
// "Greenhouse data": six weeks of open 5-minute readings of real greenhouse air (reference compartment, Bleiswijk, NL, 2022).
import { z } from 'zod';
import { HOUR_MS, MINUTE_MS } from '../../units.ts';

const finite = z.number().finite();
const durationMs = z.number().positive().finite();

export const grossRangeLimitsSchema = z
  .strictObject({ sensorLow: finite, userLow: finite, userHigh: finite, sensorHigh: finite })
  .refine((it) => it.sensorLow <= it.userLow && it.userLow < it.userHigh && it.userHigh <= it.sensorHigh, {
    message: 'the user span must lie inside the sensor span, its low end below its high end',
  });
export type GrossRangeLimits = z.infer<typeof grossRangeLimitsSchema>;

export const spikeLimitsSchema = z
  .strictObject({
    method: z.enum(['average', 'differential']),
    suspect: z.number().positive(),
    fail: z.number().positive(),
    longestGapMs: durationMs.describe('A neighbour further away than this says nothing about a spike'),
  })
  .refine((it) => it.suspect <= it.fail, { message: 'the suspect limit must not exceed the fail limit' });
export type SpikeLimits = z.infer<typeof spikeLimitsSchema>;

export const rateLimitsSchema = z.strictObject({
  perMinute: z.number().positive(),
  shortestMs: durationMs.describe('Shorter intervals count as this long, so that one step of resolution is not a rate'),
});
export type RateLimits = z.infer<typeof rateLimitsSchema>;

export const flatLineLimitsSchema = z
  .strictObject({
    tolerance: z.number().positive(),
    suspectMs: durationMs,
    failMs: durationMs,
    longestGapMs: durationMs.describe('A longer silence starts a new run'),
    parkedAt: finite.nullable().describe('From this value up a constant reading is not by itself flat; null = nowhere'),
  })
  .refine((it) => it.suspectMs <= it.failMs, { message: 'the suspect time must not exceed the fail time' });
export type FlatLineLimits = z.infer<typeof flatLineLimitsSchema>;

export const wetSensorLimitsSchema = z.strictObject({
  pinnedAt: finite,
  impossibleAbove: finite,
  saturatedMs: durationMs.describe('Pinned this long = saturated or wet: unknown, high. Said, never flagged'),
  pinnedMs: durationMs,
  warming: z.number().positive().describe('°C of warming that air at its top cannot follow'),
  longestGapMs: durationMs,
});
export type WetSensorLimits = z.infer<typeof wetSensorLimitsSchema>;

export const neighbourLimitsSchema = z.strictObject({
  temperature: z.number().positive(),
  humidity: z.number().positive(),
});
export type NeighbourLimits = z.infer<typeof neighbourLimitsSchema>;

export const quantityLimitsSchema = z.strictObject({
  grossRange: grossRangeLimitsSchema,
  spike: spikeLimitsSchema,
  rateOfChange: rateLimitsSchema,
  flatLine: flatLineLimitsSchema,
});
export type QuantityLimits = z.infer<typeof quantityLimitsSchema>;

export const qualityLimitsSchema = z.strictObject({
  temperature: quantityLimitsSchema,
  humidity: quantityLimitsSchema,
  wetSensor: wetSensorLimitsSchema,
  neighbours: neighbourLimitsSchema,
});
export type QualityLimits = z.infer<typeof qualityLimitsSchema>;

const temperature: QuantityLimits = {
  // Sensor: usual span of digital capacitive probes; 85 °C is a common power-on value, −45 and 130 °C are all-bits-equal words (from memory).
  // User, ours: a frozen house up to a black tent in full sun. Wide on purpose: real heat must never be taken out of the heat watch.
  grossRange: { sensorLow: -40, userLow: -5, userHigh: 60, sensorHigh: 80 },
  // Ours: the sharpest real peak in the greenhouse data is 3.1 °C (readings 4 to 6 min apart). Differential: see spike.ts.
  spike: { method: 'differential', suspect: 4, fail: 8, longestGapMs: 6 * MINUTE_MS },
  // Ours: three times what a closed tent gains in full sun (about 1 °C a minute); the greenhouse data reach 0.92.
  rateOfChange: { perMinute: 3, shortestMs: MINUTE_MS },
  flatLine: {
    // Ours: equal at the usual resolution of 0.01 to 0.1 °C.
    tolerance: 0.01,
    // A three-hour rule flags at most 0.1 % of real 5-minute greenhouse readings (published values, quality tests).
    suspectMs: 3 * HOUR_MS,
    // Ours: twice that.
    failMs: 6 * HOUR_MS,
    // Ours.
    longestGapMs: HOUR_MS,
    parkedAt: null,
  },
};

const humidity: QuantityLimits = {
  // Sensor, ours: capacitive probes may report a little beyond 100; below 0 only when broken. User: 100 is where air ends; below 5 (ours) no
  // greenhouse has been, but a loose wire reads 0.
  grossRange: { sensorLow: 0, userLow: 5, userHigh: 100, sensorHigh: 110 },
  // Ours: the sharpest real dip in the greenhouse data, at a vent opening, is 22.6 %RH; a look into a tent is much the same.
  spike: { method: 'differential', suspect: 25, fail: 40, longestGapMs: 6 * MINUTE_MS },
  // Ours: twice the fastest in the greenhouse data (8.5); a film thrown open may exceed it for one reading.
  rateOfChange: { perMinute: 20, shortestMs: MINUTE_MS },
  flatLine: {
    tolerance: 0.01,
    // Ours, twice the temperature rule: nearly saturated air hardly moves, and many probes report whole or tenth per cent. In the greenhouse
    // data the longest honest constant stretch is 3.8 h.
    suspectMs: 6 * HOUR_MS,
    failMs: 12 * HOUR_MS,
    longestGapMs: HOUR_MS,
    // Humidity parked at 100 % is not by itself flat (published values, quality tests): wet-sensor.ts judges that.
    parkedAt: 99.5,
  },
};

/** Starting values for near-saturated air and usual capacitive probes. */
export const defaultQualityLimits: QualityLimits = {
  temperature,
  humidity,
  wetSensor: {
    // "At least 99.5 % without variation for 30 min = saturated or wet, unknown, high" (notes on sensors in wet air).
    pinnedAt: 99.5,
    saturatedMs: 30 * MINUTE_MS,
    // Air cannot exceed saturation over water by a measurable amount.
    impossibleAbove: 100,
    // Ours: "for hours", the same three as the flat line.
    pinnedMs: 3 * HOUR_MS,
    // Ours: 3 °C of warming at the same vapour takes saturated air at 22 °C to 83 %RH (computed, FAO-56 eq. 11).
    warming: 3,
    // Ours.
    longestGapMs: HOUR_MS,
  },
  // Two independent probes of a chamber: told above these (notes on sensors in wet air).
  neighbours: { temperature: 0.5, humidity: 4 },
};

/** For a probe under the film: it stands in condensation, so a top that stays while it warms is what it should read, not a wet sensor. */
export const filmQualityLimits: QualityLimits = {
  ...defaultQualityLimits,
  wetSensor: { ...defaultQualityLimits.wetSensor, pinnedMs: Number.MAX_SAFE_INTEGER, impossibleAbove: 110 },
};

/** The limits for a probe by its place; one not placed yet is judged as one in the canopy. */
export function qualityLimitsAt(place: 'canopy' | 'film' | 'house' | null): QualityLimits {
  return place === 'film' ? filmQualityLimits : defaultQualityLimits;
}
