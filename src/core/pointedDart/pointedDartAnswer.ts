/**
 * One whole answer: place, mouth and end found so that the dart ends where it should with the fullness wanted, then made
 * with the very alterations it is offered as, and measured. What does not come out as said is not offered.
 */
import type { DartPlaceAlteration, DartRedraw, GiveBack, GiveBackPlace, Hold } from "../decisions/alteration";
import type { AlterationFailure } from "../alterations/outcome/alterationFailure";
import { applyAlteration } from "../alterations/applyAlteration";
import type { Applied } from "../alterations/outcome/applied";
import { sewn as sewnLength } from "../alterations/redraw/giveBack";
import { pieceIn, type PieceSet } from "../pattern/pieceSet";
import { edgeLength } from "../geometry/edgeCurve";
import { angleAt, distance, shift, type PiecePoint } from "../geometry/point";
import { dartOf, type DartRef, type Piece } from "../pattern/piece";
import { fail, ok, type Result } from "../result";
import { curveOf } from "../pattern/ring";
import { KEPT_TO } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import { apexOffset, axisLength } from "../dart/dartFrame";
import { measureDart } from "../dart/measureDart";
import { dartCorners } from "../dart/moveMouth";
import type { DartAnswerKey } from "../decisions/seenAtDart";
import type { DartAnswer, PointedDartContext, SeamTerm } from "./pointedDartTypes";
import type { Aim, AsSewn } from "./pointedDartAim";
import { costOf } from "./pointedDartCost";
import { isAsSaid } from "./pointedDartPromise";

/** How an answer goes about it. */
export interface Way {
  readonly key: DartAnswerKey;
  readonly how: DartPlaceAlteration["how"];
  readonly giveBack: GiveBack;
}

/** Rounds in which the mouth is corrected; each leaves well under a tenth of the error. */
const ROUNDS = 5;

type Unmade = { readonly because: AlterationFailure | null };

interface Made {
  readonly alterations: readonly DartRedraw[];
  readonly steps: readonly Applied[];
  readonly pieces: PieceSet;
}

/** An answer, or what stands in its way: an alteration refused, or (null) what came out was not as said. */
export function makeAnswer(from: AsSewn, way: Way, aim: Aim, context: PointedDartContext): Result<DartAnswer, Unmade> {
  // With the fullness held while the end moves, the mouth's own alteration says how fullness changes; a very short dart that is to
  // become longer cannot bear the narrow mouth meanwhile, and then gets its last mouth first.
  const first = solve(from, way, aim, context, "fullness");
  if (first.ok) return first;
  const second = solve(from, way, aim, context, "mouth");
  return second.ok ? second : first;
}

function solve(from: AsSewn, way: Way, aim: Aim, context: PointedDartContext, hold: Hold): Result<DartAnswer, Unmade> {
  const wanted = angleForFullness(aim.fullness, context.radius);
  if (wanted === null) return fail({ because: null });
  let aimed = wanted;
  for (let round = 0; round < ROUNDS; round += 1) {
    const made = make(from, way, aim, context, hold, aimed);
    if (!made.ok) return fail({ because: made.failure });
    const { apex, inner, outer } = dartCorners(pieceIn(made.value.pieces, from.ref.piece), from.ref.dart);
    const missed = wanted - angleAt(apex, inner, outer);
    // No closer than the amounts are kept to.
    if (Math.abs(missed) * distance(apex, inner) < KEPT_TO) break;
    aimed = radians(aimed + missed);
  }
  const made = make(from, way, aim, context, hold, aimed);
  if (!made.ok) return fail({ because: made.failure });
  const answer = read(from, way, aim, context, made.value);
  const { pieces } = made.value;
  const { fullnessOff, figures } = answer;
  return isAsSaid(from.base, from.ref, { pieces, figures: figures.after, fullnessOff, stop: aim.stop })
    ? ok(answer)
    : fail({ because: null });
}

/** The angle of the cone of that height: the inverse of `coneHeight`; null where no dart that can be drawn gives it. */
export function angleForFullness(fullness: Mm, radius: Mm): Radians | null {
  if (!(fullness > 0 && fullness < radius)) return null;
  const angle = 2 * Math.PI * (1 - Math.sqrt(1 - (fullness / radius) ** 2));
  return angle < Math.PI ? radians(angle) : null;
}

/** The alterations for an angle, made one after the other: each is stated in the axes that the one before leaves. */
function make(
  from: AsSewn,
  way: Way,
  aim: Aim,
  { bustPoint }: PointedDartContext,
  hold: Hold,
  angle: Radians,
): Result<Made, AlterationFailure> {
  const { ref, base } = from;
  const common = { dart: ref, giveBack: way.giveBack };
  let made: Made = { alterations: [], steps: [], pieces: base };
  const put = (alteration: DartRedraw): AlterationFailure | null => {
    const done = applyAlteration(made.pieces, alteration, { bustPoint });
    if (!done.ok) return done.failure;
    made = {
      alterations: [...made.alterations, alteration],
      steps: [...made.steps, done.value],
      pieces: done.value.pieces,
    };
    return null;
  };
  const corners = () => dartCorners(pieceIn(made.pieces, ref.piece), ref.dart);

  const by = rounded(aim.toCentre);
  const end = way.how === "offCentreSeam" ? shift(aim.end, by, 0) : aim.end;
  if (by !== 0) {
    const refused = put({ ...common, kind: "dartPlace", id: idOf("dartPlace", ref), by, how: way.how });
    if (refused !== null) return fail(refused);
  }
  const placed = corners();
  const axis = axisLength(placed);
  const width = 2 * (hold === "fullness" ? axis : axis - apexOffset(placed, end).shorten) * Math.tan(angle / 2);
  const each = rounded((width - distance(placed.inner, placed.outer)) / 2);
  if (each !== 0) {
    const refused = put({ ...common, kind: "dartMouth", id: idOf("dartMouth", ref), inner: each, outer: each });
    if (refused !== null) return fail(refused);
  }
  const offset = apexOffset(corners(), end);
  const [shorten, across] = [rounded(offset.shorten), rounded(offset.across)];
  if (shorten !== 0 || across !== 0) {
    const refused = put({ ...common, kind: "dartEnd", id: idOf("dartEnd", ref), shorten, across, hold });
    if (refused !== null) return fail(refused);
  }
  return ok(made);
}

/** As the page names them: one of each kind for each dart. */
const idOf = (kind: DartRedraw["kind"], { piece, dart }: DartRef): string => `${kind}-${piece}-${dart}`;

const rounded = (amount: Mm): Mm => Math.round(amount / KEPT_TO) / Math.round(1 / KEPT_TO) + 0;

function read(from: AsSewn, way: Way, aim: Aim, { radius }: PointedDartContext, made: Made): DartAnswer {
  const { ref, base } = from;
  const bustLoses = 0 - total(made.steps.map(({ girths }) => girths.bust ?? 0));
  const offCentre = way.how === "offCentreSeam" ? bustLoses / 2 : 0;
  const figuresOf = (pieces: PieceSet, bustPoint: PiecePoint) =>
    measureDart(pieceIn(pieces, ref.piece), ref.dart, bustPoint, radius);
  const before = figuresOf(from.pieces, shift(aim.bustPoint, from.centreIn, 0));
  const after = figuresOf(made.pieces, shift(aim.bustPoint, offCentre, 0));
  const given = givenIn(made.steps);
  const notes = made.steps.flatMap(({ trace }) => trace.notes);
  const sum = sumOf(from, made.pieces, figuresOf(base, aim.bustPoint).intake, after.intake, offCentre, given);
  return {
    key: way.key,
    alterations: made.alterations,
    figures: { before, after, wantedFullness: aim.fullness },
    freed: total(sum.filter(({ kind }) => kind === "mouth" || kind === "offCentre").map(({ amount }) => amount)),
    given,
    sum,
    fullnessOff: after.fullness - aim.fullness,
    bustLoses,
    basqueDartOff: basqueDartOff(from, made.pieces),
    notes,
    cost: costOf(after.fullness - aim.fullness, {
      given,
      offCentre,
      centreNowSeam: notes.some(({ code }) => code === "centreNowSeam"),
    }),
  };
}

function basqueDartOff({ base, ref }: AsSewn, pieces: PieceSet): Mm {
  const basque = pieces.frontBasque;
  if (ref.dart !== "waistDart" || basque === undefined || !basque.darts.some(({ name }) => name === "waistDart"))
    return 0;
  return seamBeforeDart(pieceIn(base, ref.piece), ref) - seamBeforeDart(pieceIn(pieces, ref.piece), ref);
}

/** Sewn length of the waist from the centre line to the dart. */
function seamBeforeDart(piece: Piece, { dart }: DartRef): Mm {
  const { inner, seam } = dartOf(piece, dart);
  const edges = piece.edges.filter((edge) => edge.seam === seam && edge.mouthOf !== dart);
  const centreward = edges.filter((edge) => edge.from === inner || edge.to === inner);
  return total(centreward.map((edge) => edgeLength(curveOf(piece, edge))));
}

function givenIn(steps: readonly Applied[]): readonly { readonly place: GiveBackPlace; readonly amount: Mm }[] {
  const by = new Map<GiveBackPlace, Mm>();
  for (const { trace } of steps)
    for (const { place, amount } of trace.given) by.set(place, (by.get(place) ?? 0) + amount);
  return [...by].map(([place, amount]) => ({ place, amount }));
}

function sumOf(
  from: AsSewn,
  pieces: PieceSet,
  intakeWas: Mm,
  intakeIs: Mm,
  offCentre: Mm,
  given: DartAnswer["given"],
): readonly SeamTerm[] {
  const before = sewnLength(from.base, from.ref);
  const after = sewnLength(pieces, from.ref);
  const terms: readonly SeamTerm[] = [
    { kind: "before", amount: before },
    { kind: "mouth", amount: intakeWas - intakeIs, from: intakeWas, to: intakeIs },
    ...(offCentre === 0 ? [] : [{ kind: "offCentre", amount: -offCentre } as const]),
    ...given.map(({ place, amount }) => ({ kind: "given", amount: -amount, place }) as const),
  ];
  return [
    ...terms,
    { kind: "smoothed", amount: after - total(terms.map(({ amount }) => amount)) },
    { kind: "after", amount: after },
  ];
}

const total = (amounts: readonly Mm[]): Mm => amounts.reduce((a, b) => a + b, 0);
