// Every text of the pages that are loaded at the start, in Spanish.
import { said as shared } from '../../../shared/words/es/said.ts';
import type { CoreWords } from '../../strings.ts';
import { acts } from './acts.ts';
import { alarms } from './alarms.ts';
import { batch } from './batch.ts';
import { chamber } from './chamber.ts';
import { frame } from './frame.ts';
import { legend } from './legend.ts';
import { names } from './names.ts';
import { overview } from './overview.ts';
import { strip } from './strip.ts';
import { values } from './values.ts';
import { venting } from './venting.ts';

export const spanish: CoreWords = {
  shared,
  ...acts,
  ...alarms,
  ...batch,
  ...chamber,
  ...frame,
  ...legend,
  ...names,
  ...overview,
  ...strip,
  ...values,
  ...venting,
};
