// The profiles: each plan as a strip, the numbers behind it with where each comes from, and what can be done with it.
import { useState } from 'preact/hooks';
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { calls } from '../calls.ts';
import { NewProfile } from '../editor/new-profile.tsx';
import { words } from '../late-strings.ts';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { useLoad } from '../parts/use-load.ts';
import { maySetUp } from '../session.ts';
import { StripLegend } from '../strip/strip-legend.tsx';
import '../style/profiles.css';
import { ProfileActs } from './profile-acts.tsx';
import { ProfileFile } from './profile-file.tsx';
import { ProfileNumbers } from './profile-numbers.tsx';
import { ProfilePlan } from './profile-plan.tsx';

export function ProfilesPage() {
  const profiles = useLoad(calls.profiles, 'profiles');
  const [fromFile, setFromFile] = useState<ProfileDocument>();
  if (fromFile !== undefined) {
    const title = words.editor.titleFile(fromFile.name);
    return <NewProfile title={title} document={fromFile} onCancel={() => setFromFile(undefined)} />;
  }
  return (
    <main id="main" class="plain">
      <PageHead title={words.profiles.title}>
        <p>{words.profiles.intro}</p>
      </PageHead>
      {profiles.data === undefined && <LoadState {...profiles} />}
      {profiles.data?.length === 0 && <p class="quiet-line">{words.profiles.none}</p>}
      {profiles.data?.map((profile) => (
        <article key={profile.id} class="profile">
          <ProfilePlan profile={profile} />
          <ProfileActs profile={profile} />
          <ProfileNumbers document={profile.document} />
        </article>
      ))}
      {maySetUp.value && <ProfileFile onRead={setFromFile} />}
      <StripLegend />
    </main>
  );
}
