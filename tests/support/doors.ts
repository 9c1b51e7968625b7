/** Works as files, and what the commands answer to them. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { answer } from "../../src/cli/answer";
import type { PlanReport } from "../../src/cli/report";

export const root = fileURLToPath(new URL("../..", import.meta.url));

export const DEMO_FILES: readonly string[] = readdirSync(join(root, "demo-data"))
  .filter((name) => name.endsWith(".json"))
  .map((name) => join(root, "demo-data", name));

/** A work of version 4 whose halves differ, with a bowed and a gathered dart; invented. */
export const HALVES_FILE = join(root, "tests/cli/two-halves-version4.json");

export function planJson(file: string): PlanReport {
  const said = answer([file, "--json"]);
  if (!said.ok) throw new Error(said.failure);
  return JSON.parse(said.value) as PlanReport;
}
