// Something a page asks the service for: loading, then there, or a problem with a way to try again.
import type { Signal } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import { ApiProblem } from '../api.ts';
import { changes } from '../live.ts';

export interface Loaded<T> {
  readonly data: T | undefined;
  readonly problem: ApiProblem | undefined;
  readonly reload: () => void;
}

/** Asks now, when `key` changes, after every reconnect, and when one of `hints` counts up. What is there stays while asking. */
export function useLoad<T>(ask: () => Promise<T>, key: string, hints: readonly Signal<number>[] = []): Loaded<T> {
  const [data, setData] = useState<T>();
  const [problem, setProblem] = useState<ApiProblem>();
  const [round, setRound] = useState(0);
  const hint = [changes.all, ...hints].map((signal) => signal.value).join(' ');
  useEffect(() => {
    let isCurrent = true;
    const run = async () => {
      try {
        const answer = await ask();
        if (!isCurrent) return;
        setData(answer);
        setProblem(undefined);
      } catch (caught) {
        if (!(caught instanceof ApiProblem)) throw caught;
        if (isCurrent) setProblem(caught);
      }
    };
    void run();
    return () => {
      isCurrent = false;
    };
  }, [key, round, hint]);
  return { data, problem, reload: () => setRound((count) => count + 1) };
}
