import { expect, it } from 'vitest';
import { lockData } from '../../../server/store/data-lock.ts';
import { makeTestFolder } from '../../support/open-test-app.ts';

it('gives the data folder to one service at a time, and says what to do', async () => {
  const folder = await makeTestFolder();
  const unlock = lockData(folder);
  expect(() => lockData(folder)).toThrow(/Another Takewell uses the data folder .*: stop it, or set TAKEWELL_DATA_DIR/);
  unlock();
  lockData(folder)();
});
