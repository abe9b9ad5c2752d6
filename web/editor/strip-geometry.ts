// Where a handle stands on the strip of a plan, and what a way of the pointer means. Pure; the plot draws with the same lanes and ranges.
import { type StripLayout, scaleForLane } from '../strip/lanes.ts';
import type { ValueRanges } from '../strip/value-ranges.ts';
import type { Quantity } from './edit-draft.ts';

const lanes = {
  kind: 'plan',
  humidity: { top: 0.02, bottom: 0.44 },
  marks: { top: 0.46, bottom: 0.56 },
  temperature: { top: 0.62, bottom: 0.98 },
  textPx: 12,
} as const;

/** Of the whole plan: room over the plot for the handles of the borders. */
export const wholeLayout: StripLayout = { ...lanes, padding: [56, 24, 24, 34] };

/** Of one stage: room also for the handles of the highest limits, and under the plot for those of the lowest. */
export const stageLayout: StripLayout = { ...lanes, padding: [94, 24, 44, 34] };

export interface StripBox {
  readonly width: number;
  readonly height: number;
  readonly layout: StripLayout;
  /** Hours after closing at the left and right edge. */
  readonly fromHours: number;
  readonly toHours: number;
  readonly ranges: ValueRanges;
}

function plotSize({ width, height, layout }: StripBox): readonly [width: number, height: number] {
  const [top, right, bottom, left] = layout.padding;
  return [Math.max(1, width - left - right), Math.max(1, height - top - bottom)];
}

/** CSS pixels from the left edge of the strip. */
export function xOfHours(hours: number, box: StripBox): number {
  const [plotWidth] = plotSize(box);
  return box.layout.padding[3] + (plotWidth * (hours - box.fromHours)) / (box.toHours - box.fromHours);
}

/** Hours for each CSS pixel to the right. */
export function hoursPerPx(box: StripBox): number {
  return (box.toHours - box.fromHours) / plotSize(box)[0];
}

/** CSS pixels from the top edge of the strip. */
export function yOfValue(value: number, quantity: Quantity, box: StripBox): number {
  const [, plotHeight] = plotSize(box);
  const [min, max] = scaleForLane(box.ranges[quantity], box.layout[quantity]);
  return box.layout.padding[0] + (plotHeight * (max - value)) / (max - min);
}

/** The quantity's unit for each CSS pixel upward. */
export function valuePerPx(quantity: Quantity, box: StripBox): number {
  const [min, max] = scaleForLane(box.ranges[quantity], box.layout[quantity]);
  return (max - min) / plotSize(box)[1];
}
