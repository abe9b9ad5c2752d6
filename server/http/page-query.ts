// The query of a list that is read page by page.

import { z } from 'zod';
import { pageQuerySchema } from '../../shared/api/common.ts';
import { shapes } from '../../shared/words/en/shapes.ts';

/** As `pageQuerySchema`, with a cursor that can only be one we made: `<ms>~<id>`. A made-up one would show the first page for ever. */
export const pageQuery = pageQuerySchema.extend({
  cursor: z
    .string()
    .max(200)
    .regex(/^-?\d+~.+$/, shapes.cursor)
    .optional(),
});
