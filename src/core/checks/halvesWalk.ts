/** Halves of the body that are not alike can be sewn to each other: centre seams of one length, and straight where they lie on a fold. */
import { centreSeams } from "../girth/centreSeams";
import { lineDistance } from "../geometry/segment";
import { pointOf, type Piece } from "../pattern/piece";
import type { PieceSet } from "../pattern/pieceSet";
import { remember } from "../remember";
import { HALVES_AGREE, SEWN_AGREEMENT } from "../tolerance";
import type { Mm } from "../units";
import type { CheckResult } from "./check";
import { near, type Check } from "./context";

export const halvesWalk: Check = ({ halves: [left, right] }) => (left === right ? [] : walking({ left, right }));

/** It is of both halves: asked for the second one it is known. */
const walking = remember(
  ["left", "right"],
  ({ left, right }: { readonly left: PieceSet; readonly right: PieceSet }): readonly CheckResult[] =>
    centreSeams(left, right).flatMap((centre) => {
      const both = [centre.left, centre.right];
      const pieces = [...new Set(both.map(({ name }) => name))];
      const at = { name: "halvesWalk", unit: "mm", pieces, expected: 0 } as const;
      return [
        near({ ...at, seam: "centre", measured: centre.off, tolerance: HALVES_AGREE }),
        // Of no seam: a fold is none.
        ...(both.every(({ centreOnFold }) => centreOnFold)
          ? [near({ ...at, measured: Math.max(...both.map(offStraight)), tolerance: SEWN_AGREEMENT })]
          : []),
      ];
    }),
);

/** How far the centre leaves the straight line from its upper to its lower end; mm. */
function offStraight(piece: Piece): Mm {
  const edges = piece.edges.filter(({ seam, mouthOf }) => seam === "centre" && mouthOf === null);
  const ends = edges.flatMap(({ from, to }) => [pointOf(piece, from), pointOf(piece, to)]);
  const inOrder = ends.toSorted((a, b) => a.y - b.y);
  const [top, bottom] = [inOrder[0], inOrder.at(-1)];
  if (top === undefined || bottom === undefined) return 0;
  const handles = edges.flatMap(({ curve }) => (curve === null ? [] : [curve.c1, curve.c2]));
  return Math.max(...[...ends, ...handles].map((point) => Math.abs(lineDistance(point, top, bottom))));
}
