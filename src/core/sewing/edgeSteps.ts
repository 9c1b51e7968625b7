/** Straps, and the finish of every upper edge. */
import { allowanceOf } from "../cutting/usualAllowances";
import type { Part } from "../parts/part";
import type { EdgeFinish } from "../decisions/dress";
import { seamLength } from "../girth/seamLength";
import { isFrontPiece } from "../pattern/pieceGroups";
import { edgeSeams } from "./seamsSewn";
import type { SewnSeam } from "./sewingStep";
import type { SewnDress } from "./sewnDress";
import { inGroup, keysOf, plainSeam, step, type StepDraft } from "./stepDraft";

export const edgeSteps = (dress: SewnDress): readonly StepDraft[] => [...strapSteps(dress), ...finishSteps(dress)];

/** Every strap or tie has one long seam; both of its ends are caught. */
function strapSteps({ parts, edges, dress, bodice }: SewnDress): readonly StepDraft[] {
  const straps = inGroup(parts, "strap");
  if (straps.length === 0) return [];
  const keys = keysOf(straps);
  const { strap } = edges;
  const kind = dress.straps?.kind ?? "plain";
  const casings = straps.filter((part) => part.kind === "rectangle" && part.name === "elasticCasing");
  const long = straps
    .filter((part) => !casings.includes(part))
    .map((part) => plainSeam(lengthAlong(part), countOf(part)));
  return [
    step("makeStraps", keys, { seams: long, way: kind }),
    ...(strap?.elastic == null ? [] : [step("elasticInStraps", keys, { seams: [plainSeam(strap.elastic.length, 2)] })]),
    step("basteStraps", keys, {
      way: kind,
      seams: edgeSeams(bodice, "strap", (name) => name !== "strap"),
    }),
  ];
}

const countOf = ({ cut }: Part): number => (cut.onFold ? 1 : cut.count);

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

function finishSteps(dress: SewnDress): readonly StepDraft[] {
  const { edges, parts, bodice, allowances, isBodiceLined } = dress;
  const facings = inGroup(parts, "facing").filter(({ cloth }) => cloth !== "interfacing");
  const bindings = inGroup(parts, "binding");
  const steps: StepDraft[] = [];
  const round: SewnSeam[] = [];
  for (const edge of ["neck", "armhole"] as const) {
    const ofEdge = (some: readonly Part[]): readonly string[] => {
      const own = some.filter((part) => isArmhole(part) === (edge === "armhole"));
      // One strip for both edges, or one facing, is of either.
      return keysOf(own.length === 0 ? some : own);
    };
    const sewn = (finish: EdgeFinish): readonly SewnSeam[] =>
      edges.edges
        .filter((one) => one.edge === edge && one.finish === finish)
        .map(({ length }) => ({ seam: edge, pieces: [], half: null, length, count: edge === "armhole" ? 2 : 1 }));
    const [bound, faced] = [sewn("binding"), sewn("facing")];
    if (bound.length > 0)
      steps.push(step(edge === "neck" ? "bindNeck" : "bindArmholes", ofEdge(bindings), { seams: bound }));
    if (faced.length > 0)
      steps.push(
        step(edge === "neck" ? "faceNeck" : "faceArmholes", ofEdge(facings), {
          seams: faced,
          allowance: allowanceOf(allowances, edge),
        }),
      );
    round.push(...faced);
  }
  if (round.length > 0) {
    const joins = facingJoins(facings);
    if (joins.length > 0)
      steps.push(
        step("facingSeams", keysOf(facings), { seams: joins, allowance: allowanceOf(allowances, "shoulder") }),
      );
    steps.push(step("handSewFacing", keysOf(facings)));
  }
  if (isBodiceLined) {
    const isLeft = (edge: "neck" | "armhole"): boolean =>
      edges.edges.every((one) => one.edge !== edge || one.finish === "lining");
    const top = (["neck", "armhole"] as const)
      .filter(isLeft)
      .flatMap((edge) => edgeSeams(bodice, edge, (name) => name !== "strap"));
    const keys = keysOf(inGroup(parts, "bodice", "bodiceLining"));
    steps.push(step("liningTopEdge", keys, { seams: top, allowance: allowanceOf(allowances, "neck") }));
    round.push(...top);
  }
  if (round.length > 0)
    steps.push(
      step("underStitch", isBodiceLined ? keysOf(inGroup(parts, "bodiceLining")) : keysOf(facings), { seams: round }),
    );
  return steps;
}

const JOINED = ["shoulder", "side"] as const;

/** A facing is joined where the bodice is, over its own depth. */
const facingJoins = (facings: readonly Part[]): readonly SewnSeam[] =>
  facings.flatMap((part) => {
    if (part.kind !== "piece" || !isFrontPiece(part.piece.name)) return [];
    const { piece, half } = part;
    return JOINED.map((seam) => ({
      seam,
      pieces: [piece.name],
      half,
      length: seamLength(piece, seam),
      count: half === null ? 2 : 1,
    })).filter(({ length }) => length > 0);
  });
