// What happened, in words: for the values at the cross-hair and under the table.

import type { ChartEvent } from '../../shared/api/chambers.ts';
import { planText } from '../plan-text.ts';
import { words } from '../strings.ts';
import { dayAndTime } from '../when.ts';

function wordOf(table: Readonly<Record<string, string>>, key: string, otherwise: string): string {
  return table[key] ?? otherwise;
}

/** One event in words, without its time: "Misted", "Film wet?: answered yes". What a person wrote stands as it was written. */
export function eventWords({ kind, what, label }: ChartEvent): string {
  switch (kind) {
    case 'check':
      return words.chart.checkWas(planText(label), wordOf(words.chart.answers, what, what));
    case 'log': {
      const said = wordOf(words.logKinds, what, label);
      return label === what ? said : words.chart.noted(said, label);
    }
    case 'alarm':
      return wordOf(words.rules, what, label);
    case 'stage':
      return wordOf(words.stages, what, label);
    case 'hold':
      return words.chart.onHold;
  }
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
