// Who is on duty when, and how long an alarm waits before it is passed on.
import { z } from 'zod';
import { noticeChannels } from '../telling/notice.ts';
import { shapes } from '../words/en/shapes.ts';
import { idSchema, nameSchema, timeSchema } from './common.ts';
import { roleSchema, timeOfDaySchema } from './session.ts';

const minutesSchema = z
  .int()
  .min(1, shapes.minuteLeast)
  .max(24 * 60, shapes.dayMost);

/** One stretch of every week on the clock of the site; 1 = Monday. An end that is not after its beginning lies on the next day. */
const dutySpanSchema = z.object({
  personId: idSchema,
  weekday: z.int().min(1).max(7),
  from: timeOfDaySchema,
  to: timeOfDaySchema,
});

/** Minutes since an alarm began to ask. */
const escalationSchema = z.object({
  nextAfterMinutes: minutesSchema,
  everyoneAfterMinutes: minutesSchema,
  sirenAfterMinutes: minutesSchema,
  repeatMinutes: minutesSchema,
});

/** As it is kept beside the rota. `order`: who is asked first of those who are not on duty; people who are not in it come last. */
export const dutyPlanSchema = z.object({ order: z.array(idSchema).max(500), ...escalationSchema.shape });
export type DutyPlan = z.infer<typeof dutyPlanSchema>;

export const dutySchema = dutyPlanSchema
  .extend({ spans: z.array(dutySpanSchema).max(500, shapes.fewerSpans) })
  .refine((duty) => duty.nextAfterMinutes <= duty.everyoneAfterMinutes, {
    path: ['everyoneAfterMinutes'],
    error: shapes.everyoneLater,
  })
  .refine((duty) => duty.everyoneAfterMinutes <= duty.sirenAfterMinutes, {
    path: ['sirenAfterMinutes'],
    error: shapes.sirenLater,
  });
export type Duty = z.infer<typeof dutySchema>;

export const dutyViewSchema = dutyPlanSchema.extend({
  spans: z.array(dutySpanSchema),
  /** In the order in which they are asked. `via` empty: no alert can reach the person. */
  people: z.array(
    z.object({
      id: idSchema,
      name: nameSchema,
      role: roleSchema,
      via: z.array(z.enum(noticeChannels)),
      isOnDuty: z.boolean(),
      isQuiet: z.boolean(),
    }),
  ),
  /** Holes of the next seven days: nobody is on duty, or nobody of those who are can be reached. Then everybody is told. */
  gaps: z.array(z.object({ from: timeSchema, to: timeSchema, reason: z.enum(['nobody', 'nobody-reached']) })),
});
export type DutyView = z.infer<typeof dutyViewSchema>;
