// Alarms as spans in the lane they speak of: a red bar as long as the alarm lasted, with hatching over the lane.
import { isAboutTemperature } from '../alarm-sentence.ts';
import { inks } from './inks.ts';
import type { Lane, StripLayout } from './lanes.ts';
import { eventsOf } from './strip-data.ts';
import { clipped, hatch, type Painter } from './surface.ts';

/** The lane of the quantity an alarm speaks of; one that speaks of no air (a silent probe, a missed check) stands under the marks. */
export function laneOfRule(rule: string, layout: StripLayout): Lane {
  if (isAboutTemperature(rule)) return layout.temperature;
  return isAboutHumidity(rule) ? layout.humidity : layout.marks;
}

function isAboutHumidity(rule: string): boolean {
  return rule === 'dry' || rule === 'wet' || rule === 'vpd';
}

export const paintAlarms: Painter = (surface, { data, layout }) => {
  const { ctx, ratio } = surface;
  clipped(surface, () => {
    for (const alarm of eventsOf(data, 'alarm')) {
      const left = surface.x(Date.parse(alarm.at) / 1000);
      const untilSec = alarm.until === null ? (data.nowSec ?? data.toSec) : Date.parse(alarm.until) / 1000;
      const width = Math.max(2 * ratio, surface.x(untilSec) - left);
      const lane = laneOfRule(alarm.what, layout);
      const top = surface.fractionY(lane.top);
      const height = surface.fractionY(lane.bottom) - top;
      if (lane !== layout.marks) {
        ctx.fillStyle = inks.alarmWash;
        ctx.fillRect(left, top, width, height);
        ctx.strokeStyle = inks.alarmWash;
        ctx.lineWidth = ratio;
        hatch(surface, { left, top, width, height }, 4);
      }
      ctx.fillStyle = inks.now;
      ctx.fillRect(left, top + height - 2.5 * ratio, width, 2.5 * ratio);
    }
  });
};
