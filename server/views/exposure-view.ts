// What the plants of a batch were exposed to, as it is sent to people.
import type { ExposurePart, ExposureView } from '../../shared/api/exposure.ts';
import type { InsideCorridor, PartExposure } from '../../shared/exposure/part-exposure.ts';
import { utcText } from '../../shared/units.ts';
import type { BatchFigures } from '../record/measure-batch.ts';
import { rounded } from './rounded.ts';

export function viewExposure(batchId: string, { days, stages, whole }: BatchFigures): ExposureView {
  return {
    batchId,
    days: days.map((one) => ({ day: one.day, ...viewPart(one) })),
    stages: stages.map((one) => ({ stage: one.stage, ...viewPart(one) })),
    whole: whole === null ? null : viewPart(whole),
  };
}

function viewPart(part: PartExposure): ExposurePart {
  const { temperature, humidity } = part.insideCorridor;
  return {
    from: utcText(part.fromMs),
    to: utcText(part.toMs),
    temperature: viewSpread(part.temperature),
    humidity: viewSpread(part.humidity),
    insideCorridor: { temperature: viewInside(temperature), humidity: viewInside(humidity) },
    minutesAbove: viewEach(part.minutesAbove),
    degreeHoursAbove: viewEach(part.degreeHoursAbove),
    vpdKpaHours: toSix(part.vpdHours),
    unknownHours: toSix(part.unknownHours),
  };
}

function viewSpread({ mean, min, max }: PartExposure['temperature']): ExposurePart['temperature'] {
  return { mean: rounded(mean, 3), min: rounded(min, 3), max: rounded(max, 3) };
}

function viewInside({ insideHours, judgedHours, share }: InsideCorridor) {
  return { hours: toSix(insideHours), judgedHours: toSix(judgedHours), share: rounded(share, 6) };
}

function viewEach(figures: Readonly<Record<string, number>>): Record<string, number> {
  return Object.fromEntries(Object.entries(figures).map(([limit, value]) => [limit, toSix(value)]));
}

function toSix(value: number): number {
  return Number(value.toFixed(6));
}
