// What happened, in words: for the values at the cross-hair and under the table.

import type { ChartEvent } from '../../shared/api/chambers.ts';
import { entryWords, noteWords } from '../log-words.ts';
import { planText } from '../plan-text.ts';
import { words } from '../strings.ts';
import { dayAndTime } from '../when.ts';

function wordOf(table: Readonly<Record<string, string>>, key: string, otherwise: string): string {
  return table[key] ?? otherwise;
}

/**
 * One event in words, without its own time: "Misted", "Film wet? Yes". What a person wrote stands as it was written; a time in it is said as from
 * `nowMs`, by the clock of `zone`.
 */
export function eventWords(event: ChartEvent, nowMs: number, zone: string): string {
  const { kind, what, label, entry } = event;
  switch (kind) {
    case 'check':
      return words.chart.checkWas(planText(label), wordOf(words.chart.answers, what, what));
    case 'log': {
      if (entry === undefined) return wordOf(words.logKinds, what, label);
      const note = noteWords(entry, nowMs, zone);
      return note === '' ? entryWords(entry) : words.chart.noted(entryWords(entry), note);
    }
    case 'alarm':
      return wordOf(words.rules, what, label);
    case 'stage':
      return stageWords(event);
    case 'hold':
      return words.chart.onHold;
  }
}

/** The name of a stage. */
export function stageWords({ what, label }: Pick<ChartEvent, 'what' | 'label'>): string {
  return wordOf(words.stages, what, label);
}

/** When an event was, from and to where it lasted. */
export function eventTime({ at, until, kind }: ChartEvent, nowMs: number, zone: string): string {
  const time = (text: string) => dayAndTime(Date.parse(text), nowMs, zone);
  const hasLasted = (kind === 'alarm' || kind === 'hold') && until !== null && until !== at;
  return hasLasted ? words.chart.fromTo(time(at), time(until)) : time(at);
}

/** The events that a window shows, oldest first: marks inside it, spans that reach into it. Stages are told elsewhere. Pure. */
export function eventsWithin(events: readonly ChartEvent[], fromSec: number, toSec: number): readonly ChartEvent[] {
  return events.filter((event) => {
    const at = Date.parse(event.at) / 1000;
    if (event.kind === 'stage' || at > toSec) return false;
    if (event.kind === 'check' || event.kind === 'log') return at >= fromSec;
    return event.until === null || Date.parse(event.until) / 1000 >= fromSec;
  });
}
