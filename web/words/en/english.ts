// Every text of the pages that are loaded at the start, in English. The other languages are of its type, so that the compiler misses what they lack.
import { said as shared } from '../../../shared/words/en/said.ts';
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

export const english = {
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
