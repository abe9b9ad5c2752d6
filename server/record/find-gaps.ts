// Silences of one probe: where nothing at all was heard from it for longer than it may be silent.

export interface Gap {
  readonly fromMs: number;
  readonly toMs: number;
}

/** Watches one probe from `fromMs` to `toMs`. A silence of exactly `silenceMs` is not a gap. */
export class GapFinder {
  readonly #span: { readonly fromMs: number; readonly toMs: number; readonly silenceMs: number };
  readonly #gaps: Gap[] = [];
  #lastMs: number;

  constructor(span: { readonly fromMs: number; readonly toMs: number; readonly silenceMs: number }) {
    this.#span = span;
    this.#lastMs = span.fromMs;
  }

  /** The probe was heard; instants come in order of time. */
  hear(timeMs: number): void {
    if (timeMs - this.#lastMs > this.#span.silenceMs) this.#gaps.push({ fromMs: this.#lastMs, toMs: timeMs });
    this.#lastMs = timeMs;
  }

  /** The gaps, with the silence that lasts to the end of the span, if it does. */
  result(): Gap[] {
    const { toMs, silenceMs } = this.#span;
    return toMs - this.#lastMs > silenceMs ? [...this.#gaps, { fromMs: this.#lastMs, toMs }] : this.#gaps;
  }
}
