/** The skirt sewn together and hung on the bodice. */
import { allowanceOf, hemAllowanceOf } from "../parts/seamAllowance";
import type { Part } from "../parts/part";
import { isFrontPiece } from "../pattern/pieceGroups";
import type { CircleSeam, SkirtDraft, TierFigures } from "../skirts/skirtDraft";
import { SEWN_AGREEMENT } from "../tolerance";
import type { Mm } from "../units";
import { BOTH_HALVES, centreSeams, dartSeams, pairedSeams } from "./seamsSewn";
import type { SewnDress } from "./sewnDress";
import type { SewnSeam } from "./sewingStep";
import { inGroup, keysOf, plainSeam, step, stepOfSeams, type StepDraft } from "./stepDraft";

export function skirtSteps(dress: SewnDress): readonly StepDraft[] {
  const { skirt, waist, allowances } = dress;
  if (skirt === null) return [];
  const parts = inGroup(dress.parts, "skirt");
  const isRound = skirt.kind === "circle" || skirt.kind === "peplum";
  return [
    ...panelSteps(dress, skirt, parts),
    ...ringSteps(dress, skirt, parts),
    ...tierSteps(dress, skirt, parts),
    step("skirtToBodice", keysOf(topOf(skirt, parts)), {
      seams: [plainSeam(waist.whole)],
      allowance: allowanceOf(allowances, "waist"),
      way: skirt.kind === "peplum" ? "peplum" : undefined,
    }),
    step("hang", keysOf(parts), { way: isRound ? "round" : undefined }),
    ...(isRound || skirt.notes.some(({ code }) => LEVELLED_ON.has(code)) ? [step("levelHem", keysOf(parts))] : []),
    step("hemShell", keysOf(parts), {
      seams: [plainSeam(skirt.hem)],
      allowance: hemAllowanceOf(dress.dress.skirt ?? { kind: skirt.kind }, allowances),
      way: isRound ? "round" : undefined,
    }),
  ];
}

/** Notes of a skirt whose hem is levelled on her. */
const LEVELLED_ON: ReadonlySet<string> = new Set(["skirt/hem-not-levelled", "skirt/hang-before-hemming"]);

const tierOf = (part: Part): number => (part.kind === "rectangle" ? (part.tier ?? 1) : 1);

/** What is sewn to the waist: of tiers the first. */
const topOf = ({ tiers }: SkirtDraft, parts: readonly Part[]): readonly Part[] =>
  tiers === undefined ? parts : parts.filter((part) => tierOf(part) === 1);

/** Drafted panels: darts, seams, the centre where it is no fold, the sides, the vent. */
function panelSteps(dress: SewnDress, { halves, vent = 0 }: SkirtDraft, parts: readonly Part[]): readonly StepDraft[] {
  const { allowances, isSide, closedSides, openBelow } = dress;
  const opensInto = openBelow > 0;
  const sides = pairedSeams(halves, "side", undefined, isSide && !opensInto ? BOTH_HALVES : closedSides);
  const centres = centreSeams(halves, (name) => isFrontPiece(name) || isSide || !opensInto);
  const side = { allowance: allowanceOf(allowances, "side") };
  return [
    ...stepOfSeams("skirtDarts", parts, dartSeams(halves)),
    ...(dress.dress.skirt?.pockets === true && sides.length > 0
      ? [step("pockets", keysOf(parts), { way: isSide ? "opens" : undefined })]
      : []),
    ...stepOfSeams("panelSeams", parts, pairedSeams(halves, "panel"), { allowance: allowanceOf(allowances, "panel") }),
    ...stepOfSeams("skirtCentreSeams", parts, centres, { allowance: allowanceOf(allowances, "centre") }),
    ...stepOfSeams("skirtSides", parts, sides, side),
    ...(vent === 0
      ? []
      : [
          step("vent", keysOf(parts.filter((part) => part.kind === "piece" && part.piece.name === "skirtBack")), {
            seams: [plainSeam(vent, 2)],
          }),
        ]),
  ];
}

/** Shares of a ring: joined to one another, and stay-stitched at the waist, which lies on the bias. */
function ringSteps(
  { openBelow, allowances, isSide, waist }: SewnDress,
  { circle, lengths }: SkirtDraft,
  parts: readonly Part[],
): readonly StepDraft[] {
  const rings = parts.filter((part) => part.kind === "sector");
  if (rings.length === 0) return [];
  const opening: CircleSeam = isSide ? "leftSide" : "centreBack";
  const named = (circle?.seams ?? [opening]).filter((seam) => seam !== "between");
  const between = rings.reduce((sum, { cut }) => sum + cut.count, 0) - named.length;
  const opens = openBelow > 0;
  const long: Readonly<Record<CircleSeam, Mm>> = {
    centreFront: lengths.front,
    centreBack: lengths.back,
    leftSide: lengths.side,
    rightSide: lengths.side,
    between: lengths.side,
  };
  const joined = [
    ...named.filter((seam) => !opens || seam !== opening).map((seam) => plainSeam(long[seam])),
    ...(between > 0 ? [plainSeam(long.between, between)] : []),
  ];
  return [
    ...(joined.length === 0
      ? []
      : [
          step("joinSectors", keysOf(rings), {
            seams: inOne(joined),
            allowance: allowanceOf(allowances, "side"),
            way: opens ? "opens" : undefined,
          }),
        ]),
    step("stayWaist", keysOf(rings), { seams: [plainSeam(waist.whole)] }),
  ];
}

/** Seams of one length as one, so many times. */
function inOne(seams: readonly SewnSeam[]): readonly SewnSeam[] {
  const [first] = seams;
  return first === undefined || seams.some(({ length }) => Math.abs(length - first.length) > SEWN_AGREEMENT)
    ? seams
    : [{ ...first, count: seams.reduce((sum, { count }) => sum + count, 0) }];
}

/** Widths joined to rings, drawn up, and sewn to what is above. The join at the opening stays open, in every tier. */
function tierSteps(
  { openBelow, allowances }: SewnDress,
  { kind, tiers = [] }: SkirtDraft,
  parts: readonly Part[],
): readonly StepDraft[] {
  const side = allowanceOf(allowances, "side");
  return tiers.flatMap((tier, index) => {
    const at = index + 1;
    const keys = keysOf(parts.filter((part) => tierOf(part) === at));
    const above = keysOf(parts.filter((part) => tierOf(part) === at - 1));
    const joins = tier.panels - (openBelow > 0 ? 1 : 0);
    const number = kind === "tiers" ? { at } : {};
    return [
      ...(joins > 0
        ? [
            step("joinTierPanels", keys, {
              ...number,
              seams: [plainSeam(tier.depth, joins)],
              allowance: side,
              way: openBelow > 0 ? "opens" : undefined,
            }),
          ]
        : []),
      ...shapedTop(parts.filter((part) => tierOf(part) === at)).map((one) => ({ ...one, ...number })),
      ...(isGathered(tier)
        ? [
            step(at === 1 ? "gatherSkirt" : "gatherTiers", keys, {
              ...number,
              seams: [{ ...plainSeam(tier.width), gatheredTo: tier.gatheredTo }],
            }),
          ]
        : []),
      ...(at === 1
        ? []
        : [
            step("tierToTier", [...above, ...keys], {
              at,
              seams: [plainSeam(tier.gatheredTo)],
              allowance: allowanceOf(allowances, "waist"),
            }),
          ]),
    ];
  });
}

/** For a level hem the upper edge is cut lower where the skirt is shorter. */
function shapedTop(parts: readonly Part[]): readonly StepDraft[] {
  const [part] = parts.filter((one) => one.kind === "rectangle");
  return part?.upperEdge === undefined ? [] : [{ ...step("shapeTop", keysOf(parts)), lower: part.upperEdge }];
}

const isGathered = ({ width, gatheredTo }: TierFigures): boolean => width - gatheredTo > SEWN_AGREEMENT;
