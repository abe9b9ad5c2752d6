// What stands in the way of a plan, in one place beside the button that saves: each fault leads to its field.

import type { ProfileDocument } from '../../shared/healing/profile.ts';
import type { FieldFault } from '../api.ts';
import { words } from '../late-strings.ts';
import { fieldId } from './draft-field.tsx';

interface Props {
  readonly draft: ProfileDocument;
  readonly faults: readonly FieldFault[];
  /** Called before a fault's field is looked for, so that the part of the form it stands in is there. */
  readonly onGo: (where: string) => void;
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

/** Opens everything that a field is folded away in. */
function unfold(field: Element): void {
  const fold = field.closest('details');
  if (fold === null) return;
  fold.open = true;
  if (fold.parentElement !== null) unfold(fold.parentElement);
}

/** The field of a fault, or the nearest that holds it, unfolded. */
function goToFault(where: string): void {
  for (let place = where; place !== ''; place = place.slice(0, place.lastIndexOf('/'))) {
    const field = document.getElementById(fieldId(place));
    if (field === null) continue;
    unfold(field);
    field.scrollIntoView({ block: 'center' });
    field.focus({ preventScroll: true });
    return;
  }
}

function GoTo({ draft, where, onGo }: Pick<Props, 'draft' | 'onGo'> & Pick<FieldFault, 'where'>) {
  return (
    <button
      type="button"
      class="quiet"
      aria-label={`${words.editor.goTo}: ${placeWords(where, draft)}`}
      onClick={() => {
        onGo(where);
        // The view is drawn first: the field may not be there yet.
        requestAnimationFrame(() => goToFault(where));
      }}
    >
      {words.editor.goTo}
    </button>
  );
}

/** Stays folded until it is asked for: it covers the numbers it tells of. */
export function FaultSummary({ draft, faults, onGo }: Props) {
  return (
    <div role="status" class="fault-summary">
      {faults.length === 0 ? (
        <p class="is-fine">{words.editor.noFaults}</p>
      ) : (
        <details>
          <summary>{words.editor.faults(faults.length)}</summary>
          <ul>
            {faults.slice(0, mostShown).map(({ where, reason }) => (
              <li key={`${where} ${reason}`}>
                <b>{placeWords(where, draft)}</b> {reason} <GoTo {...{ draft, where, onGo }} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}
