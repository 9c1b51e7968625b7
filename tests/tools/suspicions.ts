/** Prints how many planted misreadings are seen, and how many women are asked in vain: `npx tsx tests/tools/suspicions.ts`. */
import { MEASURE_NAMES, type MeasureName } from "../../src/core/measures/measure";
import { askedInVain, PLANTED, seenOf, SIX_MEASURES, THIRTEEN_MEASURES } from "../support/plantedMisreadings";
import { heldBack1988 } from "../support/surveys";
import { tapedWomen } from "../support/tapedWomen";

const percent = (share: number): string => `${(100 * share).toFixed(share < 0.1 && share > 0 ? 1 : 0)} %`;
const row = (cells: readonly string[]): void => console.log(`| ${cells.join(" | ")} |`);
const head = (cells: readonly string[]): void => {
  row(cells);
  row(cells.map(() => "---"));
};

const women = tapedWomen(heldBack1988);
const seeds = [1, 2, 3, 4];
const GIVEN: readonly (readonly [string, readonly MeasureName[]])[] = [
  ["bust alone", ["bustGirth"]],
  ["bust, upper chest", ["bustGirth", "upperChestGirth"]],
  ["bust, waist, hip", ["bustGirth", "waistGirth", "hipGirth"]],
  ["six", SIX_MEASURES],
  ["thirteen", THIRTEEN_MEASURES],
  ["fourteen", MEASURE_NAMES],
];

console.log(`Asked in vain, ${women.length} women held back, ${seeds.length} draws of the tape's error\n`);
head(["given", "in vain", "bridges one doubt too low", "one too high"]);
for (const [said, given] of GIVEN) {
  const mean = (moved: number): number =>
    seeds.reduce((sum, seed) => sum + askedInVain(tapedWomen(heldBack1988, seed, moved), given), 0) / seeds.length;
  row([said, percent(mean(0)), percent(mean(-1)), percent(mean(1))]);
}

for (const [said, given] of GIVEN.slice(3)) {
  console.log(`\nPlanted slips, ${said} measures given\n`);
  head(["slip", "at", "women", "caught", "named", "misnamed", "another blamed"]);
  for (const planted of PLANTED) {
    const seen = seenOf(planted, women, given);
    if (seen === null) continue;
    row([
      `${planted.kind} ${planted.how}`.trim(),
      planted.at.join(", "),
      String(seen.tried),
      percent(seen.caught),
      percent(seen.named),
      percent(seen.misnamed),
      percent(seen.blamed),
    ]);
  }
}
