// The rota as people say it: equal hours of one person on several days are one line, "Ann: Mon–Fri, 06:00–14:00".
import type { DutyView } from '../shared/api/duty.ts';
import { words } from './late-strings.ts';

type DutySpan = DutyView['spans'][number];

const { duty: say } = words;

/** Spans of one person with the same hours, and how that is said. */
export interface DutyLine {
  readonly key: string;
  readonly text: string;
  readonly spans: readonly DutySpan[];
}

/** The lines of a rota, by name and then by hour. */
export function dutyLines({ spans, people }: Pick<DutyView, 'spans' | 'people'>): DutyLine[] {
  const nameOf = (id: string) => people.find((one) => one.id === id)?.name ?? '';
  const groups = Map.groupBy(spans, ({ personId, from, to }) => `${nameOf(personId)} ${from} ${to} ${personId}`);
  return [...groups]
    .sort(([a], [b]) => a.localeCompare(b))
    .flatMap(([key, own]) => {
      const [first] = own;
      if (first === undefined) return [];
      const text = say.rotaLine(nameOf(first.personId), sayDays(own.map(({ weekday }) => weekday)), sayHours(first));
      return [{ key, text, spans: own }];
    });
}

/** "Mon–Fri", "Mon, Wed–Fri", "every day". `weekdays` are 1–7, in any order. */
export function sayDays(weekdays: readonly number[]): string {
  const days = [...new Set(weekdays)].sort((a, b) => a - b);
  if (days.length === 7) return say.everyDay;
  const runs: number[][] = [];
  for (const day of days) {
    const run = runs.at(-1);
    if (run !== undefined && run.at(-1) === day - 1) run.push(day);
    else runs.push([day]);
  }
  return runs.flatMap(sayRun).join(', ');
}

function sayRun(run: readonly number[]): string[] {
  const short = run.map((day) => say.daysShort[day - 1] ?? '');
  return run.length < 3 ? short : [say.daysRange(short[0] ?? '', short.at(-1) ?? '')];
}

/** "06:00–14:00", "22:00–06:00 the next day", "the whole day". */
export function sayHours({ from, to }: Pick<DutySpan, 'from' | 'to'>): string {
  if (from === to && from === '00:00') return say.wholeDay;
  const hours = say.hours(from, to === '00:00' ? '24:00' : to);
  return from < to || to === '00:00' ? hours : say.nextDay(hours);
}

/** One piece of a day's row of the picture: from and to as shares of the day, 0–1. */
export interface DutyBar {
  readonly personId: string;
  readonly from: number;
  readonly to: number;
  /** Those who are on duty at once lie in lanes of their own, from 0. */
  readonly lane: number;
}

/** The bars of each weekday, Monday first; what goes through midnight goes on in the next row, Sunday's in Monday's. */
export function weekBars(spans: readonly DutySpan[]): DutyBar[][] {
  const rows: Omit<DutyBar, 'lane'>[][] = [[], [], [], [], [], [], []];
  for (const { personId, weekday, from, to } of spans) {
    const [begins, ends] = [shareOf(from), shareOf(to)];
    const isThrough = ends <= begins;
    rows[weekday - 1]?.push({ personId, from: begins, to: isThrough ? 1 : ends });
    if (isThrough && ends > 0) rows[weekday % 7]?.push({ personId, from: 0, to: ends });
  }
  return rows.map(inLanes);
}

function inLanes(row: readonly Omit<DutyBar, 'lane'>[]): DutyBar[] {
  const ends: number[] = [];
  return [...row]
    .sort((a, b) => a.from - b.from)
    .map((bar) => {
      const free = ends.findIndex((end) => end <= bar.from);
      const lane = free < 0 ? ends.length : free;
      ends[lane] = bar.to;
      return { ...bar, lane };
    });
}

function shareOf(time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return (hours * 60 + minutes) / (24 * 60);
}

/** The rota as it is sent, without what is only shown. */
export function dutyOf({ spans, order, ...view }: DutyView) {
  const { nextAfterMinutes, everyoneAfterMinutes, sirenAfterMinutes, repeatMinutes } = view;
  return { spans, order, nextAfterMinutes, everyoneAfterMinutes, sirenAfterMinutes, repeatMinutes };
}
