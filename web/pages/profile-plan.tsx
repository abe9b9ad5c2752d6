// The head of a profile: its name, its plan as a strip, and its note.

import type { ProfileView } from '../../shared/api/profiles.ts';
import { words } from '../late-strings.ts';
import { planText } from '../plan-text.ts';
import { PlanStrip } from '../strip/plan-strip.tsx';

export function ProfilePlan({ profile }: { readonly profile: ProfileView }) {
  const { document } = profile;
  return (
    <>
      <div class="profile-plan">
        <h2>
          {planText(document.name)} <small>{words.profiles.version(profile.version)}</small>
        </h2>
        <p class="details">{planText(document.crop)}</p>
        <div class="strip">
          <PlanStrip document={document} />
        </div>
      </div>
      {document.note !== '' && <p class="profile-note">{planText(document.note)}</p>}
    </>
  );
}
