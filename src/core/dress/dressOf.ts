/** The one way from what the wearer decided to the whole dress: the plan's bodice, and all that hangs on it. */
import { clothWidthOf } from "../cloth/usualCloth";
import type { Allowances } from "../decisions/allowances";
import type { Decided } from "../decisions/decided";
import type { Dress, Edges } from "../decisions/dress";
import { draftEdges } from "../edges/draftEdges";
import { draftLining } from "../lining/draftLining";
import type { LiningDraft } from "../lining/liningDraft";
import { readClosure, type ClosureAsked } from "../opening/readClosure";
import type { DressBody } from "../parts/dressBody";
import type { Part } from "../parts/part";
import { setOf, type PieceSet } from "../pattern/pieceSet";
import { isBasque } from "../pattern/pieceGroups";
import type { Plan } from "../plan/plan";
import type { PlanFailure } from "../plan/planFailure";
import { planOf } from "../plan/planOf";
import { remember } from "../remember";
import { ok, type Result } from "../result";
import { notionsOf } from "../sewing/notionsOf";
import { orderOfSewing } from "../sewing/orderOfSewing";
import { draftSkirt } from "../skirts/draftSkirt";
import type { SkirtDraft } from "../skirts/skirtDraft";
import type { Closure } from "../decisions/pattern";
import type { LengthUnit } from "../decisions/work";
import type { Mm } from "../units";
import { bodiceParts } from "./bodiceParts";
import { dressedBody } from "./dressedBody";
import { checkDress } from "./checkDress";
import { dartPlaces } from "./dartPlaces";
import type { DressPlan } from "./dressPlan";
import { finishedWaist } from "./finishedWaist";
import { standStrips } from "./standStrips";
import { underAdvice, underliningParts } from "./underAdvice";

/** What a dress follows from: the work, and the unit its cloth and zip are sold in. */
export type DressDecided = Decided & { readonly unit: LengthUnit };

const dressFrom = remember(["work"], ({ work }: { readonly work: DressDecided }) => deriveDress(work));

/** Worked out once: a work never changes in place. */
export const dressOf = (work: DressDecided): Result<DressPlan, PlanFailure> => dressFrom({ work });

function deriveDress(work: DressDecided): Result<DressPlan, PlanFailure> {
  const plan = planOf(work);
  return plan.ok ? ok(dressOn(work, plan.value)) : plan;
}

function dressOn(work: DressDecided, plan: Plan): DressPlan {
  const dress: Dress = work.dress ?? {};
  const allowances = work.allowances ?? USUAL_ALLOWANCES;
  const { closure } = work.pattern;
  const bodice = bodiceOf({ plan, isSkirted: dress.skirt !== undefined });
  const waist = finishedWaist(bodice);
  const body = dressedBody(work);
  const skirt =
    dress.skirt === undefined
      ? null
      : draftSkirt({
          skirt: dress.skirt,
          waist,
          body,
          closure,
          allowances,
          clothWidth: clothWidthOf(dress, "main", work.unit),
          clothOnFold: dress.cloths?.main?.fold === true,
          dartPlaces: dartPlaces(bodice),
        });
  const made = skirt?.ok === true ? skirt.value : null;
  const lining =
    dress.lining === undefined
      ? null
      : draftLining({ lining: dress.lining, bodice, skirt: made, waist, body, closure, allowances });
  const lined = lining?.ok === true ? lining.value : null;
  const isLined = dress.lining?.bodice === true;
  const edges = edgesOf({
    edges: dress.edges ?? NO_EDGES,
    straps: dress.straps ?? null,
    bodice,
    isLined,
    closure,
    allowances,
  });
  const under = underAdvice(dress, bodice[0]);
  const free = lined?.skirtFigures?.free ?? null;
  // A skirt that could not be made leaves nothing to be read.
  const reading =
    skirt?.ok === false
      ? null
      : readClosure({
          bodice,
          closure,
          zip: dress.zip ?? "invisible",
          skirt: made?.levels ?? [],
          lining: lined?.levels ?? [],
          liningFree: free === null ? 0 : Math.max(free.below - closure.belowWaist, 0),
          ...hipDepthOfLining(lined, closure),
          strapLengths: edges.strap === null ? null : [edges.strap.left.length, edges.strap.right.length],
          isNeckUntied: edges.strap?.left.kind === "tied",
          body: bodyThrough(body, made, closure),
        });
  const shell = [...bodiceParts(bodice, edges), ...(made?.parts ?? [])];
  const parts: readonly Part[] = [
    ...shell,
    ...underliningParts(shell, under.chosen),
    ...(lined?.parts ?? []),
    ...edges.parts,
    // How long the stands are is not known of a skirt that cannot be drafted.
    ...(dress.skirt !== undefined && made === null
      ? []
      : standStrips({ bodice, skirt: made?.halves ?? null, shell, closure, allowances })),
  ];
  const sewn = {
    dress,
    bodice,
    waist,
    skirt: made,
    lining: lined,
    edges,
    closure,
    reading,
    under: under.chosen,
    finishes: under.finishes,
    parts,
    allowances,
  };
  return {
    waist,
    body,
    bodice,
    skirt,
    lining,
    edges,
    closure: reading,
    under,
    parts,
    cloths: [...new Set(parts.map(({ cloth }) => cloth))],
    notions: notionsOf(sewn),
    sewing: orderOfSewing(sewn),
    checks: checkDress(sewn, body),
  };
}

/** Her hip line lies as far above a level hem at the centre back as at the side. */
function hipBelow({ back, side }: SkirtDraft["lengths"], hipDepth: Mm, { place }: Closure): Mm {
  return hipDepth + (place === "side" ? 0 : back - side);
}

function bodyThrough(
  { bust, hip, shoulderGirth, hipDepth }: DressBody,
  skirt: SkirtDraft | null,
  closure: Closure,
): ClosureAsked["body"] {
  const girths = { bust, hip, shoulderGirth };
  return skirt === null ? girths : { ...girths, hipDepth: hipBelow(skirt.lengths, hipDepth, closure) };
}

function hipDepthOfLining(lining: LiningDraft | null, closure: Closure): Pick<ClosureAsked, "liningHipDepth"> {
  const figures = lining?.skirtFigures ?? null;
  return figures === null ? {} : { liningHipDepth: hipBelow(figures.lengths, figures.hipDepth, closure) };
}

interface OnPlan {
  readonly plan: Plan;
  readonly isSkirted: boolean;
}

/** A skirt takes the place of the pattern's basque. The very same halves for one plan: much is remembered of them. */
const bodiceOf = remember(
  ["plan", "isSkirted"],
  ({ plan: { left, right }, isSkirted }: OnPlan): readonly [PieceSet, PieceSet] => {
    const of = (half: Plan["left"]): PieceSet =>
      setOf(isSkirted ? half.pieces.filter(({ name }) => !isBasque(name)) : half.pieces);
    const one = of(left);
    return [one, right === left ? one : of(right)];
  },
);

const edgesOf = remember(["bodice", "edges", "straps", "isLined", "closure", "allowances"], draftEdges);

/** Where nothing is decided. */
const NO_EDGES: Edges = {};
const USUAL_ALLOWANCES: Allowances = {};
