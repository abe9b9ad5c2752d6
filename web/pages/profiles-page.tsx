// The profiles to read: the plan as a strip, and the numbers behind it with where each comes from.
import type { ProfileView } from '../../shared/api/profiles.ts';
import { calls } from '../calls.ts';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { useLoad } from '../parts/use-load.ts';
import { words } from '../strings.ts';
import { PlanStrip } from '../strip/plan-strip.tsx';
import { StripLegend } from '../strip/strip-legend.tsx';
import { ProfileNumbers } from './profile-numbers.tsx';

function Profile({ profile }: { readonly profile: ProfileView }) {
  const { document } = profile;
  return (
    <article class="profile">
      <div class="profile-plan">
        <h2>
          {document.name} <small>{words.profiles.version(profile.version)}</small>
        </h2>
        <p class="details">{document.crop}</p>
        <div class="strip">
          <PlanStrip document={document} />
        </div>
      </div>
      {document.note !== '' && <p class="profile-note">{document.note}</p>}
      <ProfileNumbers document={document} />
    </article>
  );
}

export function ProfilesPage() {
  const profiles = useLoad(calls.profiles, 'profiles');
  return (
    <main id="main" class="plain">
      <PageHead title={words.profiles.title}>
        <p>{words.profiles.intro}</p>
      </PageHead>
      {profiles.data === undefined && <LoadState {...profiles} />}
      {profiles.data?.length === 0 && <p class="quiet-line">{words.profiles.none}</p>}
      {profiles.data?.map((profile) => (
        <Profile key={profile.id} profile={profile} />
      ))}
      <StripLegend />
    </main>
  );
}
