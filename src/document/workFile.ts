/** Work files: reading one that may be anything, writing one that reads back the same. */
import * as z from "zod/mini";
import type { Work } from "../core/plan/work";
import { fail, ok, type Result } from "../core/result";
import { workSchema } from "./schema";
import { CURRENT_VERSION, upgradeWork, UPGRADES, type Upgrades } from "./upgrades";

export type WorkFileFailure =
  | { readonly code: "file/not-json" }
  | { readonly code: "file/foreign" }
  | { readonly code: "file/newer"; readonly version: number; readonly known: number }
  | { readonly code: "file/damaged"; readonly places: readonly string[] };

const envelope = z.object({ bodicewright: z.literal("work"), version: z.int().check(z.gte(1)), work: z.unknown() });

/** How many damaged places are named. */
const PLACES_NAMED = 3;

/**
 * Reads a work file.
 *
 * @param text the file's text, whatever it is
 * @returns the work, brought up to the current version; or why it cannot be read. Nothing is changed on a failure.
 */
export function readWorkFile(text: string, upgrades: Upgrades = UPGRADES, current = CURRENT_VERSION): Result<Work, WorkFileFailure> {
  const json = parseJson(text);
  if (!json.ok) return json;
  const found = envelope.safeParse(json.value);
  if (!found.success) return fail({ code: "file/foreign" });
  const { version, work } = found.data;
  if (version > current) return fail({ code: "file/newer", version, known: current });
  return parseWork(upgradeWork(work, version, current, upgrades));
}

/** A work from unknown data of the current version. */
export function parseWork(data: unknown): Result<Work, WorkFileFailure> {
  const parsed = workSchema.safeParse(data);
  if (parsed.success) return ok(parsed.data);
  const places = parsed.error.issues.map(({ path }) => path.map(String).join(".") || "work");
  return fail({ code: "file/damaged", places: [...new Set(places)].slice(0, PLACES_NAMED) });
}

/** The text of a work file. */
export const writeWorkFile = (work: Work): string =>
  `${JSON.stringify({ bodicewright: "work", version: CURRENT_VERSION, work }, null, 2)}\n`;

function parseJson(text: string): Result<unknown, WorkFileFailure> {
  try {
    // A byte order mark is what some editors leave at the start.
    return ok(JSON.parse(text.replace(/^\uFEFF/, "")));
  } catch {
    return fail({ code: "file/not-json" });
  }
}
