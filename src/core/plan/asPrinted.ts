/**
 * Checks of shape on her own pieces: another house may draw a pointed neck, a waist that is not square to the centre, or legs that
 * differ. What a pattern prints so is no fault of the plan, as long as the plan leaves it so.
 */
import type { CheckName, CheckResult } from "../checks/check";
import type { CheckContext } from "../checks/context";
import { CHECKS } from "../checks/index";
import { measureDart } from "../dart/measureDart";
import type { Piece } from "../pattern/piece";
import { setOf } from "../pattern/pieceSet";
import { remember } from "../remember";
import { FULLNESS_RADIUS } from "../tolerance";

const OF_SHAPE: readonly CheckName[] = ["dartLegsEqual", "cornersSquare", "joinedCornersStraight", "seamsSmooth"];

const keyOf = ({ name, pieces, seam, dart, point }: CheckResult): string =>
  // The worst corner of a seam may be another one.
  JSON.stringify([name, pieces, seam, dart, name === "seamsSmooth" ? null : point]);

/** What is measured of the pieces of a printed size, by check. */
const measuredOf = remember(["printed"], ({ printed }: { readonly printed: readonly Piece[] }) => {
  const pieces = setOf(printed);
  const context: CheckContext = {
    pieces,
    halves: [pieces, pieces],
    levels: [],
    darts: printed.flatMap((piece) =>
      piece.darts.map(({ name }) => ({
        ref: { piece: piece.name, dart: name },
        drawn: measureDart(piece, name, null, FULLNESS_RADIUS),
      })),
    ),
    alterations: [],
    closure: { place: "centreBack", belowWaist: 0 },
    body: { bust: 0, hip: null },
  };
  return new Map(OF_SHAPE.flatMap((name) => CHECKS[name](context)).map((check) => [keyOf(check), check.measured]));
});

/** The checks, those of shape held against what is printed where that is not as we draw. */
export function heldAgainstPrinted(checks: readonly CheckResult[], printed: readonly Piece[]): readonly CheckResult[] {
  const measured = measuredOf({ printed });
  return checks.map((check) => {
    const was = check.ok || !OF_SHAPE.includes(check.name) ? undefined : measured.get(keyOf(check));
    if (was === undefined) return check;
    const isNoWorse =
      check.name === "seamsSmooth"
        ? check.measured <= was + check.tolerance
        : Math.abs(check.measured - was) <= check.tolerance;
    return isNoWorse ? { ...check, ok: true, expected: was } : check;
  });
}
