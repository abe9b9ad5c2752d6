// The two live regions and the note at the foot of the page. They stand in the page from the start, else nothing is read out.
import { assertive, closeNote, note, polite } from '../announce.ts';
import { words } from '../strings.ts';

export function Speaking() {
  const shown = note.value;
  return (
    <>
      <div class="unseen" aria-live="polite">
        {polite.value !== undefined && <p key={polite.value.key}>{polite.value.text}</p>}
      </div>
      <div class="unseen" aria-live="assertive">
        {assertive.value !== undefined && <p key={assertive.value.key}>{assertive.value.text}</p>}
      </div>
      <div class="notes" role="status">
        {shown !== undefined && (
          <div key={shown.key} class={shown.isProblem ? 'note is-problem' : 'note'}>
            <p>{shown.text}</p>
            <button type="button" class="quiet" onClick={closeNote}>
              {words.acts.close}
            </button>
          </div>
        )}
      </div>
    </>
  );
}
