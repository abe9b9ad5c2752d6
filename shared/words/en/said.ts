// What service and page both say, in English: the page of this language carries it.
import { alarms } from './alarms.ts';
import { checks } from './checks.ts';
import { findings } from './findings.ts';
import { names } from './names.ts';
import { profiles } from './profiles.ts';
import { service } from './service.ts';
import { ahead, spans } from './spans.ts';
import { units } from './units.ts';

export const said = { decimal: '.', names, alarms, spans, ahead, checks, findings, profiles, service, units };
