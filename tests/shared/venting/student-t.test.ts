import { expect, test } from 'vitest';
import { studentT975 } from '../../../shared/venting/student-t.ts';

// The usual printed table of Student's t, two-sided 95 % (from memory).
test.each([
  { freedom: 3, table: 3.182 },
  { freedom: 4, table: 2.776 },
  { freedom: 5, table: 2.571 },
  { freedom: 10, table: 2.228 },
  { freedom: 30, table: 2.042 },
  { freedom: 120, table: 1.98 },
])('with $freedom degrees of freedom it is $table, within 0.15 %', ({ freedom, table }) => {
  expect(Math.abs(studentT975(freedom) / table - 1)).toBeLessThan(0.0015);
});
