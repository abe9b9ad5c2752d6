// What changed from one version of a plan to another, in sentences. Pure.

import type { Moment, ProfileChange } from '../shared/healing/compare-profiles.ts';
import type { Limit } from '../shared/healing/profile.ts';
import { words } from './late-strings.ts';
import { limitWords, momentWords, type Quantity } from './limit-words.ts';
import { planText } from './plan-text.ts';
import { temperatureDifferenceText } from './quantities.ts';

/** One change as one sentence. */
export function changeWords(change: ProfileChange): string {
  return planChange(change) ?? stageChange(change) ?? checkChange(change);
}

function planChange(change: ProfileChange): string | null {
  const { changed } = words;
  switch (change.what) {
    case 'note':
      return changed.noteChanged;
    case 'name':
    case 'crop':
      return fromTo(changed[change.what], written(change.before), written(change.after));
    case 'ends':
      return fromTo(changed.ends, moment(change.before), moment(change.after));
    case 'grace': {
      const text = (value: number | null) => (value === null ? null : amount(value, change.quantity));
      return fromTo(changed.grace(quantityName(change.quantity)), text(change.before), text(change.after));
    }
    case 'silence':
      return fromTo(changed.silence, number(change.before), number(change.after));
    default:
      return null;
  }
}

function stageChange(change: ProfileChange): string | null {
  const { changed } = words;
  switch (change.what) {
    case 'stage-added':
      return changed.stageAdded(words.editor.stageNames[change.stage]);
    case 'stage-removed':
      return changed.stageRemoved(words.editor.stageNames[change.stage]);
    case 'begins':
      return fromTo(changed.begins(words.editor.stageNames[change.stage]), moment(change.before), moment(change.after));
    case 'vpd': {
      const what = changed.vpd(words.editor.stageNames[change.stage]);
      return fromTo(what, watched(number(change.before)), watched(number(change.after)));
    }
    case 'limit': {
      const { stage, quantity, limit, before, after } = change;
      const name = words.editor.limits[limit].toLowerCase();
      const what = changed.limit(words.editor.stageNames[stage], quantityName(quantity), name);
      return fromTo(what, watched(limitText(before, quantity)), watched(limitText(after, quantity)));
    }
    case 'basis':
      return change.stage === null ? changed.basisOfGrace : changed.basis(words.editor.stageNames[change.stage]);
    default:
      return null;
  }
}

function checkChange(change: ProfileChange): string {
  const { changed } = words;
  if (change.what === 'check-added') return changed.checkAdded(planText(change.question));
  if (change.what === 'check-removed') return changed.checkRemoved(planText(change.question));
  if (change.what !== 'check') return '';
  const { question, part, before, after } = change;
  const text = (value: string | number | null) => (value === null ? null : partText(part, String(value)));
  return fromTo(changed.check(planText(question), changed.checkParts[part]), text(before), text(after));
}

function partText(part: string, value: string): string {
  if (part === 'atStage' && value in words.stages) return words.stages[value as keyof typeof words.stages];
  if (part === 'sameAs' && value in words.editor.sameAsOptions)
    return words.editor.sameAsOptions[value as keyof typeof words.editor.sameAsOptions];
  return planText(value);
}

/** A name or crop: of a shipped profile in the reader's language. */
function written(text: string | null): string | null {
  return text === null ? null : planText(text);
}

function fromTo(what: string, before: string | null, after: string | null): string {
  return words.changed.fromTo(what, before ?? words.changed.nothing, after ?? words.changed.nothing);
}

function moment(value: Moment | null): string | null {
  return value === null ? null : momentWords(value.afterHours, value.notBefore);
}

function number(value: number | null): string | null {
  return value === null ? null : String(value);
}

function watched(text: string | null): string {
  return text ?? words.changed.notWatched;
}

function limitText(limit: Limit | null, quantity: Quantity): string | null {
  return limit === null ? null : limitWords(limit, quantity);
}

function quantityName(quantity: Quantity): string {
  return words.editor.quantities[quantity].toLowerCase();
}

function amount(value: number, quantity: Quantity): string {
  return quantity === 'temperature' ? temperatureDifferenceText(value) : String(value);
}
