/** What is to be done on the pieces of one half, told from the picks, the ledger and the pieces as they come out. */
import type { TruingChange } from "../truing/changes";
import { isBasque } from "../pattern/pieceGroups";
import { PIECE_ORDER, piecesOf, setOf, type PieceSet } from "../pattern/pieceSet";
import { seamPairsOf, type SeamPair } from "../pattern/sewnTogether";
import { distance, type PiecePoint } from "../geometry/point";
import { lineDistance } from "../geometry/segment";
import { homeOf } from "../pattern/dartNames";
import { isRedraw, type Alteration, type DartRedraw, type FitAlteration } from "../decisions/alteration";
import type { AlterationTrace } from "../alterations/outcome/trace";
import { rankOf } from "../decisions/tradeOrder";
import type { DartHome, DartRef, Piece, PieceName, PointName } from "../pattern/piece";
import { invariant } from "../result";
import { SAME_LINE, HAND_AGREEMENT } from "../tolerance";
import type { ChecklistItem, CutLine, MouthPlace, PlannedAlteration, PlannedDart } from "./plan";
import type { Sizing } from "../sizing/sizing";
import { lineAt } from "./cutLines";
import { inOrderOfWork } from "./workPhases";

export interface ChecklistInputs {
  /** The base size as printed. */
  readonly printed: readonly Piece[];
  /** The pieces traced from the pattern: a seam made of darts parts one of them in two later on. */
  readonly traced: PieceSet;
  readonly pieces: PieceSet;
  readonly sizing: Sizing;
  readonly cutLines: readonly CutLine[];
  readonly darts: readonly PlannedDart[];
  readonly alterations: readonly PlannedAlteration[];
  readonly truing: readonly TruingChange[];
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

function jobsOn(
  piece: PieceName,
  { printed, traced, pieces, sizing, cutLines, darts: all, alterations, truing }: ChecklistInputs,
): ChecklistItem[] {
  const jobs: ChecklistItem[] = [];
  // Gathers have no legs to draw and nothing to fold.
  const darts = all.filter(
    ({ ref }) => pieces[ref.piece]?.darts.find(({ name }) => name === ref.dart)?.gathered !== true,
  );
  if (traced[piece] !== undefined) {
    const cup = IN_CUP_VERSIONS.has(piece) ? sizing.cup.label : null;
    jobs.push({ piece, step: { kind: "trace", size: sizing.baseSize.label, cup }, amount: 0 });
  }
  for (const cutLine of cutLines) {
    if (cutLine.piece !== piece || cutLine.level === "bust") continue;
    const from = cutLine.level === "waist" ? (isBasque(piece) ? "hip" : "bust") : "waist";
    jobs.push({ piece, step: { kind: "blend", cutLine, from }, amount: cutLine.offset });
  }
  for (const planned of alterations) {
    if (!isDoneOn(planned, piece)) continue;
    const { what } = planned;
    if (what.kind === "bust") {
      jobs.push({
        piece,
        step: { kind: "bust", spread: what.spread, whole: what.amount, drop: what.drop },
        amount: what.spread,
      });
    }
    if (what.kind === "alteration")
      jobs.push({ piece, step: { kind: "alteration", planned }, amount: amountOf(planned) });
  }
  for (const change of truing)
    if (change.piece === piece) jobs.push({ piece, step: { kind: "trued", change }, amount: 0 });
  for (const dart of darts) {
    if (dart.ref.piece !== piece || !isRedrawn(dart)) continue;
    const late = alterations.some(
      (planned) => rankOf(planned.phase) > rankOf("darts") && changesDart(planned, dart.ref),
    );
    const mouth = mouthPlace(pieces[piece], dart);
    jobs.push({
      piece,
      step: { kind: "dart", dart: dart.ref, figures: dart.drawn, mouth, late },
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
  return jobs;
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

/** The corner that a mouth is measured from on the seam it opens on. */
const MEASURED_FROM: Readonly<Record<DartHome, PointName>> = {
  side: "underarm",
  french: "underarm",
  armhole: "underarm",
  waist: "centreWaist",
  underBust: "underBustCentre",
  shoulder: "sideNeck",
  neck: "centreNeck",
  centre: "centreNeck",
};

/** null where the piece has no such corner. */
function mouthPlace(piece: Piece | undefined, { ref, drawn }: PlannedDart): MouthPlace | null {
  const from = MEASURED_FROM[homeOf(ref.dart)];
  const corner = piece?.points[from]?.at;
  return corner === undefined
    ? null
    : { from, inner: distance(corner, drawn.inner), outer: distance(corner, drawn.outer) };
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
