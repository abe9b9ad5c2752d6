// Many hints make few questions, and none is lost.
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { paced } from '../../web/paced.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const periodMs = 5_000;

test('the first hint acts at once', () => {
  const act = vi.fn();
  paced(act, periodMs)();
  expect(act).toHaveBeenCalledTimes(1);
});

test('many hints within a period act once more, when it is over', () => {
  const act = vi.fn();
  const hint = paced(act, periodMs);
  for (let count = 0; count < 100; count++) hint();
  vi.advanceTimersByTime(periodMs - 1);
  expect(act).toHaveBeenCalledTimes(1);
  vi.advanceTimersByTime(1);
  expect(act).toHaveBeenCalledTimes(2);
});

test('a hint that comes after such a catching-up waits for its period too', () => {
  const act = vi.fn();
  const hint = paced(act, periodMs);
  hint();
  hint();
  vi.advanceTimersByTime(periodMs);
  hint();
  vi.advanceTimersByTime(periodMs - 1);
  expect(act).toHaveBeenCalledTimes(2);
  vi.advanceTimersByTime(1);
  expect(act).toHaveBeenCalledTimes(3);
});

test('after a quiet period a hint acts at once again, and nothing acts by itself', () => {
  const act = vi.fn();
  const hint = paced(act, periodMs);
  hint();
  vi.advanceTimersByTime(10 * periodMs);
  expect(act).toHaveBeenCalledTimes(1);
  hint();
  expect(act).toHaveBeenCalledTimes(2);
});
