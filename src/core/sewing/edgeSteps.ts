/** Straps, and the finish of every upper edge. */
import { allowanceOf } from "../cutting/usualAllowances";
import { HALVES } from "../decisions/alteration";
import type { BothStraps, EdgeFigures } from "../edges/edgesDraft";
import { drawnPieces } from "../parts/halfParts";
import type { Part } from "../parts/part";
import { seamLength } from "../girth/seamLength";
import type { SeamName } from "../pattern/piece";
import { isFrontPiece } from "../pattern/pieceGroups";
import { edgeSeams } from "./seamsSewn";
import type { SewingWay, SewnSeam } from "./sewingStep";
import type { SewnDress } from "./sewnDress";
import { inGroup, keysOf, plainSeam, step, type StepDraft } from "./stepDraft";

export const edgeSteps = (dress: SewnDress): readonly StepDraft[] => [...strapSteps(dress), ...finishSteps(dress)];

const STRAPS = 2;

/** Every strap or tie has one long seam; both of its ends are caught. */
function strapSteps({ parts, edges, dress, bodice }: SewnDress): readonly StepDraft[] {
  const straps = inGroup(parts, "strap");
  if (straps.length === 0) return [];
  const keys = keysOf(straps);
  const { strap } = edges;
  const kind = dress.straps?.kind ?? "plain";
  const casings = straps.filter((part) => part.kind === "rectangle" && part.name === "elasticCasing");
  const long = straps.filter((part) => !casings.includes(part)).map(longSeam);
  const cased = casings.map(longSeam);
  return [
    step("makeStraps", keys, { seams: [...long, ...cased], way: kind }),
    ...(strap?.left.elastic == null
      ? []
      : [step("elasticInStraps", keys, { seams: [plainSeam(strap.left.elastic.length, STRAPS)] })]),
    step("basteStraps", keys, {
      way: kind,
      // Her own straps may be narrower than the seams that they are set in.
      seams: strap === null ? edgeSeams(bodice, "strap", (name) => name !== "strap") : endsOf(strap),
    }),
  ];
}

const countOf = ({ cut }: Part): number => (cut.onFold ? 1 : cut.count);

const longSeam = (part: Part): SewnSeam => ({ ...plainSeam(lengthAlong(part), countOf(part)), half: part.half });

/** Two of each strap. */
const endsOf = ({ left, right }: BothStraps): readonly SewnSeam[] =>
  left.width === right.width
    ? [{ ...plainSeam(left.width, 2 * STRAPS), seam: "strap" }]
    : HALVES.map((half) => ({ ...plainSeam((half === "left" ? left : right).width, 2), seam: "strap", half }));

/** Of a strap of two layers each has one edge of the pair. */
function lengthAlong(part: Part): number {
  if (part.kind === "rectangle") return Math.max(part.width, part.depth);
  if (part.kind === "sector") return part.outer * part.angle;
  const points = Object.values(part.piece.points).map(({ at }) => at);
  const of = (axis: "x" | "y"): number =>
    Math.max(...points.map((point) => point[axis])) - Math.min(...points.map((point) => point[axis]));
  return Math.max(of("x"), of("y"));
}

const isArmhole = ({ key }: Part): boolean => /armhole/i.test(key);

const sewnOf = ({ edge, length, half }: EdgeFigures): SewnSeam => ({
  seam: edge,
  pieces: [],
  half: half ?? null,
  length,
  count: edge === "armhole" && half === undefined ? 2 : 1,
});

function finishSteps(dress: SewnDress): readonly StepDraft[] {
  const { edges, parts, allowances, isBodiceLined } = dress;
  const facings = inGroup(parts, "facing").filter(({ cloth }) => cloth !== "interfacing");
  const faced = edges.edges.filter(({ finish }) => finish === "facing");
  const top = isBodiceLined ? liningTop(dress) : [];
  const round = [...faced.map(sewnOf), ...top];
  const inside = inGroup(parts, isBodiceLined ? "bodiceLining" : "facing");
  return [
    ...bindingSteps(dress),
    ...facingSteps(dress, facings, faced),
    ...(top.length === 0
      ? []
      : [
          step("liningTopEdge", keysOf(inGroup(parts, "bodice", "bodiceLining")), {
            seams: top,
            allowance: allowanceOf(allowances, "neck"),
            way: turnedBy(dress),
          }),
        ]),
    ...(round.length === 0 ? [] : [step("underStitch", keysOf(inside), { seams: round })]),
  ];
}

/** What is closed at neck and armholes with the shoulders sewn has to be turned all the same. */
const turnedBy = ({ isTurnedThrough, isSide }: SewnDress): SewingWay | undefined =>
  isTurnedThrough ? (isSide ? "rolled" : "throughShoulders") : undefined;

/** Every upper edge that is neither faced nor bound. */
const liningTop = ({ edges, bodice }: SewnDress): readonly SewnSeam[] =>
  (["neck", "strap", "armhole"] as const)
    .filter((edge) => edges.edges.every((one) => one.edge !== edge || one.finish === "lining"))
    .flatMap((edge) => edgeSeams(bodice, edge, (name) => name !== "strap"));

/** Strips are cut in the order of the edges they are for. */
function bindingSteps({ edges, parts, hasShoulders, isSide }: SewnDress): readonly StepDraft[] {
  const strips = inGroup(parts, "binding");
  const bound = edges.edges.filter(({ finish }) => finish === "binding");
  return (["neck", "armhole"] as const).flatMap((edge) => {
    const own = bound.filter((one) => one.edge === edge);
    const keys = keysOf(strips.filter((_, at) => bound[at]?.edge === edge));
    return own.length === 0
      ? []
      : [
          step(edge === "neck" ? "bindNeck" : "bindArmholes", keys, {
            seams: own.map(sewnOf),
            way: hasShoulders ? (isSide === (edge === "armhole") ? "opens" : undefined) : "atStraps",
          }),
        ];
  });
}

function facingSteps(dress: SewnDress, facings: readonly Part[], faced: readonly EdgeFigures[]): readonly StepDraft[] {
  const { edges, allowances, isTurnedThrough, isSide } = dress;
  if (facings.length === 0 || faced.length === 0) return [];
  // Sides of one that is turned through the sides of the bodice are sewn in one with those.
  const joins = facingJoins(facings, isTurnedThrough ? ["shoulder"] : ["shoulder", "side"]);
  const sewnOn = (edge: "neck" | "armhole"): readonly StepDraft[] => {
    const own = faced.filter((one) => one.edge === edge);
    return own.length === 0
      ? []
      : [
          step(
            edge === "neck" ? "faceNeck" : "faceArmholes",
            keysOf(facings.filter((part) => isArmhole(part) === (edge === "armhole"))),
            {
              seams: own.map(sewnOf),
              allowance: allowanceOf(allowances, edge),
              way: isSide === (edge === "armhole") ? "opens" : undefined,
            },
          ),
        ];
  };
  return [
    ...(joins.length === 0
      ? []
      : [step("facingSeams", keysOf(facings), { seams: joins, allowance: allowanceOf(allowances, "shoulder") })]),
    ...(edges.facing?.inOne === true
      ? [
          step("faceTopEdge", keysOf(facings), {
            seams: faced.map(sewnOf),
            allowance: allowanceOf(allowances, "neck"),
            way: turnedBy(dress),
          }),
        ]
      : [...sewnOn("neck"), ...sewnOn("armhole")]),
    step("handSewFacing", keysOf(facings)),
  ];
}

/** A facing is joined where the bodice is, over its own depth. */
const facingJoins = (facings: readonly Part[], seams: readonly SeamName[]): readonly SewnSeam[] =>
  drawnPieces(facings).flatMap(({ piece, half }) => {
    if (!isFrontPiece(piece.name)) return [];
    return seams
      .map((seam) => ({
        seam,
        pieces: [piece.name],
        half,
        length: seamLength(piece, seam),
        count: half === null ? 2 : 1,
      }))
      .filter(({ length }) => length > 0);
  });
