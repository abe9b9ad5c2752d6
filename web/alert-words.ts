// What the service worker says by itself: it is built without the rest, and hears only from the browser which language its reader prefers.
import type { Language } from '../shared/languages.ts';

export interface AlertWords {
  readonly fallbackTitle: string;
  readonly fallbackBody: string;
  readonly acknowledge: string;
  readonly open: string;
  readonly acknowledgeFailed: string;
}

export const alertWords: Readonly<Record<Language, AlertWords>> = {
  en: {
    fallbackTitle: 'Takewell',
    fallbackBody: 'Open Takewell to see what it is.',
    acknowledge: 'Acknowledge',
    open: 'Open',
    acknowledgeFailed: 'Not acknowledged: open Takewell and acknowledge there.',
  },
  nl: {
    fallbackTitle: 'Takewell',
    fallbackBody: 'Open Takewell om te zien wat het is.',
    acknowledge: 'Bevestigen',
    open: 'Openen',
    acknowledgeFailed: 'Niet bevestigd: open Takewell en bevestig daar.',
  },
  es: {
    fallbackTitle: 'Takewell',
    fallbackBody: 'Abra Takewell para ver qué es.',
    acknowledge: 'Confirmar',
    open: 'Abrir',
    acknowledgeFailed: 'Sin confirmar: abra Takewell y confirme allí.',
  },
};
