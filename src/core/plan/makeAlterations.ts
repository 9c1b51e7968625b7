/** The wearer's alterations applied one after the other to the built pieces, and the ledger that tells of them. */
import { dartOfAlteration, isRedraw, type Alteration, type Half } from "../decisions/alteration";
import type { TruingChange } from "../truing/changes";
import type { AlterationFailure } from "../alterations/outcome/alterationFailure";
import { applyAlteration } from "../alterations/applyAlteration";
import { untouched } from "../alterations/outcome/applied";
import { phaseOf } from "../decisions/tradeOrder";
import { fitOf } from "../alterations/fit/index";
import { PIECE_ORDER, pieceIn, piecesOf, type PieceSet } from "../pattern/pieceSet";
import { pointOf, type DartRef, type PieceName } from "../pattern/piece";
import { fail, invariant, ok } from "../result";
import { styleOf } from "../style/index";
import { SEWN_ONLY, trueAll } from "../truing/trueAll";
import { READS_AS_NOTHING } from "../tolerance";
import { radians, type Mm } from "../units";
import type { PiecePoint } from "../geometry/point";
import { remember } from "../remember";
import type { Built } from "./buildPieces";
import type { Picked } from "./pickSizes";
import { lineAt } from "./cutLines";
import type { CutLine, PlannedAlteration } from "./plan";
import { type Work } from "../decisions/work";

export interface AlterationsMade {
  readonly pieces: PieceSet;
  readonly alterations: readonly PlannedAlteration[];
  /** What truing legs moved, by dart. */
  readonly truing: ReadonlyMap<string, { readonly inner: Mm; readonly outer: Mm }>;
  /** What truing changed at the end. */
  readonly changes: readonly TruingChange[];
  /** What whole girths change by through alterations, by design. */
  readonly girths: Readonly<Partial<Record<"bust" | "waist" | "hip", Mm>>>;
}

/** One key for a dart of a piece. */
export const keyOf = ({ piece, dart }: DartRef): string => `${piece}.${dart}`;

const NONE: ReadonlyMap<string, AlterationFailure> = new Map();

/** Whether an alteration is made on one half alone. */
const isOneSided = (alteration: Alteration): boolean => alteration.kind === "fit" && alteration.half !== undefined;

/**
 * The wearer's alterations on both halves of the body; the same object twice where the halves are alike. What is for both
 * and cannot be made on one of them is left out on both, so that the ledger tells one thing of it.
 */
export function makeOnHalves(
  work: Work,
  picked: Picked,
): { readonly left: AlterationsMade; readonly right: AlterationsMade } {
  if (!work.alterations.some(isOneSided)) {
    const both = makeAlterations(work, picked, null);
    return { left: both, right: both };
  }
  const leftOut = new Map<string, AlterationFailure>();
  for (;;) {
    const left = makeAlterations(work, picked, "left", leftOut);
    const right = makeAlterations(work, picked, "right", leftOut);
    const before = leftOut.size;
    for (const planned of [...left.alterations, ...right.alterations]) {
      const isForBoth =
        left.alterations.some(({ id }) => id === planned.id) && right.alterations.some(({ id }) => id === planned.id);
      if (isForBoth && planned.source === "wearer" && !planned.outcome.ok)
        leftOut.set(planned.id, planned.outcome.failure);
    }
    if (leftOut.size === before) return { left, right };
  }
}

interface Step {
  readonly pieces: PieceSet;
  readonly alteration: Alteration;
  readonly bustPoint: PiecePoint;
}

/**
 * One alteration made on pieces. A drag changes one of them: those before it stand on the very same pieces, and are not
 * made again.
 */
const makeOne = remember(["pieces", "alteration", "bustPoint"], ({ pieces, alteration, bustPoint }: Step) =>
  applyAlteration(pieces, alteration, { bustPoint }),
);

/** Makes the alterations one after the other; of one-sided ones those of one half alone. */
function makeAlterations(
  work: Work,
  { built, cutLines, sizing }: Picked,
  half: Half | null,
  leftOut: ReadonlyMap<string, AlterationFailure> = NONE,
): AlterationsMade {
  const alterations: PlannedAlteration[] = [];
  if (built.bust !== null) alterations.push(bustPlanned(work, built, sizing.bust.alteration));
  let pieces = built.blended;
  const truing = new Map<string, { inner: Mm; outer: Mm }>();
  const girths: Partial<Record<"bust" | "waist" | "hip", Mm>> = {};
  const bustPoint = built.bustPoint.own ?? built.bustPoint.printed;
  const isOnHalf = (alteration: Alteration): boolean =>
    half === null || alteration.kind !== "fit" || alteration.half === undefined || alteration.half === half;
  let isTouched = false;
  for (const alteration of work.alterations.filter(isOnHalf)) {
    const refused = leftOut.get(alteration.id);
    const done = refused === undefined ? makeOne({ pieces, alteration, bustPoint }) : fail(refused);
    const dart = dartOfAlteration(alteration);
    alterations.push({
      id: alteration.id,
      source: "wearer",
      phase: phaseOf(alteration),
      piece: done.ok ? done.value.trace.piece : (dart?.piece ?? firstPiece(alteration, pieces)),
      what: { kind: "alteration", alteration },
      outcome: done.ok ? ok(done.value.trace) : done,
    });
    if (!done.ok) continue;
    isTouched ||= !isRedraw(alteration) && done.value.pieces !== pieces;
    pieces = done.value.pieces;
    for (const level of ["bust", "waist", "hip"] as const) {
      const change = done.value.girths[level];
      if (change !== undefined) girths[level] = (girths[level] ?? 0) + change;
    }
    if (dart === null) continue;
    const before = truing.get(keyOf(dart)) ?? { inner: 0, outer: 0 };
    truing.set(keyOf(dart), {
      inner: before.inner + done.value.truing.inner,
      outer: before.outer + done.value.truing.outer,
    });
  }
  // A redrawn dart is trued, and given back, as it is made; the rest is trued when all of it is done.
  const { pieces: trued, changes } = isTouched ? trueAll(pieces) : trueAll(pieces, SEWN_ONLY);
  // A basque by a redrawn dart is out by tenths of a millimetre, of which nobody needs to know.
  const noted = isTouched ? changes : changes.filter(({ amount }) => amount >= READS_AS_NOTHING);
  return {
    pieces: trued,
    truing,
    changes: noted,
    girths,
    alterations: [...alterations, ...cutLines.map((line) => blendPlanned(line, built))],
  };
}

/** The piece a fit alteration that was left out would have been made on. */
function firstPiece(alteration: Alteration, pieces: PieceSet): PieceName {
  const madeOn = alteration.kind === "fit" ? fitOf(alteration.fit).madeOn : [];
  return (
    PIECE_ORDER.find((name) => madeOn.includes(name) && pieces[name] !== undefined) ??
    invariant(piecesOf(pieces)[0], "piece").name
  );
}

function blendPlanned(cutLine: CutLine, built: Built): PlannedAlteration {
  const to = lineAt(built.cut, cutLine);
  return {
    id: `blend-${cutLine.piece}-${cutLine.level}`,
    source: "blend",
    phase: "widthsTraced",
    piece: cutLine.piece,
    what: { kind: "blend", level: cutLine.level === "hip" ? "hip" : "waist", cutLine },
    outcome: ok({
      ...untouched(cutLine.piece, built.blended, built.blended),
      moved: [{ piece: cutLine.piece, from: to, to: cutLine.at }],
    }),
  };
}

function bustPlanned({ pattern }: Work, { bust, cut, blended, bustPoint }: Built, amount: Mm): PlannedAlteration {
  const outcome = invariant(bust, "bust alteration");
  const { bustPiece } = styleOf(pattern.style);
  const base = { id: "bust", source: "bust", phase: "bust", piece: bustPiece } as const;
  if (!outcome.ok) {
    const failure: AlterationFailure = { code: "alteration/bust-reduction-too-large", most: 2 * outcome.failure.most };
    return {
      ...base,
      what: { kind: "bust", amount, spread: amount / 2, drop: 0, turn: radians(0) },
      outcome: fail(failure),
    };
  }
  const { turn, drop, smoothed, traces } = outcome.value;
  const from = pointOf(pieceIn(cut, bustPiece), "bustPoint");
  return {
    ...base,
    what: { kind: "bust", amount, spread: amount / 2, drop, turn },
    outcome: ok({
      ...untouched(bustPiece, cut, blended),
      surgery: traces,
      moved: [{ piece: bustPiece, from, to: bustPoint.printed }],
      notes: [
        ...(drop === 0 ? [] : [{ code: "centreLengthened" as const, amount: drop }]),
        ...(smoothed === 0 ? [] : [{ code: "armholeSmoothed" as const, turned: smoothed }]),
      ],
    }),
  };
}
