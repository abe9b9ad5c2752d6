import { describe, expect, it } from 'vitest';
import type { Level } from '../../../shared/alarms/alarm.ts';
import {
  calmMemory,
  type DebounceMemory,
  debounce,
  sameMemory,
  standingLevel,
} from '../../../shared/alarms/debounce.ts';

const delays = { onDelayMs: [60, 30], offDelayMs: 40 } as const;
type Seen = readonly [number, Level | 'unknown'];

function run(seen: readonly Seen[], from: DebounceMemory = calmMemory): DebounceMemory {
  return seen.reduce((memory, [atMs, level]) => debounce(memory, level, atMs, delays), from);
}

const standing = run([
  [-100, 1],
  [-40, 1],
]);
const standingOuter = run([
  [-100, 2],
  [-40, 2],
]);

describe('the on-delay', () => {
  it.each<{ why: string; seen: Seen[]; level: Level }>([
    { why: 'one sight is not enough', seen: [[0, 1]], level: 0 },
    {
      why: 'a millisecond short of the delay',
      seen: [
        [0, 1],
        [59, 1],
      ],
      level: 0,
    },
    {
      why: 'the delay is reached',
      seen: [
        [0, 1],
        [60, 1],
      ],
      level: 1,
    },
    {
      why: 'a moment inside the limit starts it anew',
      seen: [
        [0, 1],
        [30, 0],
        [31, 1],
        [90, 1],
      ],
      level: 0,
    },
    {
      why: 'and then it runs its full length',
      seen: [
        [0, 1],
        [30, 0],
        [31, 1],
        [91, 1],
      ],
      level: 1,
    },
    {
      why: 'the outer level has its own, shorter delay: a millisecond short',
      seen: [
        [0, 2],
        [29, 2],
      ],
      level: 0,
    },
    {
      why: 'the outer level stands before the inner one does',
      seen: [
        [0, 2],
        [30, 2],
      ],
      level: 2,
    },
    {
      why: 'what is beyond the outer limit is beyond the inner one too',
      seen: [
        [0, 2],
        [20, 1],
        [60, 1],
      ],
      level: 1,
    },
  ])('$why', ({ seen, level }) => {
    expect(standingLevel(run(seen))).toBe(level);
  });

  it('of nothing lets a condition stand at once', () => {
    expect(standingLevel(debounce(calmMemory, 1, 5, { onDelayMs: [0, 0], offDelayMs: 0 }))).toBe(1);
  });
});

describe('the outer level', () => {
  it('takes the inner one with it when it stands first: eased, the condition stands at the inner level', () => {
    const outer = run([
      [0, 2],
      [30, 2],
    ]);
    expect(outer).toEqual({ stands: [true, true], turningSinceMs: [null, null] });
    const eased = run(
      [
        [31, 1],
        [71, 1],
      ],
      outer,
    );
    expect(standingLevel(eased)).toBe(1);
  });
});

describe('the off-delay', () => {
  it.each<{ why: string; from: DebounceMemory; seen: Seen[]; level: Level }>([
    { why: 'one sight of calm is not enough', from: standing, seen: [[0, 0]], level: 1 },
    {
      why: 'a millisecond short of the delay',
      from: standing,
      seen: [
        [0, 0],
        [39, 0],
      ],
      level: 1,
    },
    {
      why: 'the delay is reached',
      from: standing,
      seen: [
        [0, 0],
        [40, 0],
      ],
      level: 0,
    },
    {
      why: 'a moment beyond the limit starts it anew',
      from: standing,
      seen: [
        [0, 0],
        [30, 1],
        [31, 0],
        [70, 0],
      ],
      level: 1,
    },
    {
      why: 'the outer level falls to the inner one after the delay',
      from: standingOuter,
      seen: [
        [0, 1],
        [40, 1],
      ],
      level: 1,
    },
    {
      why: 'both fall together when both have been calm long enough',
      from: standingOuter,
      seen: [
        [0, 0],
        [40, 0],
      ],
      level: 0,
    },
  ])('$why', ({ from, seen, level }) => {
    expect(standingLevel(run(seen, from))).toBe(level);
  });
});

describe('an unknown judgement', () => {
  it('neither raises nor clears, however long it lasts', () => {
    expect(run([[1_000_000, 'unknown']], calmMemory)).toBe(calmMemory);
    expect(run([[1_000_000, 'unknown']], standing)).toBe(standing);
  });

  it('keeps an on-delay running: the first reading after it is told without a new delay', () => {
    const seen: Seen[] = [
      [0, 1],
      [10, 'unknown'],
      [600, 'unknown'],
    ];
    expect(standingLevel(run(seen))).toBe(0);
    expect(standingLevel(run([...seen, [601, 1]]))).toBe(1);
  });

  it('keeps an off-delay running as well', () => {
    const seen: Seen[] = [
      [0, 0],
      [10, 'unknown'],
    ];
    expect(standingLevel(run(seen, standing))).toBe(1);
    expect(standingLevel(run([...seen, [40, 0]], standing))).toBe(0);
  });
});

describe('its memory', () => {
  it('is plain JSON: a delay that runs goes on after it was written and read again', () => {
    const before = run([[0, 2]]);
    const after: DebounceMemory = JSON.parse(JSON.stringify(before));
    expect(sameMemory(before, after)).toBe(true);
    expect(standingLevel(run([[29, 2]], after))).toBe(0);
    expect(standingLevel(run([[30, 2]], after))).toBe(2);
  });

  it('is not kept longer by a clock that is set back: the delay is counted from the earlier time', () => {
    const seen: Seen[] = [
      [1_000, 1],
      [500, 1],
    ];
    expect(standingLevel(run([...seen, [559, 1]]))).toBe(0);
    expect(standingLevel(run([...seen, [560, 1]]))).toBe(1);
  });

  it('is the same only when both levels and both delays are', () => {
    expect(sameMemory(standing, standingOuter)).toBe(false);
    expect(sameMemory(calmMemory, run([[0, 1]]))).toBe(false);
    expect(sameMemory(run([[0, 1]]), run([[1, 1]]))).toBe(false);
  });
});
