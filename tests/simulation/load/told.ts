/** What a process of `npm run load` has found since it last told. */
import { z } from "zod";

/** ms. A plan that takes longer is felt. */
export const SLOW = 50;
/** Works between two reports. */
export const REPORTED = 20;

export const toldSchema = z.object({
  done: z.number(),
  planned: z.number(),
  faults: z.array(z.object({ seed: z.number(), kind: z.string(), fault: z.string() })),
  slow: z.array(z.object({ seed: z.number(), kind: z.string(), ms: z.number() })),
  refused: z.record(z.string(), z.number()),
  times: z.array(z.number()),
});
export type Told = z.infer<typeof toldSchema>;
