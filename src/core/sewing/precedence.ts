/**
 * What has to come before what, and why. Each line is a chain of groups: every step of a group comes before every step of all
 * later groups, whether those between are there or not. All of it is the trade's common practice (no source).
 */
import type { SewingStepName } from "./sewingStep";

type Chain = readonly (readonly SewingStepName[])[];

/** Every upper edge closed, by whatever. */
const TURNED: readonly SewingStepName[] = ["liningTopEdge", "faceTopEdge", "faceNeck", "faceArmholes"];
const TOP_EDGES: readonly SewingStepName[] = [...TURNED, "bindNeck", "bindArmholes"];
const WAIST: readonly SewingStepName[] = ["basqueToBodice", "skirtToBodice"];

const CHAINS = {
  /** A dart or a seam is sewn while what it lies in is flat, before another crosses its end. */
  whileFlat: [
    [
      ["markDarts"],
      ["tackUnderlining"],
      ["stayStitch"],
      ["sewDarts", "drawUpGathers"],
      ["princessSeams", "bandToCups"],
      ["shoulderSeams"],
      ["fitBeforeTopEdge"],
      ["bodiceSides"],
      ["fitBeforeWaist"],
      WAIST,
    ],
    [
      ["markDarts"],
      ["tackUnderlining"],
      ["skirtDarts"],
      ["panelSeams"],
      ["skirtCentreSeams"],
      ["skirtSides"],
      ["fitBeforeWaist"],
    ],
    [["stayStitch"], ["sewDarts"], ["princessSeams"], ["centreFrontSeam", "centreBackSeam"], ["bodiceSides"]],
    [["stayWaist", "joinSectors"], ["fitBeforeWaist"], WAIST],
    [["tackUnderlining"], ["joinTierPanels", "basqueSeams"]],
    [["sewDarts"], ["basqueSeams"], ["fitBeforeWaist"]],
    [["markDarts"], ["liningDarts"], ["liningSeams"], ["liningShoulders"], ["liningSides"], ["liningBasque"]],
    [["markDarts"], ["liningSkirtDarts"], ["liningSkirtSeams"], ["liningSkirtToWaist"]],
    [["pockets"], ["skirtSides"]],
  ],
  /** What is caught in a seam lies there before the seam is sewn. */
  caughtIn: [
    [["makeStraps"], ["elasticInStraps"], ["basteStraps"], ["fitBeforeTopEdge"], TOP_EDGES],
    [["fuseInterfacing"], ["facingSeams"], TURNED],
    [["otherPieces"], [...TOP_EDGES, ...WAIST]],
    [["liningShoulders"], ["liningTopEdge"]],
    [["gatherSkirt"], ["fitBeforeWaist"]],
  ],
  /** Once an edge is closed nothing inside it is reached any more: so it is tried on first. */
  triedOnFirst: [
    [["fitBeforeTopEdge"], TOP_EDGES],
    [TURNED, ["underStitch"], ["handSewFacing", "handSewLining"]],
    [["stayStitch", "centreFrontSeam", "centreBackSeam", "shoulderSeams"], ["fitBeforeTopEdge"]],
    [["bodiceSides", "panelSeams", "skirtSides"], ["fitBeforeWaist"], WAIST],
  ],
  /** Turned through while nothing hangs on it yet. */
  turnedThrough: [[TURNED, ["underStitch"], ["fitBeforeWaist"], WAIST]],
  /** A ring is closed before a ring is sewn to it, or the join lies across the seam. */
  ringToRing: [[["joinTierPanels"], ["gatherTiers"], ["tierToTier"], ["shapeTop"], ["gatherSkirt"], WAIST]],
  /** Armholes are finished as rings: the side is closed first. */
  roundArmholes: [[["bodiceSides"], ["faceArmholes", "bindArmholes"]]],
  /** The opening runs over the waist seam, which has to lie level in it. */
  overTheWaist: [
    [WAIST, ["zipMarks"], ["tackZip"], ["putInZip"]],
    [WAIST, ["seamBelowOpening"], ["vent"]],
    [["bandToCups", ...WAIST], ["fuseStands"], ["buttonStands"]],
    [WAIST, ["buttonStands"], ["handSewFacing", "handSewLining"], ["buttonholes"], ["buttons"]],
    [["bodiceSides"], ["zipMarks", "buttonStands", "finishWaist"]],
    [["skirtCentreSeams"], ["vent"]],
    [["putInZip", "buttonStands"], ["finishWaist"]],
  ],
  /** The lining hangs from the finished waist and is kept from the zip: both are there first. */
  hangsFree: [
    [
      ["putInZip", "seamBelowOpening", "buttonStands", "finishWaist", "vent"],
      ["liningSkirtToWaist"],
      ["closeLiningWaist"],
      ["handSewLining"],
      ["hookAndEye"],
    ],
    [["putInZip"], ["handSewFacing"], ["hookAndEye"]],
    [
      ["liningSides", "liningTopEdge", "bodiceSides"],
      ["closeLiningWaist", "liningBasque", "handSewLining"],
    ],
    [["liningBasque"], ["handSewLining"]],
    [["basqueToBodice"], ["liningBasque"]],
  ],
  /** Cloth drops under its own weight: hems come after it has hung, the shell's before the lining's, which is shorter. */
  hangsFirst: [
    [
      [
        ...WAIST,
        "handSewLining",
        "handSewFacing",
        "hookAndEye",
        "buttonholes",
        "buttons",
        "vent",
        "seamBelowOpening",
        "bindNeck",
        "bindArmholes",
      ],
      ["hang"],
      ["levelHem"],
      ["hemShell"],
      ["hemLining"],
    ],
  ],
} as const satisfies Readonly<Record<string, readonly Chain[]>>;

/** What hangs on how a thing is done. */
const WHERE = {
  /** An invisible zip is sewn along an open seam; the seam is closed up to it after. */
  invisible: [[["putInZip"], ["seamBelowOpening"]]],
  /** A lapped one is set into a seam that is sewn. */
  lapped: [[["seamBelowOpening"], ["zipMarks"]]],
  buttons: [[["seamBelowOpening"], ["fuseStands", "buttonStands"]]],
  /** Neck and armholes of shell and lining, or of one facing, are sewn while the sides are open, or it could not be turned. */
  turnedThroughSides: [[["liningTopEdge", "faceTopEdge"], ["underStitch"], ["bodiceSides"]]],
  /** Without shoulders the upper edge is one ring: the sides are closed first. */
  asOneRing: [
    [
      ["bodiceSides", "liningSides"],
      ["liningTopEdge", "faceTopEdge"],
    ],
  ],
  /** A band in one piece crosses the centre seam of what it is sewn to; one in two is sewn on first, and the centre seam runs through. */
  bandAcrossFront: [[["centreFrontSeam"], ["bandToCups"]]],
  bandInTwoFront: [[["bandToCups"], ["centreFrontSeam"]]],
  bandAcrossBack: [[["centreBackSeam"], ["bandToCups"]]],
  bandInTwoBack: [[["bandToCups"], ["centreBackSeam"]]],
  /** A binding covers the upper ends of the zip where the opening crosses it. */
  boundAtBack: [[["putInZip", "buttonStands"], ["bindNeck"], ["hookAndEye", "buttonholes"]]],
  boundAtSide: [[["putInZip"], ["bindArmholes"], ["hookAndEye"]]],
} as const satisfies Readonly<Record<string, readonly Chain[]>>;

export type OrderCase = keyof typeof WHERE;

export interface Precedence {
  readonly before: SewingStepName;
  readonly after: SewingStepName;
}

const pairsOf = (chain: Chain): readonly Precedence[] =>
  chain.flatMap((group, at) =>
    group.flatMap((before) => chain.slice(at + 1).flatMap((later) => later.map((after) => ({ before, after })))),
  );

const ALWAYS: readonly Precedence[] = Object.values(CHAINS).flat().flatMap(pairsOf);
const IN_CASE: Readonly<Record<OrderCase, readonly Precedence[]>> = {
  invisible: WHERE.invisible.flatMap(pairsOf),
  lapped: WHERE.lapped.flatMap(pairsOf),
  buttons: WHERE.buttons.flatMap(pairsOf),
  turnedThroughSides: WHERE.turnedThroughSides.flatMap(pairsOf),
  asOneRing: WHERE.asOneRing.flatMap(pairsOf),
  bandAcrossFront: WHERE.bandAcrossFront.flatMap(pairsOf),
  bandInTwoFront: WHERE.bandInTwoFront.flatMap(pairsOf),
  bandAcrossBack: WHERE.bandAcrossBack.flatMap(pairsOf),
  bandInTwoBack: WHERE.bandInTwoBack.flatMap(pairsOf),
  boundAtBack: WHERE.boundAtBack.flatMap(pairsOf),
  boundAtSide: WHERE.boundAtSide.flatMap(pairsOf),
};

/** Every pair that holds in these cases, none twice in its meaning. */
export const precedencesIn = (cases: readonly OrderCase[]): readonly Precedence[] => [
  ...ALWAYS,
  ...cases.flatMap((one) => IN_CASE[one]),
];
