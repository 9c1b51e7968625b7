/**
 * A dart split into two or three side by side: the strips between them are turned about the point that it serves, so that
 * each opens by an equal share of its angle, and all are ended a little shorter than the one was.
 */
import type { DartSplitAlteration } from "../../decisions/alteration";
import type { AlterationFailure } from "../outcome/alterationFailure";
import { distance, type PiecePoint } from "../../geometry/point";
import { seamLength } from "../../girth/seamLength";
import { DART_NAMES, homeOf } from "../../pattern/dartNames";
import { dartOf, pointOf, type Dart, type DartName, type Piece } from "../../pattern/piece";
import { fail, invariant, ok, type Result } from "../../result";
import type { SurgeryTrace } from "../../surgery/cutAndMove";
import {
  drawnTo,
  endedShortOf,
  joinedUp,
  mouthOf,
  openingAt,
  partedFor,
  pointServed,
  renamedDart,
  stopShortOf,
} from "../../surgery/openDart";
import { NARROWEST_DART } from "../../tolerance";
import { radians, type Mm } from "../../units";
import type { FitApplied } from "../outcome/definition";
import { pieceIn, withPiece, type PieceSet } from "../../pattern/pieceSet";
import { atLength, sewnLengthTo } from "./places";
import { freeNames, turnedBetween } from "./pivot";

/** mm of seam between two mouths (common practice, no source: 25 to 30 mm), and the least that still can be pressed. */
const STRIP: Mm = 28;
const NARROWEST_STRIP: Mm = 15;
/** mm of seam that stay between the outermost mouth and the end of the seam. */
const AT_END: Mm = 10;
/** mm shorter for each dart more (our own choice): their ends lie side by side and must not crowd. */
const SHORTER: Mm = 5;

/** The pieces after a dart was split; or why it cannot be. */
export function splitDart(
  pieces: PieceSet,
  { dart: ref, into }: DartSplitAlteration,
): Result<FitApplied, AlterationFailure> {
  const piece = pieceIn(pieces, ref.piece);
  const dart = dartOf(piece, ref.dart);
  if (dart.gathered === true) return fail({ code: "alteration/not-this-dart", dart: ref });
  const names = [dart.name, ...freeNames(piece, homeOf(dart.name))].slice(0, into);
  if (names.length < into) return fail({ code: "alteration/too-many-darts" });
  const point = pointServed(piece, dart);
  const drawn = drawnTo(piece, dart.name, point);
  const { first } = mouthOf(drawn, dart.name);
  const strip = stripFor(drawn, dart, sewnLengthTo(drawn, dart.seam, first), into);
  if (strip < NARROWEST_STRIP) return fail({ code: "alteration/off-the-seam", most: strip });
  const each = openingAt(drawn, dart.name, point) / into;
  const would = 2 * distance(point, pointOf(drawn, first)) * Math.sin(each / 2);
  if (would < NARROWEST_DART) return fail({ code: "alteration/dart-vanishes", smallest: NARROWEST_DART, would });
  const fan = fannedOut(drawn, dart, names, { point, each, strip });
  const stop = stopShortOf(piece, dart.name, point) + SHORTER * (into - 1);
  const length = seamLength(piece, dart.seam);
  const done = names.reduce((so, name) => endedShortOf(so, name, point, stop, length), fan.piece);
  const values = {
    strip,
    aside: (strip * (into - 1)) / 2,
    stop,
    each: widthOf(done, dart.name),
    whole: widthOf(piece, dart.name),
  };
  return ok({ pieces: withPiece(pieces, done), traces: fan.traces, values });
}

const widthOf = (piece: Piece, name: DartName): Mm => {
  const { first, second } = mouthOf(piece, name);
  return distance(pointOf(piece, first), pointOf(piece, second));
};

/** The width of the strips between the mouths: the usual one, or what the seam has room for. */
function stripFor(piece: Piece, { seam }: Dart, at: Mm, into: 2 | 3): Mm {
  const room = Math.min(at, seamLength(piece, seam) - at) - AT_END;
  return Math.min(STRIP, (2 * room) / (into - 1));
}

interface Fan {
  readonly point: PiecePoint;
  readonly each: number;
  readonly strip: Mm;
}

/** The outer darts opened to both sides of the old one, which keeps the middle share of three, or closes for two. */
function fannedOut(
  drawn: Piece,
  dart: Dart,
  names: readonly DartName[],
  { point, each, strip }: Fan,
): { readonly piece: Piece; readonly traces: readonly SurgeryTrace[] } {
  const middle = invariant(
    DART_NAMES.find((name) => drawn.points[`${name}Apex`] === undefined && !names.includes(name)),
    "a free dart name",
  );
  const into = names.length;
  const aside = (strip * (into - 1)) / 2;
  // Numbered from the inner end of the mouth, which may be met first or last going round.
  const isInnerFirst = mouthOf(drawn, dart.name).first === dart.inner;
  const outermost = [invariant(names[0], "first"), invariant(names.at(-1), "last")];
  let piece = renamedDart(drawn, dart.name, middle);
  const traces: SurgeryTrace[] = [];
  for (const [i, name] of outermost.entries()) {
    const at = sewnLengthTo(piece, dart.seam, mouthOf(piece, middle).first);
    const place = atLength(piece, dart.seam, at + ((i === 0) === isInnerFirst ? -aside : aside));
    const turned = turnedBetween(
      withShutDart(partedFor(piece, place, name), dart, name, point),
      middle,
      name,
      point,
      radians(each),
    );
    piece = turned.piece;
    traces.push(turned.trace);
  }
  const kept = names[1];
  return {
    traces,
    piece: into === 3 && kept !== undefined ? renamedDart(piece, middle, kept) : joinedUp(piece, middle),
  };
}

/** The record of a new dart like an old one, at a mouth that stands shut as yet. */
const withShutDart = (parted: Piece, like: Dart, name: DartName, point: PiecePoint): Piece => ({
  ...parted,
  points: { ...parted.points, [`${name}Apex`]: { at: point, level: "bust" } },
  darts: [...parted.darts, { ...like, name, inner: `${name}Inner`, outer: `${name}Outer`, apex: `${name}Apex` }],
});
