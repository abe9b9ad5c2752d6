// What can be done with a profile: edit it into a new version, copy it, save it as a file, see its versions.

import type { ProfileView } from '../../shared/api/profiles.ts';
import { words } from '../late-strings.ts';
import { planText } from '../plan-text.ts';
import { profilePath } from '../router.ts';
import { maySetUp } from '../session.ts';

/** Hands the document to the browser as a JSON file, in the form that `takewell profile check` reads. */
function saveAsFile({ id, version, document: plan }: ProfileView): void {
  const url = URL.createObjectURL(new Blob([`${JSON.stringify(plan, null, 2)}\n`], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = `${id}-${version}.json`;
  link.click();
  URL.revokeObjectURL(url);
}

interface Props {
  readonly profile: ProfileView;
  /** On the page of the profile itself there is no link to it. */
  readonly isOwnPage?: boolean;
}

export function ProfileActs({ profile, isOwnPage = false }: Props) {
  const { id, document } = profile;
  const { versions } = words;
  const name = planText(document.name);
  return (
    <div class="acts profile-acts">
      {!isOwnPage && (
        <a class="button" href={profilePath(id)} aria-label={versions.actFor(versions.open, name)}>
          {versions.open}
        </a>
      )}
      {maySetUp.value && (
        <>
          <a class="button" href={`${profilePath(id)}/edit`} aria-label={versions.actFor(versions.edit, name)}>
            {versions.edit}
          </a>
          <a class="button" href={`${profilePath(id)}/copy`} aria-label={versions.actFor(versions.copy, name)}>
            {versions.copy}
          </a>
        </>
      )}
      <button type="button" aria-label={versions.actFor(versions.file, name)} onClick={() => saveAsFile(profile)}>
        {versions.file}
      </button>
    </div>
  );
}
