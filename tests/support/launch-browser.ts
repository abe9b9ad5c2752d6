// Starts a real Chromium with a fresh profile that talks to nobody but the page it is shown.
import { type Browser, type BrowserServer, chromium } from 'playwright-core';
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
  return chromium.launch(await howToLaunch());
}

/** The same for several processes, each of which connects to its endpoint. */
export async function serveBrowser(): Promise<BrowserServer> {
  return chromium.launchServer({ ...(await howToLaunch()), host: '127.0.0.1' });
}

async function howToLaunch() {
  const { executablePath, environment } = await findChromium();
  return { executablePath, args: quiet, env: { ...process.env, ...environment } };
}
