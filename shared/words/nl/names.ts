// Names of stages, states, priorities, roles and rules, in Dutch.

import type { SharedWords } from '../shared-words.ts';
import { service } from './service.ts';

export const names: SharedWords['names'] = {
  stages: { loading: 'vullen', closed: 'gesloten', venting: 'luchten', hardening: 'afharden' },
  priorities: { critical: 'kritiek', high: 'hoog', medium: 'middel', low: 'laag' },
  states: {
    normal: 'voorbij',
    unacknowledged: 'niet bevestigd',
    acknowledged: 'bevestigd',
    'returned-unacknowledged': 'voorbij, niet bevestigd',
    shelved: 'uitgesteld',
    suppressed: 'onderdrukt',
    'out-of-service': 'buiten dienst',
  },
  roles: { viewer: 'meekijker', crew: 'medewerker', manager: 'beheerder' },
  rules: {
    ...service.names,
    heat: 'Hitte',
    cold: 'Kou',
    dry: 'Droogte',
    wet: 'Te nat',
    'silent-probe': 'Stille voeler',
    'silent-chamber': 'Stille tent',
    'heat-ahead': 'Hitte op komst',
    vpd: 'Dampdrukdeficit',
    'suspect-probe': 'Twijfel aan een voeler',
    'check-overdue': 'Gemiste controle',
    'check-failed': 'Slechte controle',
    'plan-late': 'Laat met luchten',
  },
};
