// The legend of the strip for a newcomer: what each line and mark means, and the shapes of the states.
import type { Shape } from '../chamber-state.ts';
import { ShapeMark } from '../parts/shape-mark.tsx';
import { words } from '../strings.ts';

const samples = [
  ...([
    'band',
    'line',
    'house',
    'temperature',
    'forecast',
    'checks',
    'log',
    'alarm',
    'hold',
    'gap',
    'doubted',
    'now',
  ] as const),
];
const shapes = Object.keys(words.legend.shapeWords) as readonly Shape[];

function Sample({ kind }: { readonly kind: (typeof samples)[number] }) {
  return (
    <svg class={`sample sample-${kind}`} viewBox="0 0 56 20" aria-hidden="true">
      {kind === 'band' && <path class="fill-band" d="M0 2h22v4h14v5h20v7H36v-4H22V9H0z" />}
      {kind === 'line' && <path class="ink-humidity" d="M0 12q7-8 14-2t14-1 14 2 14-3" />}
      {kind === 'house' && <path class="ink-house" d="M0 10q14-7 28 0t28 0" />}
      {kind === 'temperature' && (
        <>
          <path class="ink-limit" d="M0 4h56" />
          <path class="ink-temperature" d="M0 15q14-9 28-3t28 0" />
        </>
      )}
      {kind === 'forecast' && (
        <>
          <path class="ink-now" d="M12 0v20" />
          <path class="ink-cone" d="M12 12 54 2v13z" />
          <path class="ink-limit" d="M12 12 54 8" />
        </>
      )}
      {kind === 'hold' && (
        <>
          <path class="fill-hold" d="M6 0h44v20H6z" />
          <path class="ink-ink" d="M7 0v20M12 0v20" />
        </>
      )}
      {kind === 'doubted' && (
        <>
          <path class="ink-ink" d="M12 18V6m14 12V6m14 12V6" />
          <path class="fill-ink" d="m12 6 8 3.5-8 3.5zm14 0 8 3.5-8 3.5zm14 0 8 3.5-8 3.5z" />
        </>
      )}
      {kind === 'checks' && (
        <>
          <circle class="fill-ink" cx="7" cy="10" r="4" />
          <path class="ink-ink" d="m18 6 8 8m0-8-8 8" />
          <circle class="ink-ink" cx="37" cy="10" r="4" />
          <path class="fill-now" d="m50 4 6 6-6 6-6-6z" />
        </>
      )}
      {kind === 'log' && (
        <>
          <path class="fill-ink" d="M8 4q7 11 0 11T8 4z" />
          <path class="ink-ink" d="M23 6v8m9-8v8m10-8 4 8 4-8" />
        </>
      )}
      {kind === 'alarm' && (
        <>
          <path class="ink-wash" d="m2 16 12-14m-4 14L22 2m-4 14L30 2m-4 14L38 2m-4 14L46 2m-4 14L54 2" />
          <path class="fill-now" d="M2 16h52v3H2z" />
        </>
      )}
      {kind === 'gap' && <path class="ink-hatch" d="M2 18 18 2m-8 16L26 2m-8 16L34 2m-8 16L42 2m-8 16L50 2" />}
      {kind === 'now' && <path class="ink-now" d="M28 0v20" />}
    </svg>
  );
}

export function StripLegend() {
  return (
    <details class="legend">
      <summary>{words.legend.title}</summary>
      <p>{words.legend.intro}</p>
      <ul class="legend-lines">
        {samples.map((kind) => (
          <li key={kind}>
            <Sample kind={kind} />
            <span>{words.legend[kind]}</span>
          </li>
        ))}
      </ul>
      <h2>{words.legend.figures}</h2>
      <p>{words.legend.vpd}</p>
      <p>{words.legend.beyond}</p>
      <h2>{words.legend.shapes}</h2>
      <ul class="legend-shapes">
        {shapes.map((shape) => (
          <li key={shape}>
            <ShapeMark shape={shape} /> {words.legend.shapeWords[shape as keyof typeof words.legend.shapeWords]}
          </li>
        ))}
      </ul>
    </details>
  );
}
