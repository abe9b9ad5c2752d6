// Says that the connection is lost and how old what is shown is. It also greys the page with age.
import { useEffect } from 'preact/hooks';
import { spanWords } from '../age.ts';
import { slowNowMs } from '../clock.ts';
import { connection, heardMs, loadProblem } from '../live.ts';
import { zone } from '../session.ts';
import { words } from '../strings.ts';
import { dayAndTime } from '../when.ts';

export function LostBanner() {
  const isLost = connection.value === 'lost';
  useEffect(() => {
    document.documentElement.classList.toggle('is-lost', isLost);
  }, [isLost]);
  const heard = heardMs.value;
  // A service that answers with a problem is reached; the page shows what it says.
  const isReached = heard === null && (loadProblem.value?.status ?? 0) !== 0;
  if (!isLost || isReached) return null;
  const now = slowNowMs.value;
  return (
    <p class="lost" role="status">
      {heard === null
        ? words.live.neverHeard
        : words.live.lost(dayAndTime(heard, now, zone.value), spanWords(now - heard))}
    </p>
  );
}
