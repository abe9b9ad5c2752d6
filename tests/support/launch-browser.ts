// Starts a real Chromium with a fresh profile that talks to nobody but the page it is shown.
import { type Browser, chromium } from 'playwright-core';
import { findChromium } from './find-chromium.ts';

const quiet = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Whoever starts it closes it. Throws an Error of one sentence when there is none. */
export async function launchBrowser(): Promise<Browser> {
  const { executablePath, environment } = await findChromium();
  const env = { ...process.env, ...environment };
  return chromium.launch({ executablePath, args: quiet, env });
}
