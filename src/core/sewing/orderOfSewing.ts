/** The order of sewing of the parts that are there: a step is only where what it is done on is. */
import { bodiceSteps } from "./bodiceSteps";
import { closureSteps } from "./closureSteps";
import { edgeSteps } from "./edgeSteps";
import { inOrder } from "./inOrder";
import { liningSteps } from "./liningSteps";
import { precedencesIn, type OrderCase } from "./precedence";
import { preparingSteps } from "./preparingSteps";
import { remember } from "../remember";
import { lengthOfAll } from "./seamsSewn";
import type { SewingAsked } from "./sewingAsked";
export type { SewingAsked } from "./sewingAsked";
import type { SewingCaution, SewingStep, SewingStepName } from "./sewingStep";
import { finishOf } from "./seenFinish";
import { readDress, type SewnDress } from "./sewnDress";
import { skirtSteps } from "./skirtSteps";

/** Where something can hurt, or spoil the work. */
const CAUTIONS: Readonly<Partial<Record<SewingStepName, readonly SewingCaution[]>>> = {
  cutOut: ["blade"],
  shapeTop: ["blade"],
  fuseInterfacing: ["iron"],
  fuseStands: ["iron"],
  fitBeforeTopEdge: ["pins"],
  fitBeforeWaist: ["pins"],
  skirtToBodice: ["needle"],
  basqueToBodice: ["needle"],
  putInZip: ["needle", "zip"],
  buttonholes: ["blade"],
  levelHem: ["pins"],
  press: ["iron"],
};

/** Nothing is pressed that is only held, tried on or left to hang; gathers are never pressed flat. */
const NOT_PRESSED: ReadonlySet<SewingStepName> = new Set([
  "washCloth",
  "cutOut",
  "markDarts",
  "tackUnderlining",
  "stayStitch",
  "stayWaist",
  "drawUpGathers",
  "gatherTiers",
  "gatherSkirt",
  "shapeTop",
  "elasticInStraps",
  "basteStraps",
  "fitBeforeTopEdge",
  "fitBeforeWaist",
  "zipMarks",
  "tackZip",
  "closeLiningWaist",
  "handSewFacing",
  "handSewLining",
  "hookAndEye",
  "buttonholes",
  "buttons",
  "hang",
  "levelHem",
]);

const ordered = remember(["asked"], ({ asked }: { readonly asked: SewingAsked }) => order(asked));

/** Worked out once for one dress: notions go by it too. */
export const orderOfSewing = (asked: SewingAsked): readonly SewingStep[] => ordered({ asked });

function order(asked: SewingAsked): readonly SewingStep[] {
  const dress = readDress(asked);
  if (dress.parts.length === 0) return [];
  // Between cloth and its double edges are covered; a skirt's lining hangs free of it and covers none.
  const isDouble = asked.under === "underlining";
  const covered = { bodice: isDouble || asked.dress.lining?.bodice === true, skirt: isDouble };
  const drafts = [
    ...preparingSteps(dress),
    ...bodiceSteps(dress),
    ...edgeSteps(dress),
    ...skirtSteps(dress),
    ...closureSteps(dress),
    ...liningSteps(dress),
  ];
  return inOrder(drafts, precedencesIn(casesOf(dress))).map(({ draft, after }) => ({
    ...draft,
    length: draft.seams.length === 0 ? null : lengthOfAll(draft.seams),
    press: !NOT_PRESSED.has(draft.name),
    finish: finishOf(draft, asked.finishes ?? [], covered),
    cautions: CAUTIONS[draft.name] ?? [],
    after,
  }));
}

const casesOf = ({
  closes,
  isSide,
  isTurnedThrough,
  hasShoulders,
  bodice: [left],
}: SewnDress): readonly OrderCase[] => [
  closes,
  left.frontBand?.centreOnFold === true ? "bandAcrossFront" : "bandInTwoFront",
  left.backBand?.centreOnFold === true ? "bandAcrossBack" : "bandInTwoBack",
  ...(isTurnedThrough ? (["turnedThroughSides"] as const) : []),
  ...(hasShoulders ? [] : (["asOneRing"] as const)),
  isSide ? "boundAtSide" : "boundAtBack",
];
