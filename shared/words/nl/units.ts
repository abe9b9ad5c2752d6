// Units that languages write their own way, in Dutch.
import type { SharedWords } from '../shared-words.ts';

export const units: SharedWords['units'] = { humidity: '%RV' };
