// Every text that only the pages fetched later say, in Spanish.
import { templates } from '../../../shared/words/es/templates.ts';
import type { LateWords } from '../../late-strings.ts';
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

export const lateSpanish: LateWords = {
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
