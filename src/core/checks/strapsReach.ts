/** Straps reach over the shoulder, and are as wide as the seams they are sewn on. */
import { distance, midpoint } from "../geometry/point";
import { seamLength } from "../girth/seamLength";
import { pointOf, type Piece } from "../pattern/piece";
import { HAND_AGREEMENT, SEWN_AGREEMENT } from "../tolerance";
import type { Mm } from "../units";
import { near, type Check } from "./context";

/** A strap may be this much shorter than its way: cloth on the slant gives by it (common practice: 10 to 20 mm). */
const MOST_TAKE_UP: Mm = 20;

/** From the middle of a piece's strap seam to the shoulder seam. */
const wayOf = (piece: Piece): Mm =>
  distance(midpoint(pointOf(piece, "strapInner"), pointOf(piece, "strapOuter")), pointOf(piece, "strapAim"));

export const strapsReach: Check = ({ pieces: { strap, cup, back } }) => {
  if (strap === undefined || cup === undefined || back === undefined) return [];
  const way = wayOf(cup) + wayOf(back);
  const length = distance(pointOf(strap, "strapFrontInner"), pointOf(strap, "strapBackInner"));
  const base = { name: "strapsReach", unit: "mm", seam: "strap" } as const;
  return [
    {
      ...base,
      ok: length >= way - MOST_TAKE_UP - HAND_AGREEMENT,
      measured: length,
      expected: way - MOST_TAKE_UP,
      tolerance: HAND_AGREEMENT,
      pieces: ["strap"],
    },
    ...[cup, back].map((piece) =>
      near({
        ...base,
        measured: seamLength(strap, "strap") / 2,
        expected: seamLength(piece, "strap"),
        tolerance: SEWN_AGREEMENT,
        pieces: ["strap", piece.name],
      }),
    ),
  ];
};
