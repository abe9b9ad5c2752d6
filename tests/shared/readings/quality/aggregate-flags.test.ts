import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aggregateFlags } from '../../../../shared/readings/quality/aggregate-flags.ts';
import type { Flag } from '../../../../shared/readings/reading.ts';

describe('aggregate of flags', () => {
  const inOrder: Flag[] = [9, 2, 1, 3, 4];

  it('lets each flag win over all before it, in either order', () => {
    inOrder.forEach((worse, i) => {
      for (const milder of inOrder.slice(0, i + 1)) {
        expect(aggregateFlags([milder, worse])).toBe(worse);
        expect(aggregateFlags([worse, milder])).toBe(worse);
      }
    });
  });

  it('is missing when nothing was tested', () => {
    expect(aggregateFlags([])).toBe(9);
  });

  it('may be taken in parts: a flag found later can be added to the aggregate', () => {
    const flags = fc.array(fc.constantFrom(...inOrder), { maxLength: 6 });
    fc.assert(
      fc.property(flags, flags, (first, later) => {
        expect(aggregateFlags([aggregateFlags(first), ...later])).toBe(aggregateFlags([...later, ...first]));
      }),
    );
  });
});
