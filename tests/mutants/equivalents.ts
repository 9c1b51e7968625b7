/**
 * Mutants that no test can notice, since the code does the very same with them, each with its reason. Kept by what stands
 * there, not by line, so that a change elsewhere in the file keeps them. A file for each room: equivalents/dart.json.
 */
import { readdirSync, readFileSync } from "node:fs";
import * as z from "zod/mini";
import type { Mutant } from "./listMutants";

const Equivalents = z.array(
  z.object({
    file: z.string(),
    /** The line it begins on, without blanks around. */
    line: z.string(),
    original: z.string(),
    replacement: z.string(),
    reason: z.string().check(z.minLength(10)),
  }),
);

export type Equivalent = z.infer<typeof Equivalents>[number];

export function readEquivalents(): readonly Equivalent[] {
  const folder = new URL("equivalents/", import.meta.url);
  return readdirSync(folder).flatMap((name) =>
    Equivalents.parse(JSON.parse(readFileSync(new URL(name, folder), "utf8"))),
  );
}

/** The reason, where a mutant is one of them. */
export function equivalentOf(all: readonly Equivalent[], mutant: Mutant, text: string): string | null {
  const line = (text.split("\n")[mutant.line - 1] ?? "").trim();
  const original = text.slice(mutant.from, mutant.to);
  return (
    all.find(
      (one) =>
        one.file === mutant.file &&
        one.line === line &&
        one.original === original &&
        one.replacement === mutant.replacement,
    )?.reason ?? null
  );
}
