// A page whose code is fetched when it is first opened.
import { useEffect, useState } from 'preact/hooks';
import { SECOND_MS } from '../../shared/units.ts';
import { fetchedPage, fetchPage, type LatePageName } from '../late-pages.ts';
import { words } from '../strings.ts';

const againMs = 5 * SECOND_MS;

/** A newer version may have taken the place of this one with all its files. Only a service that answers is asked for a whole page. */
async function startAnew(): Promise<void> {
  const answer = await fetch('/', { cache: 'no-store' }).catch((problem: unknown) => {
    if (problem instanceof TypeError) return null;
    throw problem;
  });
  if (answer?.ok === true) location.reload();
}

/** Tries for ever: nobody stands beside a wall screen to press a button. */
export function LatePage({ name }: { readonly name: LatePageName }) {
  const [round, setRound] = useState(0);
  const Page = fetchedPage(name);
  useEffect(() => {
    if (fetchedPage(name) !== undefined) return;
    let again: ReturnType<typeof setTimeout> | undefined;
    const tryAgain = () => {
      again = setTimeout(() => setRound((count) => count + 1), againMs);
      if (round > 0) void startAnew();
    };
    fetchPage(name).then(() => setRound((count) => count + 1), tryAgain);
    return () => clearTimeout(again);
  }, [name, round]);
  if (Page !== undefined) return <Page />;
  return (
    <main id="main" class="plain">
      <p class="quiet-line" role="status">
        {round === 0 ? words.problems.loading : words.problems.unreachable}
      </p>
    </main>
  );
}
