// The editor of a stored profile: a new version of it, or a copy that becomes a profile of its own.

import type { ProfileView } from '../../shared/api/profiles.ts';
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { goTo, route } from '../navigation.ts';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { useLoad } from '../parts/use-load.ts';
import { planText } from '../plan-text.ts';
import { profilePath } from '../router.ts';
import { maySetUp } from '../session.ts';
import { NewProfile } from './new-profile.tsx';
import { ProfileEditor } from './profile-editor.tsx';

export function ProfileEditorPage() {
  return <Stored isCopy={false} />;
}

export function ProfileCopyPage() {
  return <Stored isCopy={true} />;
}

function Stored({ isCopy }: { readonly isCopy: boolean }) {
  const { id } = route.value;
  const profile = useLoad(() => calls.profile(id), id);
  const { data } = profile;
  if (data !== undefined && maySetUp.value) return isCopy ? <Copy profile={data} /> : <NewVersion profile={data} />;
  return (
    <main id="main" class="plain">
      <PageHead title={words.profiles.title} />
      {data === undefined ? <LoadState {...profile} /> : <p class="quiet-line">{words.editor.notAllowed}</p>}
    </main>
  );
}

function Copy({ profile }: { readonly profile: ProfileView }) {
  const name = planText(profile.document.name);
  return (
    <NewProfile
      title={words.editor.titleCopy(name)}
      document={{ ...profile.document, name: words.editor.copyName(name).slice(0, 80) }}
      onCancel={() => goTo(profilePath(profile.id))}
    />
  );
}

function NewVersion({ profile }: { readonly profile: ProfileView }) {
  const { id, document } = profile;
  const batches = useLoad(calls.batches, 'batches');
  const running = (batches.data ?? []).filter((batch) => batch.profileId === id && batch.finishedAt === null);
  const codes = running.map(({ code, profileVersion }) => words.batch.facts.version(code, profileVersion));
  const save = async (next: ProfileDocument) => {
    const { version } = await calls.addProfileVersion(id, next);
    showNote(words.editor.savedVersion(planText(next.name), version));
    goTo(profilePath(id));
  };
  return (
    <ProfileEditor
      title={words.editor.titleEdit(planText(document.name))}
      document={document}
      act={words.editor.saveVersion(profile.version + 1)}
      onSave={save}
      onCancel={() => goTo(profilePath(id))}
      {...(codes.length === 0 ? {} : { remark: words.editor.runOn(codes.join(', ')) })}
    />
  );
}
