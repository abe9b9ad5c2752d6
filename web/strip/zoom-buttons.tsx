// The buttons that move a chart: four spans, and earlier, later, closer, wider.
import { words } from '../strings.ts';

/** Hours before now, or everything. */
export type ZoomChoice = 1 | 6 | 24 | 'whole';

export interface ZoomActs {
  readonly earlier: () => void;
  readonly later: () => void;
  readonly closer: () => void;
  readonly wider: () => void;
}

interface Props {
  readonly choice: ZoomChoice | null;
  readonly hasBatch: boolean;
  readonly onChoose: (choice: ZoomChoice) => void;
  readonly acts: ZoomActs;
}

export function ZoomButtons({ choice, hasBatch, onChoose, acts }: Props) {
  const spans: readonly [ZoomChoice, string][] = [
    [1, words.chart.hour],
    [6, words.chart.sixHours],
    [24, words.chart.day],
    ['whole', hasBatch ? words.chart.whole : words.chart.wholeNoBatch],
  ];
  const moves = [
    [acts.earlier, words.chart.earlier, '←'],
    [acts.later, words.chart.later, '→'],
    [acts.closer, words.chart.closer, '+'],
    [acts.wider, words.chart.wider, '−'],
  ] as const;
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
        {moves.map(([act, label, sign]) => (
          <button key={label} type="button" aria-label={label} title={label} onClick={act}>
            {sign}
          </button>
        ))}
      </div>
    </div>
  );
}
