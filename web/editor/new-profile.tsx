// A plan that becomes a profile of its own: a copy of another, or one from a file.
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { goTo } from '../navigation.ts';
import { planText } from '../plan-text.ts';
import { profilePath } from '../router.ts';
import { profileIdOf } from './edit-draft.ts';
import { ProfileEditor } from './profile-editor.tsx';

interface Props {
  readonly title: string;
  readonly document: ProfileDocument;
  readonly onCancel: () => void;
}

/** The id is made of the name; it is looked for among those that are there now, since others may have saved meanwhile. */
async function saveNew(document: ProfileDocument): Promise<void> {
  const taken = (await calls.profiles()).map(({ id }) => id);
  const { id } = await calls.addProfile(profileIdOf(document.name, taken), document);
  showNote(words.editor.savedNew(planText(document.name)));
  goTo(profilePath(id));
}

export function NewProfile({ title, document, onCancel }: Props) {
  return (
    <ProfileEditor title={title} document={document} act={words.editor.saveNew} onSave={saveNew} onCancel={onCancel} />
  );
}
