// Ballast: room that is held back beside the database and given up when the disk is full, so that the alarm about it, and what people need to
// do then, can be stored.
import { rm, stat, writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';

/** Room for tens of thousands of readings. */
const SIZE_BYTES = 8 * 1024 * 1024;

export interface Ballast {
  /** Takes the room, if it is not taken; call only while there is plenty. */
  take(): Promise<void>;
  /** Gives it up. */
  give(): Promise<void>;
}

/** The ballast of a data folder. Both acts fail with an error of the file system. */
export function createBallast(dataDir: string): Ballast {
  const file = resolve(dataDir, 'ballast');
  let isTaken: boolean | null = null;
  return {
    async take() {
      isTaken ??= await isThere(file);
      if (isTaken) return;
      await writeFile(file, Buffer.alloc(SIZE_BYTES, 1));
      isTaken = true;
    },
    async give() {
      if (isTaken === false) return;
      await rm(file, { force: true });
      isTaken = false;
    },
  };
}

async function isThere(file: string): Promise<boolean> {
  const size = await stat(file).then(
    (one) => one.size,
    () => 0,
  );
  return size === SIZE_BYTES;
}
