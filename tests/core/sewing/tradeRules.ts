/**
 * What every order of sewing is held against, in the trade's own words: written down for the tests alone and not taken from
 * what makes the order. Common practice, no source.
 */
import type { DressPlan } from "../../../src/core/dress/dressPlan";
import type { SewingStepName } from "../../../src/core/sewing/sewingStep";
import type { Work } from "../../../src/core/decisions/work";
import type { Part } from "../../../src/core/parts/part";

type Names = readonly SewingStepName[];

export const isBelowWaist = (part: Part): boolean =>
  part.kind === "piece" && (part.piece.name === "frontBasque" || part.piece.name === "backBasque");

const SEAMS: Names = [
  "sewDarts",
  "princessSeams",
  "bandToCups",
  "centreFrontSeam",
  "centreBackSeam",
  "shoulderSeams",
  "bodiceSides",
  "skirtDarts",
  "panelSeams",
  "skirtSides",
  "joinTierPanels",
  "joinSectors",
];
const TOP: Names = ["liningTopEdge", "faceTopEdge", "faceNeck", "faceArmholes", "bindNeck", "bindArmholes"];
const WAIST: Names = ["skirtToBodice", "basqueToBodice"];

/** Each of the first before each of the second, wherever both are there. */
const RULES: readonly (readonly [Names, Names])[] = [
  [["washCloth"], ["cutOut"]],
  [
    ["cutOut"],
    [
      ...SEAMS,
      "makeStraps",
      "markDarts",
      "fuseInterfacing",
      "fuseStands",
      "tackUnderlining",
      "liningDarts",
      "liningSkirtDarts",
    ],
  ],
  [["markDarts"], ["sewDarts", "skirtDarts", "liningDarts", "liningSkirtDarts"]],
  [["tackUnderlining"], SEAMS],
  [["stayStitch"], ["sewDarts", "princessSeams", "bandToCups", "shoulderSeams", "bodiceSides", ...TOP]],
  [["sewDarts"], ["princessSeams", "bandToCups", "centreFrontSeam", "shoulderSeams", "bodiceSides"]],
  [["princessSeams"], ["centreFrontSeam", "shoulderSeams", "bodiceSides"]],
  [["bandToCups"], ["bodiceSides"]],
  [["centreFrontSeam"], ["bodiceSides"]],
  [["makeStraps"], ["elasticInStraps", "basteStraps"]],
  [["elasticInStraps"], ["basteStraps"]],
  [["basteStraps"], TOP],
  [["liningDarts"], ["liningSeams", "liningShoulders", "liningSides"]],
  [
    ["liningShoulders", "shoulderSeams"],
    ["liningTopEdge", "faceNeck", "bindNeck"],
  ],
  [["liningTopEdge", "faceTopEdge", "faceNeck", "faceArmholes"], ["underStitch"]],
  [["fitBeforeTopEdge"], TOP],
  [["fitBeforeWaist"], WAIST],
  [
    ["fuseInterfacing", "facingSeams"],
    ["faceNeck", "faceArmholes"],
  ],
  [["bodiceSides"], [...WAIST, "faceArmholes", "bindArmholes"]],
  [["skirtDarts"], ["panelSeams", "skirtSides", "skirtCentreSeams"]],
  [["panelSeams"], ["skirtSides"]],
  [["pockets"], ["skirtSides"]],
  [["panelSeams", "skirtSides", "skirtCentreSeams", "joinSectors", "stayWaist", "gatherSkirt", "tierToTier"], WAIST],
  [["basqueSeams"], ["basqueToBodice"]],
  [
    WAIST,
    ["zipMarks", "putInZip", "seamBelowOpening", "buttonholes", "liningSkirtToWaist", "closeLiningWaist", "hang"],
  ],
  [["zipMarks"], ["tackZip"]],
  // What stiffens a stand lies in it before it is turned in, and runs over seams that are sewn by then.
  [[...WAIST, "bandToCups", "tierToTier", "seamBelowOpening"], ["fuseStands"]],
  [["fuseStands"], ["buttonStands"]],
  [["buttonStands"], ["buttonholes"]],
  [["tackZip"], ["putInZip"]],
  [["putInZip"], ["liningSkirtToWaist", "handSewLining", "handSewFacing", "hookAndEye", "hang", "finishWaist"]],
  [["liningSkirtDarts"], ["liningSkirtSeams"]],
  [["liningSkirtSeams"], ["liningSkirtToWaist"]],
  [["liningSkirtToWaist", "liningTopEdge", "liningSides"], ["handSewLining"]],
  [["vent", "seamBelowOpening"], ["hemShell"]],
  [["seamBelowOpening", "skirtCentreSeams"], ["vent"]],
  [["buttonholes"], ["buttons"]],
  [["handSewLining", "hookAndEye", "buttons"], ["hang"]],
  [["hang"], ["levelHem", "hemShell", "hemLining"]],
  [["levelHem"], ["hemShell"]],
  [["hemShell"], ["hemLining"]],
];

export function tradeFaults(
  { sewing, parts }: Pick<DressPlan, "sewing" | "parts">,
  { dress, pattern }: Work,
): readonly string[] {
  const places = (name: SewingStepName, at?: number): readonly number[] =>
    sewing.flatMap((step, index) => (step.name === name && (at === undefined || step.at === at) ? [index] : []));
  const faults: string[] = [];
  const hold = (
    first: SewingStepName,
    second: SewingStepName,
    of: readonly number[],
    than: readonly number[],
  ): void => {
    if (of.some((one) => than.some((other) => one >= other))) faults.push(`${first} after ${second}`);
  };
  const rule = (first: SewingStepName, second: SewingStepName): void =>
    hold(first, second, places(first), places(second));
  for (const [before, after] of RULES) for (const first of before) for (const second of after) rule(first, second);
  const isButtoned = pattern.closure.place === "centreBack" && pattern.closure.buttons !== undefined;
  if (!isButtoned) {
    if (dress?.zip === "lapped") rule("seamBelowOpening", "putInZip");
    else rule("putInZip", "seamBelowOpening");
  }
  // Shell and lining with shoulders are turned through the open sides; with straps the upper edge is a ring.
  for (const edge of ["liningTopEdge", "faceTopEdge"] as const)
    if (places("shoulderSeams").length > 0) rule(edge, "bodiceSides");
    else rule("bodiceSides", edge);
  // What a seam crosses is closed before it: a band in one piece runs across the centre seam over it, a seam through both is sewn last.
  const isAcross = parts.some(({ key, cut }) => key === "frontBand" && cut.onFold);
  if (isAcross) rule("centreFrontSeam", "bandToCups");
  else rule("bandToCups", "centreFrontSeam");
  for (const tier of [1, 2, 3, 4, 5]) {
    hold("joinTierPanels", "tierToTier", places("joinTierPanels", tier), places("tierToTier", tier));
    hold("joinTierPanels", "tierToTier", places("joinTierPanels", tier), places("tierToTier", tier + 1));
    hold("gatherTiers", "tierToTier", places("gatherTiers", tier), places("tierToTier", tier));
    hold("shapeTop", "gatherSkirt", places("shapeTop", tier), places("gatherSkirt", tier));
  }
  for (const [at, { name }] of sewing.entries()) {
    if (name === "press" && at !== sewing.length - 1) faults.push("press is not the last");
    if (name === "washCloth" && at !== 0) faults.push("washCloth is not the first");
  }
  return faults;
}
