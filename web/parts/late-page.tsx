// A page whose code is fetched when it is opened.
import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { words } from '../strings.ts';

const againMs = 10_000;

/** Tries for ever: nobody stands beside a wall screen to press a button. */
export function LatePage({ load }: { readonly load: () => Promise<ComponentType> }) {
  const [page, setPage] = useState<{ readonly Page: ComponentType }>();
  const [round, setRound] = useState(0);
  useEffect(() => {
    let again: ReturnType<typeof setTimeout> | undefined;
    load().then(
      (Page) => setPage({ Page }),
      () => {
        // A browser remembers that a script failed: only a new page asks for it again.
        again = setTimeout(() => (round < 2 ? setRound(round + 1) : location.reload()), againMs);
      },
    );
    return () => clearTimeout(again);
  }, [round]);
  return page === undefined ? (
    <main class="plain">
      <p class="quiet-line">{words.problems.loading}</p>
    </main>
  ) : (
    <page.Page />
  );
}
