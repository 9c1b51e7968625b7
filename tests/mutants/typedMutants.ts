/**
 * Which mutants do not compile: `npm test` checks types before it runs a test, so no test need notice them. Many are looked
 * at in one go, one in each file; an error outside the lines of a mutant counts only when it comes without the others too.
 */
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Mutant } from "./listMutants";

interface TypeError {
  readonly file: string;
  readonly line: number;
}

function check(folder: string): TypeError[] {
  const { stdout } = spawnSync(
    join("node_modules", ".bin", "tsc"),
    ["-p", join(folder, "src", "core", "tsconfig.json"), "--pretty", "false"],
    {
      encoding: "utf8",
    },
  );
  return [...stdout.matchAll(/^(.+?)\((\d+),\d+\): error/gm)].map(([, path = "", line = ""]) => ({
    file: path.slice(path.indexOf("src/core/")),
    line: Number(line),
  }));
}

export function notCompiling(root: string, mutants: readonly Mutant[]): Set<Mutant> {
  // Inside the project, so that the types of packages are found.
  const folder = mkdtempSync(join(root, "node_modules", ".mutants-"));
  const refused = new Set<Mutant>();
  try {
    cpSync(join(root, "src", "core"), join(folder, "src", "core"), { recursive: true });
    cpSync(join(root, "tsconfig.json"), join(folder, "tsconfig.json"));
    const plant = (mutant: Mutant): void => {
      const text = readFileSync(join(root, mutant.file), "utf8");
      writeFileSync(join(folder, mutant.file), text.slice(0, mutant.from) + mutant.replacement + text.slice(mutant.to));
    };
    const restore = (mutant: Mutant): void => cpSync(join(root, mutant.file), join(folder, mutant.file));
    const waiting = new Map<string, Mutant[]>();
    for (const mutant of mutants) waiting.set(mutant.file, [...(waiting.get(mutant.file) ?? []), mutant]);
    const unsure: Mutant[] = [];
    for (let round = 0; ; round += 1) {
      const planted = [...waiting.values()].flatMap((some) => some[round] ?? []);
      if (planted.length === 0) break;
      for (const mutant of planted) plant(mutant);
      const errors = check(folder);
      for (const mutant of planted) {
        const lines = 1 + mutant.replacement.split("\n").length;
        const own = errors.filter(({ file }) => file === mutant.file);
        if (own.some(({ line }) => line >= mutant.line && line < mutant.line + lines)) refused.add(mutant);
        else if (own.length > 0) unsure.push(mutant);
        restore(mutant);
      }
    }
    for (const mutant of unsure) {
      plant(mutant);
      if (check(folder).length > 0) refused.add(mutant);
      restore(mutant);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return refused;
}
