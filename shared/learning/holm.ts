// Many questions asked of the same batches: the more are asked, the more often chance answers one of them.

/** p values adjusted after Holm 1979 (step-down Bonferroni; formula from memory), in the order given; each at least its own p, at most 1. */
export function holmAdjusted(ps: readonly number[]): number[] {
  const order = ps.map((p, index) => ({ p, index })).sort((a, b) => a.p - b.p);
  const adjusted = new Array<number>(ps.length).fill(1);
  let least = 0;
  order.forEach(({ p, index }, rank) => {
    least = Math.min(1, Math.max(least, p * (ps.length - rank)));
    adjusted[index] = least;
  });
  return adjusted;
}
