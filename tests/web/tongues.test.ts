// The pages as people of another language meet them on a phone that is far from the site: no English left over, their unit, the clock of the site.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Language } from '../../shared/languages.ts';
import { because } from '../../shared/readings/reason.ts';
import { sayRefusal } from '../../shared/readings/say-refusal.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { wordsOf } from '../../shared/words/words-of.ts';
import type { Words } from '../../web/late-strings.ts';
import { openBrowser, openPage, phone, signInOn } from '../support/browser.ts';
import { connectNode } from '../support/connect-node.ts';
import { drawnText, keepDrawnText } from '../support/drawn-text.ts';
import { englishParts, leftInEnglish, linesOf, unfold } from '../support/left-in-english.ts';
import { comeToRest, expectNoSidewaysScroll, keepPicture, watchConsole } from '../support/look-at-page.ts';
import { dutch, english, spanish } from '../support/page-words.ts';
import { DEMO_MANAGER, openStillDemo } from '../support/still-demo.ts';

const siteZone = 'Europe/Amsterdam';
/** Eight hours behind the site on the day of the demo. */
const farAway = { timezoneId: 'America/Denver' };

/** What people of the demo wrote themselves stands as they wrote it: lines of the log, names of probes. */
const written = [
  /Light mist by hand|Two trays by the door|Fine drops all over|Floor and film misted|Still up an hour/,
  /(^|: | de | van )(Under the film|House air)$/,
];

const tongues: readonly { language: Language; words: Words; name: string }[] = [
  { language: 'nl', words: dutch, name: 'Dutch' },
  { language: 'es', words: spanish, name: 'Spanish' },
];

describe.each(tongues)('who reads $name', ({ language, words }) => {
  it('finds every page in it, in their unit and by the clock of the site', async () => {
    const demo = await openStillDemo();
    await demo.goOnTo(3 * MINUTE_MS);
    await (await connectNode(demo.mqttPort, 'bench')).send({ temperature: 'warm' });
    const refusal = sayRefusal(because('temperatureNoNumber', because('text', '"warm"')), wordsOf[language]);
    const page = await openPage(await openBrowser(), demo.url, phone, farAway);
    const faults = watchConsole(page);
    await keepDrawnText(page);
    await page.goto('/my-alerts');
    await signInOn(page, DEMO_MANAGER);
    await choose(page, language, words);
    await expectDrawnStages(page, words);

    const parts = englishParts(words);
    const tents = new Map((await demo.chambers()).map(({ name, id }) => [name, id]));
    const left: Record<string, string[]> = {};
    for (const [name, path] of [
      ['overview', '/'],
      ['chamber-hot', `/chambers/${tents.get('Tent 1')}`],
      ['chamber-venting', `/chambers/${tents.get('Tent 3')}`],
      ['alarms', '/alarms'],
      ['batches', '/batches'],
      ['profiles', '/profiles'],
      ['sensors', '/sensors'],
      ['people', '/people'],
      ['my-alerts', '/my-alerts'],
      ['channels', '/channels'],
      ['settings', '/settings'],
      ['first-batch', '/first-batch'],
      ['nothing', '/no-such-page'],
      ...(await profilePages(page)),
    ] as const) {
      await page.goto(path);
      await comeToRest(page, words);
      await keepPicture(page, `${language}-${name}`, phone);
      await expectNoSidewaysScroll(page, `${name} in ${language}`);
      expect(await strangeTimes(page), `clock of ${name}`).toEqual([]);
      await unfold(page);
      await comeToRest(page, words);
      const lines = await linesOf(page);
      expect(lines.length, name).toBeGreaterThan(10);
      const found = leftInEnglish(lines, parts, written);
      if (found.length > 0) left[name] = found;
      if (name === 'sensors') expect(lines.filter((line) => line.includes(refusal))).toHaveLength(1);
      if (name.startsWith('chamber'))
        expect(
          lines.filter((line) => /\d °C/.test(line)),
          name,
        ).toEqual([]);
      if (name.startsWith('chamber'))
        expect(
          lines.some((line) => /\d °F/.test(line)),
          name,
        ).toBe(true);
    }
    expect(left).toEqual({});
    expect(faults).toEqual([]);
  }, 180_000);
});

describe('the search for English', () => {
  const parts = englishParts(dutch);

  it.each([
    ['a sentence of the catalogue', 'In order. Nothing more is due', true],
    ['one round a name', 'Plan of Tomaat as a strip', true],
    ['one of no catalogue', 'Open the gap to 10 %', true],
    ['Dutch', 'De folie is nat van binnen, of was het vanochtend', false],
    ['what a person wrote', 'Blew in from the north', false],
  ])('knows %s', (_, line, isEnglish) => {
    expect(leftInEnglish([line], parts, [/^Blew in/])).toEqual(isEnglish ? [line] : []);
  });
});

/** Chooses language and °F in the form for it; the page comes anew. */
async function choose(page: Page, language: Language, words: Words): Promise<void> {
  const form = page.getByRole('form', { name: 'Language and units' });
  await form.getByLabel('Language').selectOption(language);
  await form.getByLabel('Temperatures in').selectOption('°F');
  await form.getByRole('button').click();
  await page.getByRole('heading', { name: words.myLanguage.title }).waitFor();
  expect(await page.locator('html').getAttribute('lang')).toBe(language);
}

/** The names of the stages under the strips are drawn, so that they stand in no text of the page. */
async function expectDrawnStages(page: Page, words: Words): Promise<void> {
  await page.goto('/');
  await comeToRest(page, words);
  const drawn = await drawnText(page, '.strip >> nth=0 >>');
  expect(drawn).toContain(words.stages.closed);
  expect(drawn).not.toContain(english.stages.closed);
}

/** A shipped profile as it is read, edited and copied. */
async function profilePages(page: Page): Promise<(readonly [name: string, path: string])[]> {
  const answer = await page.request.get('/api/v1/profiles');
  const { items } = (await answer.json()) as { items: { id: string }[] };
  const [first] = items;
  if (first === undefined) throw new Error('the demo has no profile');
  const own = `/profiles/${first.id}`;
  return [
    ['profile', own],
    ['profile-edit', `${own}/edit`],
    ['profile-copy', `${own}/copy`],
  ];
}

/** Times that are said otherwise than by a clock at the site. */
async function strangeTimes(page: Page): Promise<string[]> {
  const times = await page
    .locator('time[datetime]')
    .evaluateAll((all) => all.map((one) => ({ at: one.getAttribute('datetime') ?? '', said: one.textContent ?? '' })));
  const clock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone: siteZone });
  return times
    .filter(({ said }) => /\d{1,2}:\d{2}/.test(said))
    .filter(({ at, said }) => !said.includes(clock.format(new Date(at))))
    .map(({ at, said }) => `${said} for ${at}`);
}
