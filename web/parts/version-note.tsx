// Says that there is a newer version of the page. It is loaded when the reader says so or goes to another page, never over what is being typed.
import { isOutdated } from '../new-version.ts';
import { words } from '../strings.ts';

export function VersionNote() {
  if (!isOutdated.value) return null;
  return (
    <div class="version-note" role="status">
      <p>{words.version.newer}</p>
      <button type="button" onClick={() => location.reload()}>
        {words.version.load}
      </button>
    </div>
  );
}
