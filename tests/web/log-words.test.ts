// Lines of a batch's log: what the service knows of them is said in the reader's words, what a person wrote stands as it was written.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { ChartEvent } from '../../shared/api/chambers.ts';
import type { LogEntry } from '../../shared/api/log-entry.ts';
import { checks } from '../../shared/words/en/checks.ts';
import { entryWords, noteWords } from '../../web/log-words.ts';
import { speak } from '../../web/strings.ts';
import { eventWords } from '../../web/strip/event-words.ts';
import { dutch, english, spanish } from '../support/page-words.ts';

const nowMs = Date.parse('2026-03-04T12:00:00Z');
const zone = 'Europe/Amsterdam';

function entry(given: Partial<LogEntry>): LogEntry {
  const about = { check: null, stage: null, changes: null };
  return {
    id: 'e',
    at: '2026-03-04T11:00:00Z',
    kind: 'note',
    gapPercent: null,
    ...about,
    note: '',
    person: 'An',
    ...given,
  };
}

function answered(answer: 'yes' | 'no', note = '', question: string = checks.filmWet.question): LogEntry {
  return entry({ kind: 'check', check: { id: 'film-wet', checkId: null, question, answer }, note });
}

const movedOn = entry({ kind: 'moved-on', stage: 'venting' });
const corrected = entry({
  kind: 'corrected',
  changes: [
    { field: 'scion', before: '', after: 'A → B' },
    { field: 'plants', before: 1000, after: 980 },
    { field: 'closedAt', before: '2026-03-03T22:30:00Z', after: '2026-03-04T06:05:00Z' },
  ],
});

afterEach(() => speak(english));

describe('who reads Dutch is told', () => {
  beforeEach(() => speak(dutch));

  test.each([
    ['an answer', answered('yes'), 'Controle beantwoord', 'Is de folie aan de binnenkant nat? Ja'],
    [
      'an answer with what was added, though it answers too',
      answered('no', 'not yet, yes'),
      'Controle beantwoord',
      'Is de folie aan de binnenkant nat? Nee: not yet, yes',
    ],
    [
      'a question of their own',
      answered('yes', '', 'Is it no trouble?'),
      'Controle beantwoord',
      'Is it no trouble? Ja',
    ],
    ['a stage it was moved on to', movedOn, 'Verder gezet', `${dutch.stages.venting}`],
    [
      'what was corrected, by the clock of the site',
      corrected,
      'Gecorrigeerd',
      'Ent: leeg → A → B; Planten: 1000 → 980; Gesloten: gisteren 23:30 → 07:05',
    ],
    ['a gap', entry({ kind: 'gap', gapPercent: 20, note: 'a hand' }), 'Kier gezet, 20 % open', 'a hand'],
    ['a note that reads like an answer as it is', entry({ note: 'Is it wet? yes' }), 'Notitie', 'Is it wet? yes'],
    [
      'an old line that stayed a sentence as it is',
      entry({ kind: 'check', note: 'Is it wet? perhaps' }),
      'Controle beantwoord',
      'Is it wet? perhaps',
    ],
  ])('%s', (_, line, done, beside) => {
    expect(entryWords(line)).toBe(done);
    expect(noteWords(line, nowMs, zone)).toBe(beside);
  });

  test('the same on the chart', () => {
    const said = (line: LogEntry) => {
      const event: ChartEvent = {
        at: line.at,
        until: line.at,
        kind: 'log',
        what: line.kind,
        label: 'in English',
        entry: line,
      };
      return eventWords(event, nowMs, zone);
    };
    expect(said(movedOn)).toBe(`Verder gezet: ${dutch.stages.venting}`);
    expect(said(entry({ kind: 'gap', gapPercent: 0 }))).toBe('Kier gezet, dicht');
    expect(said(entry({ kind: 'limp', note: 'two trays' }))).toBe('Planten slap: two trays');
  });
});

test('who reads Spanish is told an answer in Spanish', () => {
  speak(spanish);
  expect(noteWords(answered('no'), nowMs, zone)).toBe(`${spanish.shared.checks.filmWet.question} No`);
});

test('a page that was kept before lines carried data still says what was written', () => {
  const { check: _, stage: __, changes: ___, ...kept } = entry({ kind: 'mist', note: 'lightly' });
  expect(noteWords(kept, nowMs, zone)).toBe('lightly');
});
