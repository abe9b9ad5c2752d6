// Ties a plot to an element: made once, redrawn when its input changes, resized with its wrapper, destroyed with it.
import type { RefObject } from 'preact';
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import { createPlot, type Plot, type PlotInput } from './plot.ts';

function roomOf(host: HTMLElement): readonly [number, number] {
  return [Math.max(40, host.clientWidth), Math.max(40, host.clientHeight)];
}

/** As wide as a page of A4 between its margins (186 mm of 96 pixels an inch), so that its words are of a size with those around it. */
const paperPx = 703;
/** Low enough to leave room on the page for the words that belong to it. */
const mostPaperPx = 240;

/** Keeps a plot in `host` as long as there is an input. */
export function usePlot(host: RefObject<HTMLElement | null>, input: PlotInput | undefined): RefObject<Plot | null> {
  const plot = useRef<Plot | null>(null);
  useLayoutEffect(() => {
    const element = host.current;
    if (element === null || input === undefined) return;
    if (plot.current === null) plot.current = createPlot(element, input, ...roomOf(element));
    else plot.current.update(input);
  }, [input]);
  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => plot.current?.resize(...roomOf(element)));
    observer.observe(element);
    // One of several on a page says how high it is there.
    const ownPx = Number.parseFloat(getComputedStyle(element).getPropertyValue('--paper-px')) || mostPaperPx;
    const toPaper = () => plot.current?.resize(paperPx, Math.min(ownPx, roomOf(element)[1]));
    const toScreen = () => plot.current?.resize(...roomOf(element));
    addEventListener('beforeprint', toPaper);
    addEventListener('afterprint', toScreen);
    return () => {
      removeEventListener('beforeprint', toPaper);
      removeEventListener('afterprint', toScreen);
      observer.disconnect();
      plot.current?.destroy();
      plot.current = null;
    };
  }, []);
  return plot;
}
