// Says that the connection is lost and how old what is shown is. It also greys the page with age.
import { useEffect } from 'preact/hooks';
import { slowNowMs } from '../clock.ts';
import { connection, heardMs, loadProblem } from '../live.ts';
import { lostWords } from '../lost-words.ts';
import { zone } from '../session.ts';
import { words } from '../strings.ts';

export function LostBanner() {
  const isLost = connection.value === 'lost';
  useEffect(() => {
    document.documentElement.classList.toggle('is-lost', isLost);
  }, [isLost]);
  const heard = heardMs.value;
  // A service that answers with a problem is reached; the page shows what it says.
  const isReached = heard === null && (loadProblem.value?.status ?? 0) !== 0;
  if (!isLost || isReached) return null;
  return (
    <p class="lost" role="status">
      {heard === null ? words.live.neverHeard : lostWords(heard, slowNowMs.value, zone.value)}
    </p>
  );
}
