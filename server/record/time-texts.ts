// The two time columns of a record: UTC, which is unambiguous, and what the site's clocks showed, which is what a person remembers.
// Made for a million instants near each other: a minute is written once, and a zone is looked up once between two shifts of its clocks.
import { Temporal } from 'temporal-polyfill';
import { MINUTE_MS, SECOND_MS } from '../../shared/units.ts';

export interface TimeTexts {
  /** RFC 3339 UTC; whole seconds are written without a fraction. */
  utc(ms: number): string;
  /** `YYYY-MM-DD HH:mm:ss` in the zone; fractions of a second are cut off. */
  local(ms: number): string;
}

/** Writers of whole-millisecond instants in the years 0–9999; `zone` is an IANA time zone. */
export function makeTimeTexts(zone: string): TimeTexts {
  const utcMinute = rememberMinute((ms) => new Date(ms).toISOString().slice(0, 17));
  const localMinute = rememberMinute((ms) => new Date(ms).toISOString().slice(0, 17).replace('T', ' '));
  const offsetMsAt = makeOffset(zone);
  return {
    utc: (ms) => `${utcMinute(ms)}${secondsText(ms)}${fractionText(ms)}Z`,
    local(ms) {
      const shownMs = ms + offsetMsAt(ms);
      return localMinute(shownMs) + secondsText(shownMs);
    },
  };
}

/** Keeps the text of the minute asked for last. */
function rememberMinute(write: (ms: number) => string): (ms: number) => string {
  let minute = Number.NaN;
  let text = '';
  return (ms) => {
    const wanted = Math.floor(ms / MINUTE_MS);
    if (wanted !== minute) {
      minute = wanted;
      text = write(ms);
    }
    return text;
  };
}

const twoDigits = Array.from({ length: 60 }, (_, number) => String(number).padStart(2, '0'));

function secondsText(ms: number): string {
  const intoMinute = ms - Math.floor(ms / MINUTE_MS) * MINUTE_MS;
  return twoDigits[Math.floor(intoMinute / SECOND_MS)] ?? '';
}

function fractionText(ms: number): string {
  const intoSecond = ms - Math.floor(ms / SECOND_MS) * SECOND_MS;
  return intoSecond === 0 ? '' : `.${String(intoSecond).padStart(3, '0')}`;
}

/** The zone's offset from UTC in ms at an instant. */
function makeOffset(zone: string): (ms: number) => number {
  let span = { fromMs: 0, toMs: 0, offsetMs: 0 };
  return (ms) => {
    if (ms < span.fromMs || ms >= span.toMs) span = steadySpan(ms, zone);
    return span.offsetMs;
  };
}

/** From an instant up to the next shift, the zone keeps one offset. */
function steadySpan(ms: number, zone: string): { fromMs: number; toMs: number; offsetMs: number } {
  const at = Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(zone);
  const toMs = at.getTimeZoneTransition('next')?.epochMilliseconds ?? Number.POSITIVE_INFINITY;
  return { fromMs: ms, toMs, offsetMs: at.offsetNanoseconds / 1e6 };
}
