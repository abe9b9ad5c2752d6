// A disk that is really full: a file system of its own, in memory, that only the process started `within` it sees, and that ends with it. Where the
// system lets nobody have one, the test fails in the words of the system: it is not skipped.
import { appendFileSync, existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';

export interface SmallDisk {
  /** Put before the command: it mounts the disk on the folder and then becomes that command. */
  readonly within: readonly string[];
  /** Writes until the system says that nothing fits any more. */
  fill(): void;
  /** Removes what `fill` has written. */
  makeRoom(): void;
  has(file: string): boolean;
}

const CHUNK_BYTES = 4_096;

/** `pid` is that of the process that was started within. */
export function describeSmallDisk(folder: string, megabytes: number, pid: () => number): SmallDisk {
  // proc(5): the file system as that process sees it.
  const inside = (file: string) => join(`/proc/${pid()}/root`, folder, file);
  const mount = `mount -t tmpfs -o size=${megabytes}m takewell "$0" && exec "$@"`;
  return {
    within: ['unshare', '--user', '--map-root-user', '--mount', 'sh', '-c', mount, folder],
    fill() {
      try {
        for (;;) appendFileSync(inside('filling'), Buffer.alloc(CHUNK_BYTES, 1));
      } catch (error) {
        if (!(error instanceof Error && 'code' in error && error.code === 'ENOSPC')) throw error;
      }
    },
    makeRoom: () => rmSync(inside('filling'), { force: true }),
    has: (file) => existsSync(inside(file)),
  };
}
