// Whether alerts can reach the one who asks, now.
import { z } from 'zod';
import { noticeChannels } from '../telling/notice.ts';
import { reachVerdicts } from '../telling/reach.ts';
import { timeSchema } from './common.ts';
import { timeOfDaySchema } from './session.ts';

export const reachSchema = z.object({
  /** `untried`: nothing was sent yet. `partly`: one way works and another fails. `no-way`: there is none. */
  verdict: z.enum(reachVerdicts),
  ways: z.array(
    z.object({
      channel: z.enum(noticeChannels),
      /** Of the phone or the webhook; '' for e-mail. */
      name: z.string(),
      /** The last message was taken over, or none was sent yet. */
      works: z.boolean(),
      lastResult: z.string().nullable(),
      lastResultAt: timeSchema.nullable(),
      /** When the phone last said that it has shown an alert; others never say. */
      confirmedAt: timeSchema.nullable(),
    }),
  ),
  isOnDuty: z.boolean(),
  /** null = off duty, or on duty always. */
  dutyUntil: timeSchema.nullable(),
  /** null = on duty now, or in no rota. */
  nextDutyAt: timeSchema.nullable(),
  /** While it is quiet: when that ends, on the clock of the site. */
  quietUntil: timeOfDaySchema.nullable(),
});
export type ReachView = z.infer<typeof reachSchema>;
