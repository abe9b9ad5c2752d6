// Pointers on a chart: resting on it reads a time, dragging moves the window, two fingers stretch it, a wheel zooms a chart that has the focus.
// Up and down stay with the page's scrolling.
import type { RefObject } from 'preact';
import { useRef } from 'preact/hooks';
import type { Plot } from './plot.ts';
import { pinch, type Window, zoom } from './zoom.ts';

const dragFromPx = 6;
/** One notch of a wheel is about 100 pixels and makes the window a fifth longer or shorter. */
const wheelPerPx = Math.log(1.2) / 100;

interface Heard {
  readonly shown: Window;
  readonly whole: Window;
  readonly onMove: (window: Window) => void;
  /** The instant pointed to, seconds; null when the pointer has left. */
  readonly onPoint: (atSec: number | null) => void;
}

/** One or two pointers that are down, from the moment their number last changed. */
interface Grip {
  readonly window: Window;
  /** Where each was then, clientX. */
  readonly starts: ReadonlyMap<number, number>;
  isMoving: boolean;
}

function moved(grip: Grip, places: ReadonlyMap<number, number>, box: DOMRect, whole: Window): Window {
  const { window, starts } = grip;
  const fingers = [...starts.keys()].map((id) => [(starts.get(id) ?? 0) - box.left, (places.get(id) ?? 0) - box.left]);
  const [[a0 = 0, a1 = 0] = [], second] = fingers;
  if (second !== undefined) return pinch(window, [a0, second[0] ?? 0], [a1, second[1] ?? 0], box.width, whole);
  const shiftMs = (-(a1 - a0) / box.width) * (window.toMs - window.fromMs);
  return { fromMs: window.fromMs + shiftMs, toMs: window.toMs + shiftMs };
}

/** The handlers for the element around a plot. */
export function useChartPointer(plot: RefObject<Plot | null>, { shown, whole, onMove, onPoint }: Heard) {
  const places = useRef(new Map<number, number>());
  const grip = useRef<Grip | null>(null);
  const boxOf = () => {
    const box = plot.current?.surface.getBoundingClientRect();
    return box === undefined || box.width === 0 ? null : box;
  };
  const point = (clientX: number, box: DOMRect) => {
    const isInside = clientX >= box.left && clientX <= box.right;
    onPoint(isInside ? (plot.current?.secondsAt(clientX - box.left) ?? null) : null);
  };
  const takeGrip = () => {
    const starts = new Map([...places.current].slice(0, 2));
    grip.current = starts.size === 0 ? null : { window: shown, starts, isMoving: starts.size > 1 };
  };
  const onPointerDown = (event: PointerEvent) => {
    if (event.button !== 0 || !(event.currentTarget instanceof Element)) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    places.current.set(event.pointerId, event.clientX);
    takeGrip();
    const box = boxOf();
    if (box !== null && places.current.size === 1) point(event.clientX, box);
  };
  const onPointerMove = (event: PointerEvent) => {
    const box = boxOf();
    if (box === null) return;
    const held = grip.current;
    if (held === null || !places.current.has(event.pointerId)) return point(event.clientX, box);
    places.current.set(event.pointerId, event.clientX);
    held.isMoving ||= Math.abs(event.clientX - (held.starts.get(event.pointerId) ?? event.clientX)) >= dragFromPx;
    if (!held.isMoving) return point(event.clientX, box);
    onPoint(null);
    onMove(moved(held, places.current, box, whole));
  };
  const letGo = (event: PointerEvent) => {
    places.current.delete(event.pointerId);
    takeGrip();
  };
  // A finger that is lifted leaves as well: what it pointed to stays, so that it can be read.
  const onPointerLeave = (event: PointerEvent) => {
    if (event.pointerType !== 'touch') onPoint(null);
  };
  const onWheel = (event: WheelEvent) => {
    const box = boxOf();
    const hasFocus = event.currentTarget instanceof Element && event.currentTarget.matches(':focus-within');
    if (box === null || !(hasFocus || event.ctrlKey)) return;
    event.preventDefault();
    const anchorMs = shown.fromMs + ((event.clientX - box.left) / box.width) * (shown.toMs - shown.fromMs);
    onMove(zoom(shown, Math.exp(event.deltaY * wheelPerPx), anchorMs, whole));
  };
  const letGoOn = { onPointerUp: letGo, onPointerCancel: letGo, onLostPointerCapture: letGo };
  return { onPointerDown, onPointerMove, onPointerLeave, onWheel, ...letGoOn };
}
