/** What is to be done on the pieces of one half, told from the picks, the ledger and the pieces as they come out. */
import type { TruingChange } from "../truing/changes";
import { isBand, isBasque } from "../pattern/pieceGroups";
import { PIECE_ORDER, piecesOf, setOf, type PieceSet } from "../pattern/pieceSet";
import { seamPairsOf, type SeamPair } from "../pattern/sewnTogether";
import type { NecklineFailure } from "../neckline/necklineFailure";
import type { RedrawnNeckline } from "../neckline/redrawNeckline";
import { distance, type PiecePoint } from "../geometry/point";
import { lineDistance } from "../geometry/segment";
import { isRedraw, type Alteration, type DartRedraw, type FitAlteration } from "../decisions/alteration";
import type { FitName } from "../decisions/fitNames";
import type { AlterationTrace } from "../alterations/outcome/trace";
import { rankOf } from "../decisions/tradeOrder";
import {
  pointOf,
  type DartHome,
  type DartName,
  type DartRef,
  type LevelName,
  type Piece,
  type PieceName,
  type PointName,
} from "../pattern/piece";
import { homeOf } from "../pattern/dartNames";
import { invariant, type Result } from "../result";
import { SAME_LINE, HAND_AGREEMENT, READS_AS_NOTHING } from "../tolerance";
import type { Mm } from "../units";
import type { BustSpreadAt, ChecklistItem, CutLine, PlannedAlteration, PlannedDart } from "./plan";
import type { Sizing } from "../sizing/sizing";
import { cutLinePoint, lineAt } from "./cutLines";
import type { HalfLevelled } from "./levelHalves";
import {
  dartPlaces,
  drawnLengths,
  movedOnTissue,
  printedOf,
  stayedOnTissue,
  tissuePlace,
  type TissuePlace,
} from "./tissuePlaces";
import { necklineJob } from "./necklineJob";
import { inOrderOfWork } from "./workPhases";

export interface ChecklistInputs {
  /** The base size as printed. */
  readonly printed: readonly Piece[];
  /** The pieces traced from the pattern: a seam made of darts parts one of them in two later on. */
  readonly traced: PieceSet;
  readonly pieces: PieceSet;
  /** The same with the neckline that was chosen. */
  readonly drawn: PieceSet;
  readonly neckline: Result<RedrawnNeckline, NecklineFailure> | null;
  readonly sizing: Sizing;
  readonly cutLines: readonly CutLine[];
  readonly darts: readonly PlannedDart[];
  readonly alterations: readonly PlannedAlteration[];
  readonly truing: readonly TruingChange[];
  readonly levelled: HalfLevelled | null;
  readonly bustPiece: PieceName;
  readonly bustPoint: { readonly own: PiecePoint | null };
  /** Pieces that are not the same on both halves. */
  readonly twice: ReadonlySet<PieceName>;
}

/** All jobs in the order they are done. */
export function listWork(inputs: ChecklistInputs): readonly ChecklistItem[] {
  const final = piecesOf(inputs.pieces).map((piece) => piece.name);
  const names = PIECE_ORDER.filter((name) => inputs.traced[name] !== undefined || final.includes(name));
  return inOrderOfWork([
    ...names.flatMap((piece) => jobsOn(piece, inputs)),
    ...seamPairsOf(inputs.pieces).map((pair) => walkOf(pair, inputs.pieces)),
  ]);
}

/** A seam to walk; of the pieces on either side those that have a part of it. */
function walkOf({ seam, first, second, ease }: SeamPair, pieces: PieceSet): ChecklistItem {
  const having = (names: readonly PieceName[]): readonly PieceName[] =>
    names.filter((name) => pieces[name]?.edges.some((edge) => edge.seam === seam));
  return {
    piece: invariant(having(first)[0], "piece"),
    step: { kind: "walk", seam, first: having(first), second: having(second), ease },
    amount: ease,
  };
}

/** What a cup version of the pattern has printed of its own; all other pieces are the same in every cup. */
const IN_CUP_VERSIONS: ReadonlySet<PieceName> = new Set(["front", "centreFront", "sideFront", "cup"]);

function jobsOn(piece: PieceName, inputs: ChecklistInputs): ChecklistItem[] {
  const { printed, traced, pieces, sizing, cutLines, darts: all, alterations, truing, bustPoint, twice } = inputs;
  const jobs: ChecklistItem[] = [];
  const ownPoint = bustPoint.own !== null;
  // Gathers have no legs to draw and nothing to fold.
  const darts = all.filter(
    ({ ref }) => pieces[ref.piece]?.darts.find(({ name }) => name === ref.dart)?.gathered !== true,
  );
  if (traced[piece] !== undefined) {
    const cup = IN_CUP_VERSIONS.has(piece) ? sizing.cup.label : null;
    jobs.push({
      piece,
      step: { kind: "trace", size: sizing.baseSize.label, cup, isTwice: twice.has(piece), own: ownMark(piece, inputs) },
      amount: 0,
    });
  }
  const tissue = printedOf(printed, piece);
  const made = pieces[piece];
  const redrawn = darts.filter((dart) => dart.ref.piece === piece && isRedrawn(dart)).map(({ ref }) => ref.dart);
  const marked = new Map<PointName, TissuePlace | null>();
  for (const cutLine of cutLines) {
    if (cutLine.piece !== piece || cutLine.level === "bust") continue;
    const moved = movedFromPick(cutLine, traced, pieces);
    const taken = takenAtSide(cutLine, moved, alterations);
    jobs.push({
      piece,
      step: { kind: "blend", cutLine, from: joinedFrom(cutLine), taken },
      amount: cutLine.offset - taken,
    });
    for (const [point, place] of byMark(cutLine, moved + taken, made, tissue)) marked.set(point, place);
  }
  for (const planned of alterations) {
    if (!isDoneOn(planned, piece)) continue;
    const { what } = planned;
    if (what.kind === "bust") {
      jobs.push({
        piece,
        step: {
          kind: "bust",
          spread: what.spread,
          whole: what.amount,
          drop: what.drop,
          hinge: hingeFromUnderarm(planned, piece),
          ...spreadAt(planned, piece),
        },
        amount: what.spread,
      });
    }
    if (what.kind === "alteration")
      jobs.push({ piece, step: { kind: "alteration", planned }, amount: amountOf(planned) });
  }
  const { levelled: level } = inputs;
  if (level?.trace.after[piece] !== undefined)
    jobs.push({ piece, step: { kind: "level", level }, amount: level.amount });
  if (tissue !== undefined && made !== undefined) {
    const places = movedOnTissue(tissue, made, redrawn).flatMap((place): readonly TissuePlace[] => {
      const told = marked.get(place.point);
      return told === null ? [] : [told ?? place];
    });
    const lengths = drawnLengths(tissue, made);
    if (places.length + lengths.length > 0)
      jobs.push({ piece, step: { kind: "places", places, lengths, stayed: stayedOnTissue(tissue, made) }, amount: 0 });
  }
  // Lengths and legs come right where the points are put; what bends is drawn by hand.
  for (const change of truing) {
    if (change.piece === piece && (change.what === "seamSmoothed" || change.what === "cornerSquared"))
      jobs.push({ piece, step: { kind: "trued", change }, amount: 0 });
  }
  for (const dart of darts) {
    if (dart.ref.piece !== piece || !isRedrawn(dart)) continue;
    const late = alterations.some(
      (planned) => rankOf(planned.phase) > rankOf("darts") && changesDart(planned, dart.ref),
    );
    const places = tissue === undefined || made === undefined ? null : dartPlaces(tissue, made, dart.ref.dart);
    jobs.push({
      piece,
      step: {
        kind: "dart",
        dart: dart.ref,
        figures: dart.drawn,
        places,
        isByOwnPoint: ownPoint,
        isBySight: dart.bySight !== null,
        isMovedAlready: isMovedAlready(dart.ref, alterations),
        late,
      },
      amount: dart.drawn.intake,
    });
  }
  for (const dart of darts) {
    // A side seam that was moved is trued over its dart as well, though the dart stays as printed.
    const crossed =
      dart.ref.dart === "sideDart" &&
      cutLines.some((line) => line.piece === piece && leavesTraced(line, printed, traced));
    if (dart.ref.piece !== piece || (!crossed && !isRedrawn(dart))) continue;
    const amount = Math.max(Math.abs(dart.truing.inner), Math.abs(dart.truing.outer));
    jobs.push({ piece, step: { kind: "trueDart", dart: dart.ref, amount }, amount });
  }
  const { neckline } = inputs;
  const edge = neckline?.ok === true ? necklineJob(piece, pieces, inputs.drawn, neckline.value) : null;
  if (edge !== null) jobs.push({ piece, step: { kind: "neckline", ...edge }, amount: 0 });
  return jobs;
}

/** Her own bust point on the tissue, where the piece carries it and it was measured. */
function ownMark(piece: PieceName, { bustPiece, bustPoint: { own }, printed, alterations }: ChecklistInputs) {
  const tissue = printedOf(printed, piece);
  if (own === null || piece !== bustPiece || tissue === undefined) return null;
  const [sideNeck, its] = [tissue.points.sideNeck?.at, tissue.points.bustPoint?.at];
  return {
    fromCentre: own.x,
    fromSideNeck: sideNeck === undefined ? null : distance(sideNeck, own),
    fromPrinted: its === undefined ? null : { out: own.x - its.x, down: own.y - its.y },
    isMoved: alterations.some((planned) => isDoneOn(planned, piece)),
  };
}

/** How far the point on the armhole that a front is turned about lies from the underarm. */
function hingeFromUnderarm({ outcome }: PlannedAlteration, name: PieceName): Mm {
  if (!outcome.ok) return 0;
  const hinge = outcome.value.surgery.find(({ piece }) => piece === name)?.hinges[0];
  const underarm = outcome.value.before[name]?.points.underarm?.at;
  return hinge === undefined || underarm === undefined ? 0 : distance(hinge, underarm);
}

/** The darts that a front is spread at, and which of them is opened for it. */
function spreadAt({ outcome }: PlannedAlteration, name: PieceName): { readonly at?: BustSpreadAt } {
  if (!outcome.ok || name !== "front") return {};
  const [before, after] = [outcome.value.before[name], outcome.value.after[name]];
  const find = (homes: readonly DartHome[]) =>
    after?.darts.find(
      (dart) => dart.aimsAt === "bustPoint" && dart.gathered !== true && homes.includes(homeOf(dart.name)),
    );
  const [side, waist] = [find(["side", "french"]), find(["waist"])];
  if (before === undefined || after === undefined || side === undefined || waist === undefined) return {};
  const had = (dart: DartName): boolean => before.darts.some((one) => one.name === dart);
  const from = after.points.sideBust === undefined ? "underarm" : "sideBust";
  const by = distance(pointOf(after, from), pointOf(after, side.inner));
  return {
    at: {
      side: side.name,
      sideOpened: had(side.name) ? null : { from, by },
      waist: waist.name,
      isWaistOpened: !had(waist.name),
    },
  };
}

/** Where the new side seam leaves the traced one: at the hip of a basque, below the bust of a bodice, at the top of a band. */
function joinedFrom({ piece, level }: CutLine): LevelName {
  if (level === "hip") return "waist";
  if (isBasque(piece)) return "hip";
  return isBand(piece) ? "underBust" : "bust";
}

/** How far the finished side seam lies from where the picks alone put it: by the bust adjustment and by the wearer's alterations. */
const movedFromPick = (line: CutLine, traced: PieceSet, pieces: PieceSet): Mm =>
  lineAt(pieces, line).x - lineAt(traced, line).x;

/** What narrower or wider darts have given to the side seam at the waist of a piece, where nothing else moves it: mm taken off. */
function takenAtSide(line: CutLine, moved: Mm, alterations: readonly PlannedAlteration[]): Mm {
  if (line.level !== "waist") return 0;
  const taken = alterations.reduce((sum, { what, outcome }) => {
    const isDart = what.kind === "alteration" && isRedraw(what.alteration);
    if (!isDart || !outcome.ok || outcome.value.seam !== "waist") return sum;
    const given = outcome.value.given.filter((one) => one.place === "sideSeam" && one.piece === line.piece);
    return sum + given.reduce((all, { amount }) => all + amount, 0);
  }, 0);
  return Math.abs(moved + taken) <= READS_AS_NOTHING ? taken : 0;
}

/**
 * What the blend's mark says of the points of the finished side seam: where it is, where it is but for the height (then told
 * from the mark), and the hem below as far from the printed line.
 *
 * @param left how far the finished seam lies from the mark across the piece
 */
function byMark(
  line: CutLine,
  left: Mm,
  made: Piece | undefined,
  tissue: Piece | undefined,
): ReadonlyMap<PointName, TissuePlace | null> {
  const name = cutLinePoint(line.level);
  if (made === undefined || tissue === undefined || Math.abs(left) > READS_AS_NOTHING) return new Map();
  const place = tissuePlace(tissue, made, name);
  if (place === null) return new Map();
  if (Math.abs(place.down) > READS_AS_NOTHING)
    return new Map([[name, { ...place, out: 0, isFromMark: true as const }]]);
  const hem = line.level === "hip" ? tissuePlace(tissue, made, "sideHem") : null;
  const isAlike = hem !== null && Math.hypot(hem.out - place.out, hem.down) <= READS_AS_NOTHING;
  return new Map<PointName, TissuePlace | null>([[name, null], ...(isAlike ? [["sideHem", null] as const] : [])]);
}

/** Whether an alteration is something to do on a piece: where a dart was redrawn or made into another thing, or on every piece changed. */
function isDoneOn(planned: PlannedAlteration, piece: PieceName): boolean {
  const { what, outcome } = planned;
  if (!outcome.ok || what.kind === "blend") return false;
  if (what.kind === "bust" || what.alteration.kind === "fit") return outcome.value.after[piece] !== undefined;
  return what.alteration.dart.piece === piece && !isLeftAsItWas(what.alteration, outcome.value);
}

/** Asked for nothing, a dart is only drawn again where it is. */
function isLeftAsItWas(
  alteration: Exclude<Alteration, FitAlteration>,
  { before, after, moved }: AlterationTrace,
): boolean {
  if (isRedraw(alteration)) return moved.length === 0 && asksNothing(alteration);
  const { piece } = alteration.dart;
  return before[piece] === after[piece];
}

function asksNothing(alteration: DartRedraw): boolean {
  switch (alteration.kind) {
    case "dartEnd":
      return alteration.shorten === 0 && alteration.across === 0;
    case "dartMouth":
      return alteration.inner === 0 && alteration.outer === 0;
    case "dartPlace":
      return alteration.by === 0;
  }
}

/** Whether the new side seam leaves the line of the size that is traced. */
const leavesTraced = (line: CutLine, printed: readonly Piece[], traced: PieceSet): boolean =>
  Math.abs(lineAt(traced, line).x - lineAt(setOf(printed), line).x) > SAME_LINE;

/** Whether an alteration moves the end or the mouth of a dart. */
function changesDart({ outcome }: PlannedAlteration, { piece, dart }: DartRef): boolean {
  if (!outcome.ok) return false;
  const [before, after] = [outcome.value.before[piece], outcome.value.after[piece]];
  if (before === undefined || after === undefined) return false;
  return ([`${dart}Apex`, `${dart}Inner`, `${dart}Outer`] as const).some((name) => {
    const [from, to] = [before.points[name]?.at, after.points[name]?.at];
    return from !== undefined && to !== undefined && distance(from, to) > HAND_AGREEMENT;
  });
}

/** Fits whose own moves leave a dart whole and drawn; others bend it, or leave its legs to be drawn. */
const LEAVING_DRAWN: ReadonlySet<FitName> = new Set(["bustPointLevel", "lengthAboveBust", "sideSeamBust"]);

/** Whether a dart was changed by such fits alone. */
function isMovedAlready(dart: DartRef, alterations: readonly PlannedAlteration[]): boolean {
  const changing = alterations.filter((planned) => changesDart(planned, dart));
  return (
    changing.length > 0 &&
    changing.every(
      ({ what }) =>
        what.kind === "alteration" && what.alteration.kind === "fit" && LEAVING_DRAWN.has(what.alteration.fit),
    )
  );
}

/** The dart is other than printed, so its legs must be drawn anew. Legs that only reach on to a moved seam need not. */
function isRedrawn({ printed, drawn }: PlannedDart): boolean {
  if (printed === null) return true;
  const isOffLeg = (end: PiecePoint, leg: PiecePoint): boolean =>
    Math.abs(lineDistance(end, printed.apex, leg)) > HAND_AGREEMENT;
  return (
    Math.abs(printed.intake - drawn.intake) > HAND_AGREEMENT ||
    distance(printed.apex, drawn.apex) > HAND_AGREEMENT ||
    isOffLeg(drawn.inner, printed.inner) ||
    isOffLeg(drawn.outer, printed.outer)
  );
}

function amountOf(planned: PlannedAlteration): number {
  if (planned.what.kind !== "alteration") return 0;
  const { alteration } = planned.what;
  switch (alteration.kind) {
    case "dartEnd":
      return alteration.shorten === 0 ? alteration.across : alteration.shorten;
    case "dartMouth":
      return alteration.inner + alteration.outer;
    case "dartPlace":
      return alteration.by;
    case "fit":
      return alteration.amount;
    case "dartLegs":
      return alteration.bow;
    default:
      return 0;
  }
}
