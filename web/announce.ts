// What screen readers are told without being asked, and the short notes after an act.
import { signal } from '@preact/signals';

export interface Announcement {
  readonly text: string;
  readonly key: number;
}
export interface Note extends Announcement {
  readonly isProblem: boolean;
}

const noteMs = 4_500;
/** What is longer than a few words stands longer: ours, about 15 letters a second. */
const msALetter = 65;
const shortLetters = 40;
let nextKey = 1;

export const polite = signal<Announcement | undefined>(undefined);
export const assertive = signal<Announcement | undefined>(undefined);
export const note = signal<Note | undefined>(undefined);

/** Tells screen readers; `assertive` interrupts and is for alarms only. */
export function announce(text: string, manner: 'polite' | 'assertive'): void {
  const target = manner === 'polite' ? polite : assertive;
  target.value = { text, key: nextKey++ };
}

/** Shows a short note at the foot of the page. A problem stays until it is closed. */
export function showNote(text: string, isProblem = false): void {
  const shown: Note = { text, isProblem, key: nextKey++ };
  note.value = shown;
  if (isProblem) return;
  setTimeout(
    () => {
      if (note.value?.key === shown.key) note.value = undefined;
    },
    noteMs + Math.max(0, text.length - shortLetters) * msALetter,
  );
}

export function closeNote(): void {
  note.value = undefined;
}
