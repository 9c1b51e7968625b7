/** Facings of any plan: our own pieces after chains of alterations, halves alike or not, with a new neckline, and foreign ones. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import type { Edges } from "../../../src/core/decisions/dress";
import { draftEdges } from "../../../src/core/edges/draftEdges";
import type { EdgesDraft } from "../../../src/core/edges/edgesDraft";
import { validateOutline } from "../../../src/core/geometry/outline";
import { drawnPieces } from "../../../src/core/parts/halfParts";
import type { PiecePart } from "../../../src/core/parts/part";
import { isFrontPiece } from "../../../src/core/pattern/pieceGroups";
import type { Piece, SeamName } from "../../../src/core/pattern/piece";
import { piecesOf, setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { outlineOf } from "../../../src/core/pattern/ring";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import type { Plan } from "../../../src/core/plan/plan";
import { anyChainWork } from "../../support/anyChainWork";
import type { ForeignFront } from "../../support/foreign/foreignTypes";
import { anyForeignWork, planOfForeign } from "../../support/foreign/foreignWork";
import { seamByBezierJs, seamByChords } from "../../support/independent";
import { isSpoilt } from "../../support/faultsOfPlan";
import { withNeckline } from "../../support/necklines";
import { testWork } from "../../support/works";

const RUNS = Number(process.env.CHAINS ?? 8);

/** mm: what the check allows, and a hundredth for the library. */
const NEAR = 0.06;

const EDGES: readonly Edges[] = [
  {},
  { armhole: "binding" },
  { neck: "binding" },
  { facingDepth: 35 },
  { facingDepth: 110, armhole: "binding" },
];

/** Every edge that is faced has one facing on each half of front and back: neither none nor two. */
function timesFaced(
  halves: readonly [PieceSet, PieceSet],
  facings: readonly PiecePart[],
  { edges }: EdgesDraft,
): readonly string[] {
  const faced = edges.flatMap(({ edge, finish }) => (finish === "facing" ? [edge] : []));
  return (["left", "right"] as const).flatMap((half, at) =>
    [...new Set(faced)].flatMap((seam) =>
      [true, false].flatMap((isFront) => {
        const isOn = ({ name, edges: own }: Piece): boolean =>
          name !== "strap" && isFrontPiece(name) === isFront && own.some((of) => of.seam === seam);
        const set = halves[at] ?? {};
        const wanted = piecesOf(set).some((piece) => !piece.name.startsWith("other") && isOn(piece)) ? 1 : 0;
        const made = facings.filter((part) => (part.half === null || part.half === half) && isOn(part.piece)).length;
        return made === wanted ? [] : [`${half} ${isFront ? "front" : "back"} ${seam}: ${made} times faced`];
      }),
    ),
  );
}

/** What is wrong with the facings of a plan, in words. */
function faultsOf({ left, right }: Plan, edges: Edges): readonly string[] {
  const one = setOf(left.pieces);
  const halves: readonly [PieceSet, PieceSet] = [one, right === left ? one : setOf(right.pieces)];
  // What cannot be cut is told by the plan's own checks.
  if (halves.some((half) => piecesOf(half).some(isSpoilt))) return [];
  const draft = draftEdges({
    edges,
    straps: null,
    bodice: halves,
    isLined: false,
    closure: testWork.pattern.closure,
    allowances: {},
  });
  const facings = draft.parts.flatMap((part) => (part.kind === "piece" && part.cloth === "main" ? [part] : []));
  const isFaced = draft.edges.some(({ finish }) => finish === "facing");
  const missing = isFaced && facings.length < 2 ? [`${facings.length} facings`] : [];
  return [
    ...missing,
    ...timesFaced(halves, drawnPieces(facings), draft),
    ...facings.flatMap(({ key, piece, half }) => {
      const isFront = isFrontPiece(piece.name);
      const edge = (seam: SeamName, by: typeof seamByBezierJs): number =>
        piecesOf(half === "right" ? halves[1] : halves[0])
          .filter(({ name }) => name !== "strap" && !name.startsWith("other") && isFrontPiece(name) === isFront)
          .reduce((sum, of) => sum + by(of, seam), 0);
      return [
        // An edge of hers that is short comes with it; it is told of her own piece.
        ...validateOutline(outlineOf(piece))
          .filter(({ code }) => code !== "outline/short-edge")
          .map(({ code }) => `${key}: ${code}`),
        ...(["neck", "strap", "armhole"] as const).flatMap((seam) => {
          const isThere = piece.edges.some((of) => of.seam === seam);
          const off = (by: typeof seamByBezierJs) => Math.abs(by(piece, seam) - edge(seam, by));
          return isThere && off(seamByBezierJs) > NEAR && off(seamByChords) > NEAR ? [`${key}: ${seam}`] : [];
        }),
      ];
    }),
  ];
}

describe("facings that can be cut, as long as their edges", () => {
  it.each(STYLE_NAMES)(
    "of %s, after any chain",
    (style) => {
      fc.assert(
        fc.property(anyChainWork(style), fc.nat(30), fc.constantFrom(...EDGES), (work, turn, edges) => {
          const plan = derivePlan(turn % 2 === 0 ? work : withNeckline(work, turn));
          expect(plan.ok ? faultsOf(plan.value, edges) : []).toEqual([]);
        }),
        { numRuns: RUNS },
      );
    },
    120_000,
  );

  it.each(["side", "french", "waist", "none", "princessArmhole", "princessShoulder"] satisfies readonly ForeignFront[])(
    "of a foreign pattern: %s",
    (front) => {
      fc.assert(
        fc.property(anyForeignWork({ front }), fc.constantFrom(...EDGES), (made, edges) => {
          const plan = planOfForeign(made);
          expect(plan.ok ? faultsOf(plan.value, edges) : []).toEqual([]);
        }),
        { numRuns: RUNS },
      );
    },
    120_000,
  );
});
