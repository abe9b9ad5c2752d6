// Every sentence that service and page have in common, in English. The other languages are of its type, so that the compiler misses what they lack.
import { alarms } from './alarms.ts';
import { checks } from './checks.ts';
import { faults } from './faults.ts';
import { names } from './names.ts';
import { notices } from './notices.ts';
import { problems } from './problems.ts';
import { profiles } from './profiles.ts';
import { service } from './service.ts';
import { shapes } from './shapes.ts';
import { ahead, spans } from './spans.ts';
import { units } from './units.ts';

export const english = {
  decimal: '.',
  names,
  alarms,
  spans,
  ahead,
  checks,
  faults,
  notices,
  problems,
  profiles,
  shapes,
  service,
  units,
};
