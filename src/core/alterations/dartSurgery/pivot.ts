/**
 * A dart moved to another seam about the point that it serves, whole or in part. Its legs are drawn on to that point, the
 * part between the two places is turned about it, and both darts are ended short of it again.
 */
import type { DartPivotAlteration } from "../../decisions/alteration";
import type { AlterationFailure } from "../outcome/alterationFailure";
import { drawnStop, usualStop } from "../../dart/dartEnd";
import { BLOCK_DIFFERENCE } from "../../draft/draftMeasures";
import { distance, type PiecePoint } from "../../geometry/point";
import { rigidMotion } from "../../geometry/rigid";
import { levelWidth } from "../../girth/levelWidth";
import { seamLength } from "../../girth/seamLength";
import { dartName, homeOf, type DartNumber } from "../../pattern/dartNames";
import { dartOf, pointOf, type Dart, type DartHome, type DartName, type Piece } from "../../pattern/piece";
import { fail, invariant, ok, type Result } from "../../result";
import { cutAndMove, type SurgeryTrace } from "../../surgery/cutAndMove";
import {
  carriedBy,
  closingTurn,
  drawnTo,
  endedShortOf,
  joinedUp,
  mouthOf,
  openingAt,
  partedFor,
  pointServed,
  stopShortOf,
} from "../../surgery/openDart";
import { NARROWEST_DART, SHARES_WHOLE, SOLVER_ACCURACY } from "../../tolerance";
import { radians, type Mm, type Radians } from "../../units";
import type { FitApplied } from "../outcome/definition";
import { pieceIn, withPiece, type PieceSet } from "../../pattern/pieceSet";
import { bustLineKept } from "./bustLine";
import { hasHome, placeOfDart, seamOfHome, sewnLengthTo } from "./places";

/** Darts that serve no bust are turned about their own end; on a back alone, and to these seams alone. */
const FROM_BACK: readonly DartHome[] = ["shoulder", "neck", "side"];

/** A dart that is not to be moved so, or a seam that is not there. */
function refusal(
  piece: Piece,
  { aimsAt, name }: Dart,
  { dart: ref, to, share }: DartPivotAlteration,
): AlterationFailure | null {
  if (!hasHome(piece, to)) return { code: "alteration/not-on-this-style" };
  if (aimsAt === null && (piece.name !== "back" || !FROM_BACK.includes(to)))
    return { code: "alteration/not-this-dart", dart: ref };
  if (homeOf(name) === to && dartAt(piece, to, aimsAt, name) === undefined)
    return { code: "alteration/not-this-dart", dart: ref };
  return share > 0 ? null : { code: "alteration/dart-vanishes", smallest: NARROWEST_DART, would: 0 };
}

/** The dart of a home that aims where this one does: it takes up what is moved there. */
const dartAt = (piece: Piece, home: DartHome, aimsAt: Dart["aimsAt"], but: DartName): DartName | undefined =>
  piece.darts.find((dart) => dart.name !== but && homeOf(dart.name) === home && dart.aimsAt === aimsAt)?.name;

const NUMBERS: readonly DartNumber[] = ["", "2", "3"];

/** The names of a home that no dart of the piece has yet. */
export const freeNames = (piece: Piece, home: DartHome): readonly DartName[] =>
  NUMBERS.map((number) => dartName(home, number)).filter((name) => !piece.darts.some((dart) => dart.name === name));

/** The pieces after a dart was moved to another seam; or why it cannot be. */
export function pivotToSeam(pieces: PieceSet, alteration: DartPivotAlteration): Result<FitApplied, AlterationFailure> {
  const piece = pieceIn(pieces, alteration.dart.piece);
  const dart = dartOf(piece, alteration.dart.dart);
  const refused = refusal(piece, dart, alteration);
  if (refused !== null) return fail(refused);
  const share = alteration.share > 1 - SHARES_WHOLE ? 1 : alteration.share;
  const { to } = alteration;
  const point = pointServed(piece, dart);
  const taker = dartAt(piece, to, dart.aimsAt, dart.name);
  const opens = taker ?? freeNames(piece, to)[0];
  if (opens === undefined) return fail({ code: "alteration/too-many-darts" });
  const drawn =
    taker === undefined ? drawnTo(piece, dart.name, point) : drawnTo(drawnTo(piece, dart.name, point), taker, point);
  const angle = openingAt(drawn, dart.name, point);
  const turn = radians(angle * share);
  const ready = taker === undefined ? withNewDart(drawn, dart, opens, { to, point, turn }) : drawn;
  const vanishes = tooNarrow(ready, dart.name, opens, { point, turn, left: angle - turn, isNew: taker === undefined });
  if (vanishes !== null) return fail(vanishes);
  const turned = turnedBetween(ready, dart.name, opens, point, turn);
  const shut = share === 1 ? joinedUp(turned.piece, dart.name) : turned.piece;
  const stops = stopsAfter(piece, dart, taker, opens, { point, isWhole: share === 1 });
  const done = bustLineKept(endedAgain(shut, piece, [dart.name, opens], stops, point), piece);
  const centreOnFold = piece.centreOnFold && to !== "centre";
  const width = widthAt(done, opens);
  const along = sewnLengthTo(ready, seamOfHome(to), mouthOf(ready, opens).first);
  return ok({
    pieces: withPiece(pieces, { ...done, centreOnFold }),
    traces: [turned.trace],
    girths: girthsOf(piece, done),
    values: {
      closed: widthAt(piece, dart.name) * share,
      left: widthAt(piece, dart.name) * (1 - share),
      opened: taker === undefined ? width : width - widthAt(piece, taker),
      stop: invariant(stops[opens], opens),
      fromStart: along,
      fromEnd: seamLength(ready, seamOfHome(to)) - along,
    },
  });
}

/** What the girth at the bust, as it is measured on the flat piece, changes by: a back's line crosses the moved dart. */
function girthsOf(before: Piece, after: Piece): NonNullable<FitApplied["girths"]> {
  const [was, is] = [levelWidth(before, "bust"), levelWidth(after, "bust")];
  return was === null || is === null || Math.abs(is - was) < SOLVER_ACCURACY ? {} : { bust: 2 * (is - was) };
}

const widthAt = (piece: Piece, name: DartName): Mm => {
  const { inner, outer } = dartOf(piece, name);
  return distance(pointOf(piece, inner), pointOf(piece, outer));
};

interface NewDart {
  readonly to: DartHome;
  readonly point: PiecePoint;
  readonly turn: Radians;
}

/** The seam parted where the new dart is to open; it reaches the point and stands shut as yet. */
function withNewDart(piece: Piece, { name: old, aimsAt }: Dart, name: DartName, { to, point, turn }: NewDart): Piece {
  const onward = isOnward(piece, old, to);
  // Plumb below when open: the end of the mouth that stays lies half the angle to one side.
  const below = radians(Math.PI / 2 + (onward ? turn : -turn) / 2);
  const place = placeOfDart(piece, to, point, below);
  const parted = partedFor(piece, place, name);
  const dart: Dart = {
    name,
    seam: seamOfHome(to),
    inner: `${name}Inner`,
    outer: `${name}Outer`,
    apex: `${name}Apex`,
    aimsAt,
  };
  return {
    ...parted,
    points: { ...parted.points, [dart.apex]: { at: point, level: "bust" } },
    darts: [...parted.darts, dart],
  };
}

/** Whether a home lies onward from a dart, going round from where the ring begins: that corner never turns. */
function isOnward(piece: Piece, from: DartName, to: DartHome): boolean {
  const mouth = piece.edges.findIndex((edge) => edge.mouthOf === from);
  return piece.edges.findIndex((edge) => edge.seam === seamOfHome(to)) > mouth;
}

/** The part between two darts turned about the point, so that one closes and the other opens by an angle. */
export function turnedBetween(
  piece: Piece,
  closing: DartName,
  opening: DartName,
  point: PiecePoint,
  angle: Radians,
): { piece: Piece; trace: SurgeryTrace } {
  const [closes, opens] = [mouthOf(piece, closing), mouthOf(piece, opening)];
  const indexOf = (name: DartName): number => piece.edges.findIndex((edge) => edge.mouthOf === name);
  const onward = indexOf(opening) > indexOf(closing);
  const stretch = onward ? { from: closes.second, to: opens.first } : { from: opens.second, to: closes.first };
  const part = { ...stretch, inside: [point], motion: rigidMotion(point, closingTurn(onward, angle)) };
  return cutAndMove(piece, [{ ...part, carries: carriedBy(piece, part) }], {
    cuts: [
      [pointOf(piece, onward ? opens.first : opens.second), point],
      [pointOf(piece, onward ? closes.second : closes.first), point],
    ],
    hinges: [point],
  });
}

/**
 * A dart that would be too narrow to sew.
 *
 * @source a dart of angle θ between legs L is 2 L sin(θ/2) wide
 */
function tooNarrow(
  piece: Piece,
  old: DartName,
  opens: DartName,
  {
    point,
    turn,
    left,
    isNew,
  }: { readonly point: PiecePoint; readonly turn: Radians; readonly left: number; readonly isNew: boolean },
): AlterationFailure | null {
  const width = (name: DartName, angle: number): Mm =>
    2 * distance(point, pointOf(piece, mouthOf(piece, name).first)) * Math.sin(angle / 2);
  const widths = [...(left === 0 ? [] : [width(old, left)]), ...(isNew ? [width(opens, turn)] : [])];
  const would = Math.min(...widths, Infinity);
  return would < NARROWEST_DART
    ? { code: "alteration/dart-vanishes", smallest: NARROWEST_DART, would: Math.max(0, would) }
    : null;
}

type Stops = Readonly<Partial<Record<DartName, Mm>>>;

/** mm. A new dart of a back ends this far short of the one it was taken from (our own choice): two ends would crowd. */
const SHORT_OF_OTHER: Mm = 20;

/** Darts keep their own stops; a new one gets the usual one, or that of the old dart where both are ended alike. */
function stopsAfter(
  piece: Piece,
  old: Dart,
  taker: DartName | undefined,
  opens: DartName,
  { point, isWhole }: { readonly point: PiecePoint; readonly isWhole: boolean },
): Stops {
  const own = old.aimsAt === null ? 0 : stopShortOf(piece, old.name, point);
  if (taker === undefined)
    return {
      [old.name]: own,
      [opens]: old.aimsAt !== null ? newStop(old.name, opens, own) : isWhole ? 0 : SHORT_OF_OTHER,
    };
  const taking = stopShortOf(piece, taker, point);
  // Darts that were split had to end further off than the one that they become again.
  const isRejoined = homeOf(taker) === homeOf(old.name);
  return { [old.name]: own, [opens]: isRejoined ? Math.min(taking, usualStop(taker).most) : taking };
}

function newStop(old: DartName, name: DartName, own: Mm): Mm {
  const [before, { least, most }] = [usualStop(old), usualStop(name)];
  const isAlike = before.least === least && before.most === most;
  return isAlike ? Math.min(most, Math.max(least, own)) : drawnStop(name, BLOCK_DIFFERENCE);
}

/** Darts ended short of the point and their seams trued, at the lengths that the seams had. */
function endedAgain(turned: Piece, before: Piece, names: readonly DartName[], stops: Stops, point: PiecePoint): Piece {
  return turned.darts
    .filter(({ name }) => names.includes(name))
    .reduce(
      (piece, { name, seam }) =>
        endedShortOf(piece, name, point, invariant(stops[name], name), seamLength(before, seam)),
      turned,
    );
}
