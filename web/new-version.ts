// Notices that the service has a newer version of this page than the one that runs, also where no service worker may run.
import { effect, signal } from '@preact/signals';
import { HOUR_MS } from '../shared/units.ts';
import { changes } from './live.ts';
import { renewWorker } from './service-worker-client.ts';

export const isOutdated = signal(false);

/** The script this page was opened with; its name changes with every build. */
function ownScript(): string {
  const script = document.querySelector<HTMLScriptElement>('script[type="module"][src]');
  return script === null ? '' : new URL(script.src).pathname;
}

/** The page as the service would give it now; null when it cannot be asked. */
async function pageNow(): Promise<string | null> {
  try {
    const answer = await fetch('/', { cache: 'no-store' });
    return answer.ok ? await answer.text() : null;
  } catch (problem) {
    // No connection: asked again when it is back.
    if (problem instanceof TypeError) return null;
    throw problem;
  }
}

async function look(): Promise<void> {
  const page = await pageNow();
  if (page === null || isOutdated.peek()) return;
  isOutdated.value = page.includes('<script') && !page.includes(ownScript());
  if (isOutdated.peek()) await renewWorker();
}

/** Looks after every lost connection, since a new version begins with a restart, when the network is back, and every hour. */
export function watchVersion(): void {
  setInterval(() => void look(), HOUR_MS);
  addEventListener('online', () => void look());
  effect(() => {
    if (changes.all.value > 0) void look();
  });
}
