/** Each dart of the final pieces, seen three ways: as printed, as the wearer's cup asks, as drawn now. */
import { giveBackPlaces } from "../alterations/redraw/giveBack";
import { dartCap } from "../dart/dartCap";
import { usualStop } from "../dart/dartEnd";
import { coneRadius } from "../dart/fullness";
import { measureDart } from "../dart/measureDart";
import type { DartRef, Piece } from "../pattern/piece";
import { piecesOf } from "../pattern/pieceSet";
import { FULLNESS_NOTICED } from "../tolerance";
import type { Mm } from "../units";
import { keyOf, type AlterationsMade } from "./makeAlterations";
import type { Built } from "./buildPieces";
import type { PlannedDart } from "./plan";

/**
 * @param printed the pieces of the base size as printed
 * @param radius  bust radius at which fullness is stated, mm
 */
export function readDarts(
  printed: readonly Piece[],
  built: Built,
  applied: AlterationsMade,
  radius: Mm,
): readonly PlannedDart[] {
  const judged = built.bustPoint.own ?? built.bustPoint.printed;
  return piecesOf(applied.pieces).flatMap((piece) =>
    piece.darts.map((dart): PlannedDart => {
      const bustPoint = dart.aimsAt === null ? null : judged;
      const has = (of: Piece | undefined): of is Piece =>
        of !== undefined && of.darts.some((d) => d.name === dart.name);
      const source = printed.find((p) => p.name === piece.name);
      const asked = built.wanted?.[piece.name];
      const seen = [piece, has(source) ? source : null, dart.aimsAt !== null && has(asked) ? asked : null] as const;
      const common = coneRadius(
        radius,
        seen.map((of) => (of === null ? null : measureDart(of, dart.name, bustPoint, radius))),
      );
      const figuresOf = (of: Piece) => measureDart(of, dart.name, bustPoint, common);
      const drawn = figuresOf(piece);
      const asPrinted = seen[1] === null ? null : figuresOf(seen[1]);
      const wanted = seen[2] === null ? null : figuresOf(seen[2]);
      const fuller = drawn.fullness - (wanted ?? asPrinted ?? drawn).fullness;
      const ref: DartRef = { piece: piece.name, dart: dart.name };
      return {
        ref,
        printed: asPrinted,
        wanted,
        drawn,
        coneRadius: common,
        verdict:
          wanted === null || Math.abs(fuller) <= FULLNESS_NOTICED ? "asWanted" : fuller > 0 ? "tooSharp" : "tooFlat",
        beyondBustPoint: drawn.apexToBustPoint !== null && drawn.apexToBustPoint < 0,
        usualStop: dart.aimsAt === null ? null : usualStop(dart.name),
        truing: applied.truing.get(keyOf(ref)) ?? { inner: 0, outer: 0 },
        cap: dartCap(piece, dart.name),
        giveBackPlaces: giveBackPlaces(applied.pieces, ref),
      };
    }),
  );
}
