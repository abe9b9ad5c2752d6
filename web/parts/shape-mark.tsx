// The shape of a state, drawn by us so that it looks the same on every phone. It always stands beside its words.
import type { Shape } from '../chamber-state.ts';

const paths: Record<Shape, { readonly d: string; readonly isFull: boolean; readonly dashes?: string }> = {
  hot: { d: 'M10 2 19 18H1z', isFull: true },
  warming: { d: 'M10 18V3.5M3.5 10 10 3.5l6.5 6.5', isFull: false },
  cold: { d: 'M10 18 1 2h18z', isFull: true },
  wet: { d: 'M10 3.5 17.5 17h-15z', isFull: false },
  dry: { d: 'M10 16.5 2.5 3h15z', isFull: false },
  silent: { d: 'M3 3h14v14H3zm0 14L17 3', isFull: false },
  gone: { d: 'M2 2h16v16H2z', isFull: true },
  old: { d: 'M10 2.5a7.5 7.5 0 1 1 0 15 7.5 7.5 0 0 1 0-15z', isFull: false, dashes: '3 2.9' },
  overdue: { d: 'M10 1l9 9-9 9-9-9z', isFull: true },
  due: { d: 'M10 2.5l7.5 7.5-7.5 7.5-7.5-7.5z', isFull: false },
  watch: { d: 'M10 2.5a7.5 7.5 0 1 1 0 15zm0 0a7.5 7.5 0 1 0 0 15', isFull: false },
  hold: { d: 'M6.5 3v14M13.5 3v14', isFull: false },
  order: { d: 'M10 2.5a7.5 7.5 0 1 1 0 15 7.5 7.5 0 0 1 0-15z', isFull: false },
  empty: { d: 'M3 10h14', isFull: false },
};

export function ShapeMark({ shape }: { readonly shape: Shape }) {
  const { d, isFull, dashes } = paths[shape];
  return (
    <svg class={`shape shape-${shape}`} viewBox="0 0 20 20" aria-hidden="true">
      <path
        d={d}
        fill={isFull ? 'currentColor' : 'none'}
        stroke={isFull ? 'none' : 'currentColor'}
        stroke-width={shape === 'hold' ? 4 : 2.4}
        {...(dashes === undefined ? {} : { 'stroke-dasharray': dashes })}
      />
      {shape === 'watch' && <path d="M10 2.5a7.5 7.5 0 1 1 0 15z" fill="currentColor" />}
    </svg>
  );
}
