// The catalogues of the page: every text in every language, nothing that is given left out, nothing left in English but what is listed.
import { describe, expect, it } from 'vitest';
import type { Words } from '../../web/late-strings.ts';
import { pageTexts } from '../support/page-texts.ts';
import { dutch, english, spanish } from '../support/page-words.ts';

const languages: readonly (readonly [name: string, Words])[] = [
  ['English', english],
  ['Dutch', dutch],
  ['Spanish', spanish],
];

/** Paths whose text may be the same as in English: names, units, signs, and words that two languages share. */
const alike =
  /^(product|units|age\.(seconds|minutes|hours)|chart\.(hour|sixHours|day|dayCell|meanMinMax|range|share|pair|checkWas|noted|readPlan|columns\.tempPlan|columns\.corridor)|quantities\.(vpdShort|limits)|when\.on|certainty\.(plusMinus|vpd)|sensors\.(topic|payload|where|hears|columns\.topic)|batches\.take|batch\.(csv|json)|learning\.(takeInterval|association|picture|pair)|overview\.(fillingMark|trays|graft)|batch\.(profileOption|trays|facts\.size2|facts\.version|method)|profiles\.(constant|ramp|stairs|more|less|outer)|howOften\.percent|pageTitle|settings\.(units|metres)|venting\.leftOutLine|log\.(workingFor|gapWords|corrected)|chart\.later|acts\.no|chart\.answers\.no|checks\.answeredNo|checks\.noFor|nav\.(overview|people)|alarms\.newAlarm|menu|roles|duty\.(gap|daysRange|hours|rotaLine)|editor\.(limitHandle|parts\.value|place\.plan|check|borderShort)|versions\.(actFor|faultAt|option)|changed\.(fromTo|limit)|batches\.batchIn|channels\.(email|webhooks|asJson)$|guide\.(topicName|topic|simulate))/;

describe.each(languages)('%s', (_, words) => {
  const texts = pageTexts(words);

  it('has every text, none of them empty', () => {
    expect(texts.map(({ path }) => path).sort()).toEqual(
      pageTexts(english)
        .map(({ path }) => path)
        .sort(),
    );
    // A limit that stays says no part of itself.
    expect(texts.filter(({ text, path }) => text.trim() === '' && path !== 'editor.parts.value')).toEqual([]);
  });

  it('says everything that it is given', () => {
    const silent = texts.filter(({ text, given }) =>
      given.some((one) => !text.toLowerCase().includes(one.toLowerCase())),
    );
    expect(silent).toEqual([]);
  });

  it('leaves no gap in a sentence', () => {
    expect(texts.filter(({ text }) => /undefined|NaN|\[object|\s{2}|^\s|[^:]\s$/.test(text))).toEqual([]);
  });
});

describe.each(languages.slice(1))('%s', (_, words) => {
  it('is said otherwise than English, but for names, units and signs', () => {
    const said = new Map(pageTexts(english).map(({ path, text }) => [path, text]));
    const same = pageTexts(words).filter(({ path, text }) => said.get(path) === text && !alike.test(path));
    expect(same).toEqual([]);
  });
});
