// The buttons that move a chart: four spans, then earlier, later, closer, wider, and back to how it was.
import { words } from '../strings.ts';

/** Hours before now, or everything. */
export type ZoomChoice = 1 | 6 | 24 | 'whole';

export interface ZoomActs {
  readonly earlier: () => void;
  readonly later: () => void;
  readonly closer: () => void;
  readonly wider: () => void;
  readonly toStart: () => void;
  readonly toNow: () => void;
  readonly reset: () => void;
}

interface Props {
  readonly choice: ZoomChoice | null;
  readonly hasBatch: boolean;
  readonly onChoose: (choice: ZoomChoice) => void;
  readonly acts: ZoomActs;
}

/** Drawn, since not every phone's letters have arrows. */
const signs = {
  earlier: 'M13 4 7 10l6 6',
  later: 'm7 4 6 6-6 6',
  closer: 'M10 4v12M4 10h12',
  wider: 'M4 10h12',
} as const;

export function ZoomButtons({ choice, hasBatch, onChoose, acts }: Props) {
  const spans: readonly [ZoomChoice, string][] = [
    [1, words.chart.hour],
    [6, words.chart.sixHours],
    [24, words.chart.day],
    ['whole', hasBatch ? words.chart.whole : words.chart.wholeNoBatch],
  ];
  return (
    <div class="zoom">
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would bring a border and a legend of its own */}
      <div class="zoom-spans" role="group" aria-label={words.chart.zoom}>
        {spans.map(([span, label]) => (
          <button key={span} type="button" aria-pressed={choice === span} onClick={() => onChoose(span)}>
            {label}
          </button>
        ))}
      </div>
      <div class="zoom-moves">
        {(Object.keys(signs) as (keyof typeof signs)[]).map((name) => (
          <button
            key={name}
            type="button"
            aria-label={words.chart[name]}
            title={words.chart[name]}
            onClick={acts[name]}
          >
            <svg viewBox="0 0 20 20" aria-hidden="true">
              <path d={signs[name]} />
            </svg>
          </button>
        ))}
        <button type="button" onClick={acts.reset}>
          {words.chart.reset}
        </button>
      </div>
    </div>
  );
}
