/** Which tests are asked for a mutant: those that reach it, the nearest and quickest first, as far as a time goes. */
import type { FunctionRange } from "./markFunctions";
import type { Mutant } from "./listMutants";
import type { ModuleShop } from "./moduleShop";
import type { Asked, MeasuredFile, Reached } from "./protocol";

/** The place of the innermost function that a mutant lies in; null for what runs when the module is loaded. */
export function functionAround(functions: readonly FunctionRange[], mutant: Mutant): number | null {
  let innermost: number | null = null;
  for (const [at, { from, to }] of functions.entries())
    if (from <= mutant.from && mutant.to <= to) {
      const known = innermost === null ? undefined : functions[innermost];
      if (known === undefined || to - from <= known.to - known.from) innermost = at;
    }
  return innermost;
}

/** Where the file is another one since, reaching anything of it is reaching all of it. */
function isReached(reached: Reached, file: string, at: number | null, isSame: boolean): boolean {
  const packed = reached[file];
  if (packed === undefined) return false;
  if (!isSame) return true;
  if (at === null) return false;
  const bytes = Buffer.from(packed, "base64");
  return ((bytes[at >> 3] ?? 0) & (1 << (at & 7))) !== 0;
}

const ELSEWHERE = 3;
/** Of 458 faults noticed, fifteen were noticed by tests of other rooms, each within 0.4 s. */
const SHARE_ELSEWHERE = 0.25;

/** How near a test file stands to a file of the core: its own test, then its folder, then its room, then the others. */
function distance(file: string, test: string): number {
  const path = file.replace(/^src\//, "").replace(/\.ts$/, "");
  const held = test.replace(/^tests\//, "").replace(/\.test\.tsx?$/, "");
  const folder = path.split("/").slice(0, -1).join("/");
  const room = path.split("/").slice(0, 2).join("/");
  if (held.split("/").at(-1) === path.split("/").at(-1)) return 0;
  if (held.split("/").slice(0, -1).join("/") === folder) return 1;
  return held.startsWith(`${room}/`) ? 2 : ELSEWHERE;
}

/**
 * @param functions bodies of the functions of the mutant's file
 * @param shop      knows what a test file loads
 * @param budget    ms that all of it may take by what was measured, and a part of that the tests of other rooms
 */
export function testsAskedFor(
  mutant: Mutant,
  functions: readonly FunctionRange[],
  measured: readonly MeasuredFile[],
  shop: ModuleShop,
  budget: number,
): Asked[] {
  const at = functionAround(functions, mutant);
  const digest = shop.digest(mutant.file);
  const reaching = measured.flatMap((one): Asked[] => {
    if (one.tests.length === 0 || !shop.deep(one.file).has(mutant.file)) return [];
    const isSame = one.sources[mutant.file] === digest;
    const whole = at === null || isReached(one.reached, mutant.file, at, isSame);
    const tests = [...one.tests.entries()]
      .filter(([, test]) => test.left === undefined && (whole || isReached(test.reached, mutant.file, at, isSame)))
      .toSorted(([, a], [, b]) => a.ms - b.ms);
    if (tests.length === 0) return [];
    const ms = one.ms + tests.reduce((sum, [, test]) => sum + test.ms, 0);
    return [{ file: one.file, tests: tests.map(([place]) => place), count: one.tests.length, ms }];
  });
  reaching.sort((a, b) => distance(mutant.file, a.file) - distance(mutant.file, b.file) || a.ms - b.ms);
  const asked: Asked[] = [];
  let left = budget;
  let isNear = true;
  for (const one of reaching) {
    const file = measured.find((some) => some.file === one.file);
    if (file === undefined || one.tests === "all") continue;
    if (isNear && distance(mutant.file, one.file) === ELSEWHERE) {
      isNear = false;
      left = Math.min(left, budget * SHARE_ELSEWHERE);
    }
    // Of a long file as many tests as there is time for.
    let ms = file.ms;
    const tests: number[] = [];
    for (const place of one.tests) {
      const cost = file.tests[place]?.ms ?? 0;
      if (ms + cost > left) break;
      ms += cost;
      tests.push(place);
    }
    if (tests.length === 0) continue;
    asked.push({ ...one, tests, ms });
    left -= ms;
  }
  return asked;
}
