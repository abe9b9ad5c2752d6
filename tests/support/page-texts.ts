// The texts of the page's own catalogue, with what its functions are given where numbers do not do.
import type { Words } from '../../web/late-strings.ts';
import { walkWords } from './walk-words.ts';

const names = ['Heat', 'Cold'];
/** Functions that take more than numbers and text. */
const special = {
  'calibration.salt': ['first'],
  'calibration.measured': ['first'],
  'profiles.levels': [['80', '90']],
  'service.here': [names],
  'duty.steps': [{ next: 5, everyone: 10, siren: 15, repeat: 20 }],
  'editor.check': [3, ''],
  'firstSteps.chamberDone': ['Tent 1'],
};

/** The page's own texts; the shared ones have a test of their own. */
export function pageTexts({ shared: _, ...own }: Words) {
  return walkWords(own, special);
}
