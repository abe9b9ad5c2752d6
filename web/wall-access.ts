// How a wall screen gets in: the token behind the # of its link is handed over once and taken out of the address; from then on a cookie does.
import { effect, signal } from '@preact/signals';
import { DAY_MS, SECOND_MS } from '../shared/units.ts';
import { ApiProblem } from './api.ts';
import { calls } from './calls.ts';
import { loadProblem } from './live.ts';
import { loadSession, session } from './session.ts';

/** `unreached`: the service does not answer, which is no reason to show nothing. */
export type WallAccess = 'asking' | 'open' | 'refused' | 'unreached';

export const wallAccess = signal<WallAccess>('asking');

/** How long until it is asked again; an open wall renews its cookie once a day. */
const againMs: Record<WallAccess, number> = {
  asking: 10 * SECOND_MS,
  unreached: 10 * SECOND_MS,
  refused: 60 * SECOND_MS,
  open: DAY_MS,
};

function tokenIn(hash: string): string {
  return new URLSearchParams(hash.slice(1)).get('token') ?? '';
}

async function ask(): Promise<WallAccess> {
  const token = tokenIn(location.hash);
  try {
    await calls.openWall(token);
    // Nobody who walks by shall read it, and no picture of the screen shall hold it.
    if (token !== '') history.replaceState(null, '', location.pathname);
    return 'open';
  } catch (problem) {
    if (!(problem instanceof ApiProblem)) throw problem;
    return problem.status >= 400 && problem.status < 500 && problem.status !== 429 ? 'refused' : 'unreached';
  }
}

/** Asks to be let in, for as long as the screen hangs there. Returns how to stop. */
export function startWallAccess(): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isStopped = false;
  const round = async () => {
    clearTimeout(timer);
    const access = await ask();
    if (isStopped) return;
    wallAccess.value = access;
    if (session.peek() === undefined || access === 'open') await loadSession();
    timer = setTimeout(() => void round(), againMs[access]);
  };
  void round();
  // A link that is withdrawn while the screen runs shows nothing from then on.
  const stop = effect(() => {
    if (loadProblem.value?.status === 401 && wallAccess.peek() === 'open') void round();
  });
  return () => {
    isStopped = true;
    clearTimeout(timer);
    stop();
  };
}
