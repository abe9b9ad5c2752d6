// What stands in the way of a plan, in one place beside the button that saves: each fault leads to its field.

import type { ProfileDocument } from '../../shared/healing/profile.ts';
import type { FieldFault } from '../api.ts';
import { words } from '../late-strings.ts';
import { fieldId } from './draft-field.tsx';

interface Props {
  readonly draft: ProfileDocument;
  readonly faults: readonly FieldFault[];
  /** Called before a fault's field is looked for, so that the part of the form it stands in is there. */
  readonly onGo: () => void;
}

const mostShown = 6;

/** Where a fault lies, in words: the stage and its limit, the check, or the plan. */
function placeWords(where: string, draft: ProfileDocument): string {
  const { editor } = words;
  const [, list, place, quantity, limit] = where.split('/');
  const index = Number(place);
  if (list === 'checks') return editor.place.check(index + 1);
  if (list !== 'stages') return editor.place.plan;
  const plan = draft.stages[index];
  if (plan === undefined) return editor.place.stages;
  const parts = [
    editor.stageNames[plan.stage],
    quantity === 'temperature' || quantity === 'humidity' ? editor.quantities[quantity].toLowerCase() : '',
    limit !== undefined && limit in editor.limits
      ? editor.limits[limit as keyof typeof editor.limits].toLowerCase()
      : '',
  ];
  return parts.filter((part) => part !== '').join(', ');
}

/** The field of a fault, or the nearest that holds it. */
function goToFault(where: string): void {
  for (let place = where; place !== ''; place = place.slice(0, place.lastIndexOf('/'))) {
    const field = document.getElementById(fieldId(place));
    if (field === null) continue;
    field.scrollIntoView({ block: 'center' });
    field.focus({ preventScroll: true });
    return;
  }
}

export function FaultSummary({ draft, faults, onGo }: Props) {
  return (
    <div role="status" class={faults.length === 0 ? 'fault-summary is-fine' : 'fault-summary'}>
      <p>{faults.length === 0 ? words.editor.noFaults : words.editor.faults(faults.length)}</p>
      <ul>
        {faults.slice(0, mostShown).map(({ where, reason }) => (
          <li key={`${where} ${reason}`}>
            <b>{placeWords(where, draft)}</b> {reason}{' '}
            <button
              type="button"
              class="quiet"
              aria-label={`${words.editor.goTo}: ${placeWords(where, draft)}`}
              onClick={() => {
                onGo();
                // The view is drawn first: the field may not be there yet.
                requestAnimationFrame(() => goToFault(where));
              }}
            >
              {words.editor.goTo}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
