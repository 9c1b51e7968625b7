/**
 * Which mutants do not compile: `npm test` checks types before it runs a test, so no test need notice them. Each is looked at
 * in a copy of its file beside the file itself, all in one go; what would only not compile in another file is not found.
 */
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Mutant } from "./listMutants";

const copyOf = (mutant: Mutant, at: number): string => mutant.file.replace(/\.ts$/, `.mutant${at}.ts`);

export function notCompiling(root: string, mutants: readonly Mutant[]): Set<Mutant> {
  if (mutants.length === 0) return new Set();
  // Inside the project, so that the types of packages are found.
  const folder = mkdtempSync(join(root, "node_modules", ".mutants-"));
  try {
    cpSync(join(root, "src", "core"), join(folder, "src", "core"), { recursive: true });
    cpSync(join(root, "tsconfig.json"), join(folder, "tsconfig.json"));
    for (const [at, mutant] of mutants.entries()) {
      const text = readFileSync(join(root, mutant.file), "utf8");
      const planted = text.slice(0, mutant.from) + mutant.replacement + text.slice(mutant.to);
      writeFileSync(join(folder, copyOf(mutant, at)), planted);
    }
    const { stdout } = spawnSync(
      process.execPath,
      [
        join("node_modules", "typescript", "bin", "tsc"),
        "-p",
        join(folder, "src", "core", "tsconfig.json"),
        "--pretty",
        "false",
      ],
      { encoding: "utf8", cwd: root, maxBuffer: 2 ** 28 },
    );
    const refused = new Set([...stdout.matchAll(/\.mutant(\d+)\.ts\(\d+,\d+\): error/g)].map(([, at]) => Number(at)));
    return new Set(mutants.filter((_, at) => refused.has(at)));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
