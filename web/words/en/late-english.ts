// Every text that only the pages fetched later say, in English.
import { templates } from '../../../shared/words/en/templates.ts';
import { batches } from './batches.ts';
import { channels } from './channels.ts';
import { duty } from './duty.ts';
import { editor } from './editor.ts';
import { guide } from './guide.ts';
import { people } from './people.ts';
import { profiles } from './profiles.ts';
import { sensors } from './sensors.ts';
import { settings } from './settings.ts';
import { wall } from './wall.ts';

export const lateEnglish = {
  templates,
  ...batches,
  ...channels,
  ...duty,
  ...editor,
  ...guide,
  ...people,
  ...profiles,
  ...sensors,
  ...settings,
  ...wall,
};
