// Pointer on a chart: resting on it reads a time, dragging moves the window. Up and down stay with the page's scrolling.
import type { RefObject } from 'preact';
import { useRef } from 'preact/hooks';
import type { Plot } from './plot.ts';
import type { Window } from './zoom.ts';

const dragFromPx = 6;

interface Drag {
  readonly startX: number;
  readonly window: Window;
  isMoving: boolean;
}

interface Heard {
  readonly onMove: (window: Window) => void;
  /** The instant pointed to, seconds; null when the pointer has left. */
  readonly onPoint: (atSec: number | null) => void;
}

function dragged({ startX, window }: Drag, clientX: number, widthPx: number): Window {
  const shiftMs = (-(clientX - startX) / widthPx) * (window.toMs - window.fromMs);
  return { fromMs: window.fromMs + shiftMs, toMs: window.toMs + shiftMs };
}

/** The handlers for the element around a plot. */
export function useChartPointer(plot: RefObject<Plot | null>, shown: Window, { onMove, onPoint }: Heard) {
  const drag = useRef<Drag | null>(null);
  const onPointerMove = (event: PointerEvent) => {
    const box = plot.current?.surface.getBoundingClientRect();
    if (box === undefined || box.width === 0) return;
    const isInside = event.clientX >= box.left && event.clientX <= box.right;
    onPoint(isInside ? (plot.current?.secondsAt(event.clientX - box.left) ?? null) : null);
    const held = drag.current;
    if (held === null) return;
    held.isMoving ||= Math.abs(event.clientX - held.startX) >= dragFromPx;
    if (held.isMoving) onMove(dragged(held, event.clientX, box.width));
  };
  const onPointerDown = (event: PointerEvent) => {
    if (event.button !== 0 || !(event.currentTarget instanceof Element)) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    drag.current = { startX: event.clientX, window: shown, isMoving: false };
    onPointerMove(event);
  };
  const letGo = () => {
    drag.current = null;
  };
  const onPointerLeave = () => {
    letGo();
    onPoint(null);
  };
  return { onPointerMove, onPointerDown, onPointerUp: letGo, onPointerCancel: letGo, onPointerLeave };
}
