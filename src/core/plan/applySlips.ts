/** The wearer's slips applied one after the other to the built pieces, and the ledger that tells of them. */
import { applyAlteration } from "../alterations/applyAlteration";
import { untouched } from "../alterations/applied";
import { phaseOf } from "../alterations/phase";
import { fitOf } from "../alterations/fit/index";
import { PIECE_ORDER, pieceIn, piecesOf, type PieceSet } from "../alterations/pieceSet";
import { pointOf, type DartRef, type PieceName } from "../pattern/piece";
import { fail, must, ok } from "../result";
import { styleOf } from "../style/index";
import { trueAll } from "../truing/trueAll";
import { radians, type Mm } from "../units";
import type { Built } from "./buildPieces";
import { lineAt } from "./cutLines";
import type { CutLine, Slip, SlipFailure, TruingChange } from "./plan";
import { dartOfAlteration, isRedraw, type Alteration, type Half, type Work } from "./work";

export interface SlipsApplied {
  readonly pieces: PieceSet;
  readonly slips: readonly Slip[];
  /** What truing legs moved, by dart. */
  readonly truing: ReadonlyMap<string, { readonly inner: Mm; readonly outer: Mm }>;
  /** What truing changed at the end. */
  readonly changes: readonly TruingChange[];
  /** What whole girths change by through slips, by design. */
  readonly girths: Readonly<Partial<Record<"bust" | "waist" | "hip", Mm>>>;
}

/** One key for a dart of a piece. */
export const keyOf = ({ piece, dart }: DartRef): string => `${piece}.${dart}`;

const NONE: ReadonlyMap<string, SlipFailure> = new Map();

/**
 * Both halves of a body whose halves differ. What is for both and cannot be made on one of them is left out on both, so
 * that the ledger tells one thing of it.
 */
export function applyToHalves(
  work: Work,
  built: Built,
  cutLines: readonly CutLine[],
  alteration: Mm,
): { readonly left: SlipsApplied; readonly right: SlipsApplied } {
  const leftOut = new Map<string, SlipFailure>();
  for (;;) {
    const left = applySlips(work, built, cutLines, alteration, "left", leftOut);
    const right = applySlips(work, built, cutLines, alteration, "right", leftOut);
    const before = leftOut.size;
    for (const slip of [...left.slips, ...right.slips]) {
      const isForBoth = left.slips.some(({ id }) => id === slip.id) && right.slips.some(({ id }) => id === slip.id);
      if (isForBoth && slip.source === "wearer" && !slip.outcome.ok) leftOut.set(slip.id, slip.outcome.failure);
    }
    if (leftOut.size === before) return { left, right };
  }
}

/** Applies the wearer's slips one after the other; of uneven ones those of one half alone. */
export function applySlips(
  work: Work,
  built: Built,
  cutLines: readonly CutLine[],
  alteration: Mm,
  half: Half | null,
  leftOut: ReadonlyMap<string, SlipFailure> = NONE,
): SlipsApplied {
  const slips: Slip[] = [];
  if (built.bust !== null) slips.push(bustSlip(work, built, alteration));
  let pieces = built.blended;
  const truing = new Map<string, { inner: Mm; outer: Mm }>();
  const girths: Partial<Record<"bust" | "waist" | "hip", Mm>> = {};
  const context = { bustPoint: built.bustPoint.own ?? built.bustPoint.printed };
  const wishes = work.alterations.filter(
    (wish) => half === null || wish.kind !== "fit" || wish.half === undefined || wish.half === half,
  );
  const chain = chainOf(built, half);
  let isTouched = false;
  for (const [index, wish] of wishes.entries()) {
    const refused = leftOut.get(wish.id);
    const make = (): Done => applyAlteration(pieces, wish, context);
    // With something left out, the chain is another one than that remembered.
    const done = refused !== undefined ? fail(refused) : leftOut.size > 0 ? make() : chain.step(index, wish, make);
    const dart = dartOfAlteration(wish);
    slips.push({
      id: wish.id,
      source: "wearer",
      phase: phaseOf(wish),
      piece: done.ok ? done.value.trace.piece : (dart?.piece ?? firstPiece(wish, pieces)),
      what: { kind: "alteration", alteration: wish },
      outcome: done.ok ? ok(done.value.trace) : done,
    });
    if (!done.ok) continue;
    isTouched ||= !isRedraw(wish) && done.value.pieces !== pieces;
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
  const { pieces: trued, changes } = isTouched ? trueAll(pieces) : { pieces, changes: [] };
  return {
    pieces: trued,
    truing,
    changes,
    girths,
    slips: [...slips, ...cutLines.map((line) => blendSlip(line, built))],
  };
}

/** The piece a fit alteration that was left out would have been made on. */
function firstPiece(wish: Alteration, pieces: PieceSet): PieceName {
  const madeOn = wish.kind === "fit" ? fitOf(wish.fit).madeOn : [];
  return (
    PIECE_ORDER.find((name) => madeOn.includes(name) && pieces[name] !== undefined) ??
    must(piecesOf(pieces)[0], "piece").name
  );
}

type Done = ReturnType<typeof applyAlteration>;

/** The last chain made on each set of built pieces: a drag changes one slip, and those before it need not be made again. */
const chains = new WeakMap<Built, Map<Half | null, { readonly wish: Alteration; readonly done: Done }[]>>();

function chainOf(built: Built, half: Half | null) {
  const byHalf = chains.get(built) ?? new Map<Half | null, { readonly wish: Alteration; readonly done: Done }[]>();
  chains.set(built, byHalf);
  const known = byHalf.get(half) ?? [];
  byHalf.set(half, known);
  let isSame = true;
  return {
    /** What is known of this step while every step up to it is the very same; else made, and known from now on. */
    step(index: number, wish: Alteration, make: () => Done): Done {
      const link = known[index];
      isSame = isSame && link?.wish === wish;
      if (isSame && link !== undefined) return link.done;
      const done = make();
      known.splice(index, known.length, { wish, done });
      return done;
    },
  };
}

function blendSlip(cutLine: CutLine, built: Built): Slip {
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

function bustSlip({ pattern }: Work, { bust, cut, blended, bustPoint }: Built, amount: Mm): Slip {
  const outcome = must(bust, "bust alteration");
  const { bustPiece } = styleOf(pattern.style);
  const base = { id: "bust", source: "bust", phase: "bust", piece: bustPiece } as const;
  if (!outcome.ok) {
    const failure: SlipFailure = { code: "slip/bust-reduction-too-large", most: 2 * outcome.failure.most };
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
