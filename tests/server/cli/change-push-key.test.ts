// The `change-push-key` command: a new key for browsers, and the earlier one for the phones that have it.
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { openVapidKeys } from '../../../server/notify/vapid-keys.ts';
import { openStore } from '../../../server/store/open-store.ts';
import { runForJson, temporaryFolder } from './run-takewell.ts';

const subject = () => 'mailto:takewell@nursery.example';

it.each([
  ['keeps the earlier one', [], true],
  ['forgets it when asked to', ['--forget-earlier'], false],
])('%s', async (_what, options, isKept) => {
  const dataDir = temporaryFolder();
  const store = openStore({ file: join(dataDir, 'takewell.sqlite'), nowMs: 0 });
  onTestFinished(() => store.close());
  const before = await openVapidKeys(store.settings, subject);
  const told = await runForJson(['change-push-key', ...options], { dataDir });
  const after = await openVapidKeys(store.settings, subject);
  expect(told).toEqual({ publicKey: after.publicKey, forgotEarlier: !isKept });
  expect(after.publicKey).not.toBe(before.publicKey);
  expect(after.pairOf(before.publicKey) !== null).toBe(isKept);
});
