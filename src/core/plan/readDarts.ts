/** Each dart of the final pieces, seen three ways: as printed, as the wearer's cup asks, as drawn now. */
import { giveBackPlaces } from "../alterations/redraw/giveBack";
import { drawnStop, usualStop } from "../dart/dartEnd";
import { bustPointOfReading, judgeDartEnd } from "../dart/dartEndReading";
import { coneRadius } from "../dart/fullness";
import { measureDart } from "../dart/measureDart";
import { dartCorners } from "../dart/moveMouth";
import type { Half } from "../decisions/alteration";
import { answeredOf, type DartsDecided } from "../decisions/seenAtDart";
import type { PiecePoint } from "../geometry/point";
import type { DartRef, Piece } from "../pattern/piece";
import { piecesOf } from "../pattern/pieceSet";
import { FULLNESS_NOTICED } from "../tolerance";
import type { Mm } from "../units";
import { keyOf, type AlterationsMade } from "./makeAlterations";
import type { Built } from "./buildPieces";
import type { PlannedDart } from "./plan";

/** What darts are read by, beside the pieces themselves. */
export interface DartReadings {
  /** Bust radius at which fullness is stated, mm. */
  readonly radius: Mm;
  readonly half: Half;
  readonly decided: DartsDecided;
  /** Bust less upper chest that the pieces are made for, mm. */
  readonly cupDifference: Mm;
}

/** @param printed the pieces of the base size as printed */
export function readDarts(
  printed: readonly Piece[],
  built: Built,
  applied: AlterationsMade,
  { radius, half, decided, cupDifference }: DartReadings,
): readonly PlannedDart[] {
  return piecesOf(applied.pieces).flatMap((piece) =>
    piece.darts.map((dart): PlannedDart => {
      const ref: DartRef = { piece: piece.name, dart: dart.name };
      const answered = answeredOf(decided, ref, half);
      // Measured, or where the answer she took says that she marked it on the toile, or the pattern's own.
      const marked = (): PiecePoint =>
        bustPointOfReading(dartCorners(piece, dart.name), { along: drawnStop(dart.name, cupDifference), across: 0 });
      const judged = built.bustPoint.own ?? (answered === null ? built.bustPoint.printed : marked());
      const bustPoint = dart.aimsAt === null ? null : judged;
      const has = (of: Piece | undefined): of is Piece =>
        of !== undefined && of.darts.some((d) => d.name === dart.name);
      const source = printed.find((p) => p.name === piece.name);
      const asked = built.wanted?.[piece.name];
      const printedOf = has(source) ? source : null;
      const wantedOf = dart.aimsAt !== null && has(asked) ? asked : null;
      const against = printedOf === null && wantedOf === null ? [piece] : [printedOf, wantedOf];
      // By what it is held against alone: so nothing that is drawn changes what is printed or asked.
      const common = coneRadius(
        radius,
        against.map((of) => (of === null ? null : measureDart(of, dart.name, bustPoint, radius))),
      );
      const figuresOf = (of: Piece) => measureDart(of, dart.name, bustPoint, common);
      const drawn = figuresOf(piece);
      const asPrinted = printedOf === null ? null : figuresOf(printedOf);
      const wanted = wantedOf === null ? null : figuresOf(wantedOf);
      const fuller = drawn.fullness - (wanted ?? asPrinted ?? drawn).fullness;
      const isAsWanted = wanted === null || answered !== null || Math.abs(fuller) <= FULLNESS_NOTICED;
      return {
        ref,
        printed: asPrinted,
        wanted,
        drawn,
        coneRadius: common,
        verdict: isAsWanted ? "asWanted" : fuller > 0 ? "tooSharp" : "tooFlat",
        bySight: answered?.pointed ?? null,
        endJudged: drawn.end === null ? null : judgeDartEnd(drawn.end, usualStop(dart.name)),
        usualStop: dart.aimsAt === null ? null : usualStop(dart.name),
        truing: applied.truing.get(keyOf(ref)) ?? { inner: 0, outer: 0 },
        giveBackPlaces: giveBackPlaces(applied.pieces, ref),
      };
    }),
  );
}
