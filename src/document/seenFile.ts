/** Lines of a trial's record as a file of their own, so that they can come from elsewhere than the page. */
import * as z from "zod/mini";
import type { Observation, Trial } from "../core/decisions/trial";
import { fail, ok, type Result } from "../core/result";
import { observationSchema, trialSchema } from "./schema";
import { parseFile, type WorkFileFailure } from "./workFile";

/** What was seen: lines with ids or without, and what else the record holds. */
export interface SeenFile {
  readonly observations: readonly (Omit<Observation, "id"> & { readonly id?: string })[];
  readonly checks: NonNullable<Trial["checks"]>;
  readonly measured: NonNullable<Trial["measured"]>;
}

const lines = z.array(z.strictObject({ ...observationSchema.shape, id: z.exactOptional(observationSchema.shape.id) }));
const record = z.strictObject({
  observations: z.exactOptional(lines),
  checks: trialSchema.shape.checks,
  measured: trialSchema.shape.measured,
});

/** How many places are named that are not understood, and bytes: a full record has some ten thousand. */
const PLACES_NAMED = 3;
const LARGEST = 1_000_000;

/**
 * @param text a list of lines, or a record of `observations`, `checks` and `measured`
 * @returns what was seen; or why it cannot be read, with the places that are not understood
 */
export function readSeenFile(text: string): Result<SeenFile, WorkFileFailure> {
  const json = parseFile(text, LARGEST);
  if (!json.ok) return json;
  const parsed = Array.isArray(json.value)
    ? record.safeParse({ observations: json.value })
    : record.safeParse(json.value);
  if (parsed.success) {
    const { observations = [], checks = {}, measured = {} } = parsed.data;
    return ok({ observations, checks, measured });
  }
  const places = parsed.error.issues.map(({ path, code, ...issue }) =>
    [...path, ...(code === "unrecognized_keys" && "keys" in issue ? [issue.keys[0]] : [])].map(String).join("."),
  );
  return fail({ code: "file/damaged", places: [...new Set(places)].slice(0, PLACES_NAMED) });
}
