// Noise that is the same on every machine and every run, so that a statistical test is as certain as any other.

export interface NoiseStream {
  /** Evenly spread in (0, 1). */
  uniform(): number;
  /** Normal, mean 0, standard deviation 1. */
  normal(): number;
}

/** A small counting generator with a three-word state (sfc32, public domain; from memory) under Box and Muller's transform. `start` is any number. */
export function createNoiseStream(start: number): NoiseStream {
  let [a, b, c, count] = [0x9e3779b9, Math.trunc(start) | 0, 0x243f6a88, 1];
  const uniform = (): number => {
    const sum = (((a + b) | 0) + count) | 0;
    count = (count + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    return ((sum >>> 0) + 0.5) / 2 ** 32;
  };
  for (let i = 0; i < 20; i++) uniform();
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}
