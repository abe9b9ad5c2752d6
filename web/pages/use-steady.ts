// Holds the order of a list still while somebody is about to press something in it: no row jumps away under a finger.
import { useEffect, useRef, useState } from 'preact/hooks';

const calmMs = 2_000;
let touchedMs = Number.NEGATIVE_INFINITY;

function noteTouch(): void {
  touchedMs = performance.now();
}

/** True when two orders, as JSON, hold the same ids. */
function hasSameIds(one: string, other: string): boolean {
  const ids = (text: string) => JSON.stringify((text.match(/"[^"]*"(?=[,\]])/g) ?? []).sort());
  return ids(one) === ids(other);
}

/** The newest order once nobody has touched the page for two seconds; at once when something came or went. */
export function useSteady(order: string): string {
  const shown = useRef(order);
  const [, redraw] = useState(0);
  useEffect(() => {
    const kinds = ['pointerdown', 'pointermove', 'keydown'] as const;
    for (const kind of kinds) document.addEventListener(kind, noteTouch, { passive: true });
    return () => {
      for (const kind of kinds) document.removeEventListener(kind, noteTouch);
    };
  }, []);
  const sinceTouchMs = performance.now() - touchedMs;
  const isHeld = order !== shown.current && sinceTouchMs < calmMs && hasSameIds(order, shown.current);
  useEffect(() => {
    if (!isHeld) return;
    const timer = setTimeout(() => redraw((count) => count + 1), calmMs);
    return () => clearTimeout(timer);
  });
  if (!isHeld) shown.current = order;
  return shown.current;
}
