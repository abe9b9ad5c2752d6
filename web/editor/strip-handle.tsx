// One handle on the strip: a slider for pointer, touch and keyboard. It shows its number; the strip draws what that means.
import { useRef } from 'preact/hooks';
import { snapped, valueAfterKey } from './handles.ts';

interface Props {
  readonly kind: 'border' | 'low' | 'high';
  readonly left: number;
  readonly top: number;
  readonly label: string;
  /** Short, to be seen on the handle. */
  readonly shown: string;
  /** In full, to be heard. */
  readonly valueText: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly largeStep: number;
  /** What one CSS pixel is worth, to the right for a border, upward for a limit. */
  readonly perPx: number;
  readonly onValue: (value: number) => void;
}

interface Drag {
  readonly pointer: number;
  readonly from: number;
  readonly value: number;
  /** Kept from the start, so that a scale that widens under way does not run from the finger. */
  readonly perPx: number;
}

export function StripHandle({ kind, left, top, label, shown, valueText, perPx, largeStep, onValue, ...range }: Props) {
  const drag = useRef<Drag | null>(null);
  const isSideways = kind === 'border';
  const along = (event: PointerEvent) => (isSideways ? event.clientX : -event.clientY);
  // Keys may come faster than the page is drawn: each starts from what the last one made.
  const latest = useRef(range.value);
  latest.current = range.value;
  const move = (value: number) => {
    if (value === latest.current) return;
    latest.current = value;
    onValue(value);
  };
  return (
    <div
      class={`handle is-${kind}`}
      style={{ left: `${left}px`, top: `${top}px` }}
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-orientation={isSideways ? 'horizontal' : 'vertical'}
      aria-valuemin={range.min}
      aria-valuemax={range.max}
      aria-valuenow={range.value}
      aria-valuetext={valueText}
      onKeyDown={(event) => {
        const next = valueAfterKey(event.key, { ...range, value: latest.current }, largeStep);
        if (next === null) return;
        event.preventDefault();
        move(next);
      }}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        drag.current = { pointer: event.pointerId, from: along(event), value: range.value, perPx };
      }}
      onPointerMove={(event) => {
        const { current } = drag;
        if (current?.pointer !== event.pointerId) return;
        move(snapped(current.value + (along(event) - current.from) * current.perPx, range));
      }}
      onPointerUp={() => {
        drag.current = null;
      }}
      onPointerCancel={() => {
        drag.current = null;
      }}
    >
      <span>{shown}</span>
    </div>
  );
}
