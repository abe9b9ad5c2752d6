// How far a long command is, on standard error, while somebody watches. Standard output never sees it.
import type { Terminal } from './command.ts';

export interface Progress {
  at(done: number): void;
  /** Wipes the line. */
  end(): void;
}

/** Writes whole per cent, or megabytes while the size is not known; nothing when standard error is no terminal. */
export function createProgress(
  { ask, isWatched }: Pick<Terminal, 'ask' | 'isWatched'>,
  name: string,
  total: number | null,
): Progress {
  let said = '';
  return {
    at(done) {
      const now =
        total === null || total === 0 ? `${Math.floor(done / 1e6)} MB` : `${Math.floor((100 * done) / total)} %`;
      if (!isWatched || now === said) return;
      said = now;
      ask(`\r${name}: ${now}`);
    },
    end() {
      if (said !== '') ask('\r\u001B[K');
    },
  };
}
