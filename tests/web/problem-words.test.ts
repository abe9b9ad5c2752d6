// What people read when the service says no.
import { describe, expect, test } from 'vitest';
import { problemFrom } from '../../web/api.ts';

const problem = (status: number, detail: string, faults?: { where: string; reason: string }[]) => ({
  ...{ type: 'about:blank', title: 'Problem', status, detail },
  ...(faults === undefined ? {} : { faults }),
});

describe('the service’s own words are shown where they are meant for people', () => {
  test.each<[number, unknown, string, string]>([
    [400, problem(400, 'Give the batch a code.'), 'Give the batch a code.', 'its words'],
    [503, problem(503, 'The disk is full.'), 'The disk is full.', 'out of order says why'],
    [
      500,
      problem(500, 'TypeError: x'),
      'The service had a problem. Nothing was changed; try again in a minute.',
      'inner faults stay inside',
    ],
    [403, problem(403, ''), 'Your role does not allow this. Ask a manager.', 'no words: ours'],
    [404, undefined, 'That does not exist any more. Reload the page.', 'no body at all'],
    [502, '<html>', 'The service had a problem. Nothing was changed; try again in a minute.', 'a proxy’s page'],
  ])('%i %o: "%s" (%s)', (status, body, said) => {
    expect(problemFrom(status, body).message).toBe(said);
  });
});

test('faults keep their place, so that they stand at their field', () => {
  const faults = [{ where: '/password', reason: 'use at least 10 characters' }];
  expect(problemFrom(400, problem(400, 'The form has a fault.', faults)).faults).toEqual(faults);
});
