// Which test file runs where: most share a process with others, so that the house is loaded once and not four hundred times.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { BaseSequencer } from "vitest/node";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Test folders that need a document; every other test folder runs in plain Node. */
const PAGE_FOLDERS = ["ui", "store", "print"];
export const inPage = PAGE_FOLDERS.map((folder) => `tests/${folder}/**/*.test.{ts,tsx}`);

/**
 * Tests that work long, the longest first: they begin, so that both workers end together, and each has a process of its own,
 * since what it computes would weigh on whatever comes after it.
 */
const LONG = [
  "ui/fields/everyEntry.test.tsx",
  "core/plan/survey.test.ts",
  "core/proposals/manyBodies.test.ts",
  "paper/makePaper.test.ts",
  "reading/roundTrip.test.ts",
  "cli/plan.test.ts",
  "cli/paper.test.ts",
  "ui/darts/refusal.test.tsx",
  "follower/follower.test.ts",
  "core/cutting/linesOfAnyPlan.test.ts",
  "document/mergeWorks.test.ts",
  "core/overlay/anyOverlay.test.ts",
  "ui/paper/TrueScalePaper.test.tsx",
  "core/bodies/suspicion.test.ts",
  "core/plan/unevenChain.test.ts",
  "core/plan/anyWork.test.ts",
].map((file) => `tests/${file}`);

/** What cannot share a process with others: modules that stand in for ours would stand in for theirs too. */
const REPLACES_MODULES = /\bvi\.(?:mock|doMock|unmock|resetModules)\(/u;

/** What looks at a page of which nothing has been loaded yet. */
const FIRST_OF_ALL = ["tests/ui/app/printing.test.tsx"];

/** @param {string} file */
const isInPage = (file) => PAGE_FOLDERS.some((folder) => file.startsWith(`tests/${folder}/`));

// Whoever only builds the page has no tests to look for.
const all =
  process.env["VITEST"] === undefined
    ? []
    : readdirSync(join(root, "tests"), { recursive: true, encoding: "utf8" })
        .map((file) => `tests/${file.replaceAll("\\", "/")}`)
        .filter((file) => /\.test\.tsx?$/u.test(file));
const replacing = all.filter((file) => REPLACES_MODULES.test(readFileSync(join(root, file), "utf8")));
const byThemselves = [...new Set([...LONG, ...FIRST_OF_ALL, ...replacing])];

export const alone = byThemselves.filter((file) => !isInPage(file));
export const inPageAlone = byThemselves.filter(isInPage);

/**
 * Those with a process of their own, then those that share one, project by project: a process that is shared ends where a
 * file of another project follows.
 */
export class LongestFirst extends BaseSequencer {
  /** @override @param {import("vitest/node").TestSpecification[]} files */
  async sort(files) {
    const rank = (/** @type {import("vitest/node").TestSpecification} */ { project, moduleId }) => {
      const at = LONG.findIndex((file) => moduleId.replaceAll("\\", "/").endsWith(`/${file}`));
      if (at !== -1) return at;
      return LONG.length + (project.config.isolate ? 0 : project.name === "node" ? 1 : 2);
    };
    // oxlint-disable-next-line unicorn/no-array-sort -- the runner's own order, which is no array's
    const sorted = await super.sort(files);
    return sorted.toSorted((a, b) => rank(a) - rank(b));
  }
}
