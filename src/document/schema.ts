/** The saved work as a schema: what comes from a file or from the browser's storage is parsed by it once, then trusted. */
import * as z from "zod/mini";
import { MEASURE_NAMES } from "../core/measures/measure";
import type { Work } from "../core/plan/work";

const LONGEST_TEXT = 200;
/** Far more than a chart, a ledger or a page of fields can hold; a file beyond it is not one of ours. */
const MOST_ROWS = 60;
const MOST_ALTERATIONS = 200;
const MOST_UNREAD = 400;
/** mm. Nothing on a body or a bodice is longer. */
const LONGEST = 10_000;

const text = z.string().check(z.maxLength(LONGEST_TEXT));
const length = z.number().check(z.gte(-LONGEST), z.lte(LONGEST));
const share = z.number().check(z.gte(0), z.lte(1));

const sizeRow = z.strictObject({
  label: text,
  bust: length,
  waist: length,
  hip: length,
  finishedBust: z.exactOptional(length),
  finishedWaist: z.exactOptional(length),
  finishedHip: z.exactOptional(length),
});

const ease = z.strictObject({ bust: length, waist: length, hip: length });

const pattern = z.strictObject({
  name: text,
  chart: z.strictObject({
    sizes: z.array(sizeRow).check(z.maxLength(MOST_ROWS)),
    draftedDifference: length,
    cups: z.array(z.strictObject({ label: text, difference: length })).check(z.maxLength(MOST_ROWS)),
  }),
  ease,
  length: z.enum(["waist", "hip"]),
  closure: z.strictObject({ place: z.enum(["centreBack", "side"]), belowWaist: length }),
});

const dart = z.strictObject({
  piece: z.enum(["front", "back", "frontBasque", "backBasque"]),
  dart: z.enum(["sideDart", "waistDart", "shoulderDart"]),
});

const giveBack = z.strictObject({
  centreSeam: z.exactOptional(share),
  sideSeam: z.exactOptional(share),
  otherDart: z.exactOptional(share),
  underarm: z.exactOptional(share),
  waistEnd: z.exactOptional(share),
});

const alteration = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("dartEnd"),
    id: text,
    dart,
    shorten: length,
    across: length,
    hold: z.enum(["mouth", "fullness"]),
    giveBack,
  }),
  z.strictObject({ kind: z.literal("dartMouth"), id: text, dart, inner: length, outer: length, giveBack }),
  z.strictObject({
    kind: z.literal("dartPlace"),
    id: text,
    dart,
    by: length,
    how: z.enum(["redraw", "offCentreSeam"]),
    giveBack,
  }),
]);

const measures = z.strictObject(
  Object.fromEntries(MEASURE_NAMES.map((name) => [name, z.exactOptional(length)])) as Record<
    (typeof MEASURE_NAMES)[number],
    z.ZodMiniExactOptional<typeof length>
  >,
);

/** A whole work. Its type is held against the core's `Work` by `workOf`. */
export const workSchema = z.strictObject({
  name: text,
  invented: z.boolean(),
  unit: z.enum(["cm", "in"]),
  paper: z.enum(["A4", "Letter"]),
  measures,
  pattern,
  easeWanted: z.strictObject({
    bust: z.exactOptional(length),
    waist: z.exactOptional(length),
    hip: z.exactOptional(length),
  }),
  bustRadius: z.exactOptional(length),
  picks: z.strictObject({
    frame: z.exactOptional(text),
    cup: z.exactOptional(text),
    waist: z.exactOptional(length),
    hip: z.exactOptional(length),
    bustAlteration: z.exactOptional(length),
  }),
  alterations: z.array(alteration).check(z.maxLength(MOST_ALTERATIONS)),
  unread: z.record(text, text).check(
    z.refine((record) => Object.keys(record).length <= MOST_UNREAD),
  ),
});

/** Fails to compile where the schema and the core's type drift apart. */
type Same<A, B> = [A] extends [B] ? ([B] extends [A] ? true : never) : never;
type Loose<T> = T extends readonly (infer U)[] ? readonly Loose<U>[] : T extends object ? { readonly [K in keyof T]: Loose<T[K]> } : T;
export const schemaIsTheType: Same<Loose<z.infer<typeof workSchema>>, Loose<Work>> = true;
