// A profile as a strip: the plan by healing hours, without measured values. Times of day and holds are not in it; house level is
// drawn at the number the profile falls back on.
import type { ChartEvent, ClimateSeries } from '../../shared/api/chambers.ts';
import type { StageSpan } from '../../shared/healing/batch-clock.ts';
import { makeCorridor } from '../../shared/healing/corridor.ts';
import type { CheckPlan, ProfileDocument } from '../../shared/healing/profile.ts';
import { HOUR_MS, SECOND_MS, utcText } from '../../shared/units.ts';
import { words } from '../strings.ts';

const bucketHours = 0.5;

/** The stages from closing on at their hours, as if the chamber had been closed at the epoch; loading is before it and is left out. */
export function nominalSpans(profile: ProfileDocument): readonly StageSpan[] {
  const stages = profile.stages.filter((plan) => plan.stage !== 'loading');
  return stages.map(({ stage, afterHours }, index) => ({
    stage,
    startMs: afterHours * HOUR_MS,
    endMs: (stages[index + 1]?.afterHours ?? profile.endsAfterHours) * HOUR_MS,
  }));
}

function checkHours(check: CheckPlan, spans: readonly StageSpan[], endHours: number): readonly number[] {
  const begin = (spans.find((span) => span.stage === check.atStage)?.startMs ?? 0) / HOUR_MS;
  const first = begin + (check.afterHours ?? 0);
  if (check.everyHours === undefined) return [first];
  const until = check.untilHours ?? endHours;
  const hours: number[] = [];
  for (let hour = first; hour <= until && hour < endHours; hour += check.everyHours) hours.push(hour);
  return hours;
}

/** The plan as a series that begins at the epoch: hour 0 is closing. */
export function planSeries(profile: ProfileDocument): ClimateSeries {
  const spans = nominalSpans(profile);
  const corridorAt = makeCorridor(profile, spans, { temperature: null, humidity: null });
  const count = Math.ceil(profile.endsAfterHours / bucketHours);
  const corridors = Array.from({ length: count }, (_, index) => corridorAt((index + 0.5) * bucketHours * HOUR_MS));
  const nothing = new Array<null>(count).fill(null);
  const unheard = { min: nothing, mean: nothing, max: nothing };
  return {
    startsAt: utcText(0),
    bucketSeconds: (bucketHours * HOUR_MS) / SECOND_MS,
    now: utcText(0),
    temperature: unheard,
    humidity: unheard,
    ...{ houseHumidity: nothing, houseTemperature: nothing, badShare: nothing, silenceSeconds: 0 },
    corridor: {
      temperature: {
        low: corridors.map((one) => one?.temperature.low ?? null),
        high: corridors.map((one) => one?.temperature.high ?? null),
        highHigh: corridors.map((one) => one?.temperature.highHigh ?? null),
      },
      humidity: {
        low: corridors.map((one) => one?.humidity.low ?? null),
        high: corridors.map((one) => one?.humidity.high ?? null),
      },
    },
    events: [...spans.map(stageEvent), ...profile.checks.flatMap((check) => checkEvents(check, spans, profile))],
    forecast: null,
  };
}

function stageEvent({ stage, startMs, endMs }: StageSpan): ChartEvent {
  const until = endMs === null ? null : utcText(endMs);
  return { at: utcText(startMs), until, kind: 'stage', what: stage, label: words.stages[stage] };
}

function checkEvents(check: CheckPlan, spans: readonly StageSpan[], profile: ProfileDocument): readonly ChartEvent[] {
  if (check.atStage === 'loading') return [];
  return checkHours(check, spans, profile.endsAfterHours).map((hours) => ({
    ...{ at: utcText(hours * HOUR_MS), until: null, kind: 'check', what: 'to-come' },
    label: check.question,
  }));
}
