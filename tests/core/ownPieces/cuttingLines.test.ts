/** Our own cutting lines, taken back inside, give the stitch lines that they were made of. */
import { describe, expect, it } from "vitest";
import { cuttingLine } from "../../../src/core/allowance/cuttingLine";
import { stretchesOf } from "../../../src/core/cutting/stretches";
import { STYLE_NAMES, type Pattern } from "../../../src/core/decisions/pattern";
import { edgeNearest, edgePointAt } from "../../../src/core/geometry/edgeCurve";
import { outlineOf } from "../../../src/core/pattern/ring";
import { piecePoint } from "../../../src/core/geometry/point";
import { draftBlocks, printNest } from "../../../src/core/nest/printedNest";
import { readOwn } from "../../../src/core/ownPieces/readOwn";
import { pointOf, type Piece, type PieceName, type SeamName } from "../../../src/core/pattern/piece";
import { sampleWork } from "../../support/sampleWork";
import { drawnNest, ownOf, type DrawnPiece, type XY } from "./drawnNest";

const ALLOWANCES: Readonly<Record<SeamName, number>> = {
  centre: 12,
  neck: 10,
  shoulder: 15,
  armhole: 10,
  side: 20,
  waist: 15,
  hem: 25,
  princess: 15,
  underBust: 12,
  strap: 12,
  panel: 12,
  edge: 10,
};
const SIZES = [2, 4, 6];

const legsOf = (piece: Piece): XY[][] =>
  piece.darts.map((dart) => [dart.inner, dart.apex, dart.outer].map((name) => pointOf(piece, name)));

/** Round the cutting line, which goes with a piece of one's own allowances; folds are not cut. */
function cutPiece(name: PieceName, pieces: readonly (readonly Piece[])[], labels: readonly string[]): DrawnPiece {
  return {
    title: name,
    sizes: SIZES.map((size) => {
      const piece = pieces[size]?.find((one) => one.name === name);
      if (piece === undefined) throw new Error(name);
      const ring = cuttingLine(stretchesOf(piece, ALLOWANCES)).map(({ at }) => at);
      return {
        label: labels[size] ?? "",
        outline: ring.map((a, index) => ({ a, b: ring[(index + 1) % ring.length] ?? a })),
        inner: legsOf(piece).map(([inner, apex, outer]) =>
          inner === undefined || apex === undefined || outer === undefined
            ? []
            : [
                { a: inner, b: apex },
                { a: apex, b: outer },
              ],
        ),
        marks: piece.points.bustPoint === undefined ? [] : [piece.points.bustPoint.at],
      };
    }),
  };
}

/** How far the outlines of two pieces leave each other once the first corner of one lies on that of the other, mm. */
export function apart(one: Piece, other: Piece): number {
  const corner = other.edges[0]?.from ?? "centreNeck";
  const [a, b] = [pointOf(one, corner), pointOf(other, corner)];
  const moved = outlineOf(one);
  const still = outlineOf(other);
  let most = 0;
  for (const [from, to, sign] of [
    [moved, still, 1],
    [still, moved, -1],
  ] as const) {
    for (const edge of from) {
      for (let i = 0; i < 8; i += 1) {
        const p = edgePointAt(edge, i / 8);
        const q = piecePoint(p.x + sign * (b.x - a.x), p.y + sign * (b.y - a.y));
        most = Math.max(most, Math.min(...to.map((each) => edgeNearest(each, q).distance)));
      }
    }
  }
  return most;
}

describe("a cutting line taken inside", () => {
  it.each(STYLE_NAMES)("gives the stitch line of %s", (style) => {
    const pattern: Pattern = { ...sampleWork.pattern, style, length: "hip" };
    const { nest } = printNest(pattern, draftBlocks(pattern), style === "sideDart" ? 75 : 50);
    const names = (nest.sizes[0] ?? []).map(({ name }) => name);
    const drawing = drawnNest(names.map((name) => cutPiece(name, nest.sizes, nest.labels)));
    const first = readOwn({ own: ownOf(drawing), pattern });
    const said = first.pieces.map(({ id, said: { name } }) => ({
      id,
      name,
      line: "cutting" as const,
      allowances:
        name === "strap"
          ? { ...ALLOWANCES, neck: Math.min(10, strapHalf(nest.sizes)), armhole: Math.min(10, strapHalf(nest.sizes)) }
          : ALLOWANCES,
      // What lies on the fold is not cut out.
      ...(nest.sizes[0]?.find((piece) => piece.name === name)?.centreOnFold === true
        ? { allowances: { ...ALLOWANCES, centre: 0 } }
        : {}),
    }));
    const { nest: read, missing, pieces } = readOwn({ own: ownOf(drawing, { pieces: said }), pattern });
    expect(missing).toEqual([]);
    expect(pieces.flatMap(({ problems }) => problems.map(({ code }) => code))).toEqual([]);
    for (const [index, size] of SIZES.entries()) {
      for (const name of names) {
        const made = read?.sizes[index]?.pieces.find((piece) => piece.name === name);
        const was = nest.sizes[size]?.find((piece) => piece.name === name);
        if (made === undefined || was === undefined) throw new Error(name);
        // A corner that is lapped or cut off takes the end off a seam that bends there: how it bent on is not drawn.
        expect(apart(made, was), `${name} ${size}`).toBeLessThan(
          ["back", "centreFront", "sideFront"].includes(name) ? 0.3 : 0.1,
        );
      }
    }
  });
});

function strapHalf(sizes: readonly (readonly Piece[])[]): number {
  const strap = sizes[0]?.find(({ name }) => name === "strap");
  if (strap === undefined) return Infinity;
  return Math.abs(pointOf(strap, "strapBackOuter").x - pointOf(strap, "strapBackInner").x) / 2;
}
