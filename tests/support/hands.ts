// How a person acts on a page: with a finger, with a mouse, or with keys alone.
import type { Locator } from 'playwright-core';
import { expect } from 'vitest';

export interface Hand {
  press(target: Locator): Promise<void>;
  /** In place of what stands in the field. */
  write(target: Locator, text: string): Promise<void>;
  /** One of a list, by what is written there. */
  choose(target: Locator, label: string): Promise<void>;
}

const choose: Hand['choose'] = async (target, label) => void (await target.selectOption({ label }));

export const finger: Hand = {
  press: (target) => target.tap(),
  async write(target, text) {
    await target.tap();
    await target.fill(text);
  },
  choose,
};

export const mouse: Hand = {
  press: (target) => target.click(),
  write: (target, text) => target.fill(text),
  choose,
};

export const keys: Hand = {
  async press(target) {
    await tabTo(target);
    await target.page().keyboard.press('Enter');
  },
  async write(target, text) {
    await tabTo(target);
    await target.page().keyboard.press('Control+A');
    await target.page().keyboard.type(text);
  },
  async choose(target, label) {
    await tabTo(target);
    await target.page().keyboard.type(label);
  },
};

/** More than any page has. */
const MOST_STOPS = 80;

/** Goes on by Tab until the target has the focus, and shows it. Fails when no number of presses leads there. */
async function tabTo(target: Locator): Promise<void> {
  await target.waitFor();
  for (let stop = 0; stop < MOST_STOPS; stop++) {
    if (await target.evaluate((element) => element === document.activeElement)) break;
    await target.page().keyboard.press('Tab');
  }
  expect(await target.evaluate((element) => element.matches(':focus-visible')), String(target)).toBe(true);
}
