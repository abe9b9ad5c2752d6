// Names of stages, states, priorities, roles and rules, in Spanish.

import type { SharedWords } from '../shared-words.ts';
import { service } from './service.ts';

export const names: SharedWords['names'] = {
  stages: { loading: 'llenado', closed: 'cerrado', venting: 'ventilación', hardening: 'aclimatación' },
  priorities: { critical: 'crítica', high: 'alta', medium: 'media', low: 'baja' },
  states: {
    normal: 'terminada',
    unacknowledged: 'sin confirmar',
    acknowledged: 'confirmada',
    'returned-unacknowledged': 'terminada, sin confirmar',
    shelved: 'aplazada',
    suppressed: 'suprimida',
    'out-of-service': 'fuera de servicio',
  },
  roles: { viewer: 'observador', crew: 'operario', manager: 'responsable' },
  rules: {
    ...service.names,
    heat: 'Calor',
    cold: 'Frío',
    dry: 'Sequedad',
    wet: 'Exceso de humedad',
    'silent-probe': 'Sonda sin señal',
    'silent-chamber': 'Cámara sin señal',
    'heat-ahead': 'Calor a la vista',
    vpd: 'Déficit de presión de vapor',
    'suspect-probe': 'Sonda dudosa',
    'check-overdue': 'Control pendiente',
    'check-failed': 'Control negativo',
    'plan-late': 'Ventilación con retraso',
  },
};
