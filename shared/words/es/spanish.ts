// Every sentence that the service says, in Spanish.
import type { SharedWords } from '../shared-words.ts';
import { faults } from './faults.ts';
import { health } from './health.ts';
import { notices } from './notices.ts';
import { problems } from './problems.ts';
import { refusals } from './refusals.ts';
import { said } from './said.ts';
import { shapes } from './shapes.ts';
import { templates } from './templates.ts';
import { trials } from './trials.ts';
import { venting } from './venting.ts';
export const spanish: SharedWords = {
  ...said,
  faults,
  health,
  templates,
  notices,
  problems,
  refusals,
  shapes,
  trials,
  venting,
};
