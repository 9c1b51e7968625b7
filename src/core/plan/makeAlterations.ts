/** The wearer's alterations applied one after the other to the built pieces, and the ledger that tells of them. */
import { dartOfAlteration, HALVES, isMadeOn, isRedraw, type Alteration, type Half } from "../decisions/alteration";
import type { TruingChange } from "../truing/changes";
import type { AlterationFailure } from "../alterations/outcome/alterationFailure";
import { applyAlteration } from "../alterations/applyAlteration";
import { untouched, type Applied } from "../alterations/outcome/applied";
import { phaseOf } from "../decisions/tradeOrder";
import { fitOf } from "../alterations/fit/index";
import { PIECE_ORDER, pieceIn, piecesOf, withPiece, type PieceSet } from "../pattern/pieceSet";
import { pointOf, type DartRef, type Piece, type PieceName } from "../pattern/piece";
import { fail, invariant, ok, type Result } from "../result";
import { styleOf } from "../style/index";
import { SEWN_ONLY, trueAll } from "../truing/trueAll";
import type { TruingLeft } from "../truing/truingLeft";
import { HALVES_AGREE, HALVES_TRUED, READS_AS_NOTHING, SEWN_AGREEMENT, UNTRUED_SOUGHT } from "../tolerance";
import type { BustPick } from "../sizing/sizing";
import { radians, type Mm } from "../units";
import type { PiecePoint } from "../geometry/point";
import { centreOff, centreSeams, type CentreSeam } from "../girth/centreSeams";
import { halve } from "../geometry/iterate";
import { remember } from "../remember";
import type { Built } from "./buildPieces";
import type { Picked, PickedHalf } from "./pickSizes";
import { lineAt } from "./cutLines";
import { levelHalves, type Levelled } from "./levelHalves";
import type { CutLine, PlannedAlteration } from "./plan";
import type { Decided } from "../decisions/decided";

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

/** Whether an alteration is made on one half alone. */
const isOneSided = ({ half }: Alteration): boolean => half !== undefined;

interface Halves {
  readonly left: AlterationsMade;
  readonly right: AlterationsMade;
}

/**
 * The wearer's alterations on both halves of the body; the same object twice where the halves are alike. What is for both
 * and cannot be made on one of them is left out on both, so that the ledger tells one thing of it.
 *
 * Pieces that cannot be trued when all is done are no answer either: the alteration that they cannot be trued after is then
 * left out. Nor are halves that cannot be sewn to each other, or that are not of the same pieces.
 */
export function makeOnHalves(work: Decided, picked: Picked): Halves {
  const leftOut = new Map<string, AlterationFailure>();
  const made = makeHalves(work.alterations, work, picked, leftOut);
  const left = untruedOf(made);
  const isTrueable = (): boolean => HALVES.every((half) => trueAll(picked.halves[half].built.blended).left === null);
  // Blended pieces that cannot be trued themselves are told by the checks: no alteration is at fault.
  const trued = left === null || !isTrueable() ? made : withoutUntrued(work, picked, left, leftOut);
  return withoutApart(work, picked, trued, leftOut).halves;
}

/** How often alterations that set the halves apart are sought; then all of one half that change the piece are left out. */
const APART_ROUNDS = 3;

/**
 * The alterations made again without those of one half that it cannot be sewn to the other after: the last made that set them
 * apart, as many as do.
 */
function withoutApart(work: Decided, picked: Picked, first: Made, leftOut: Map<string, AlterationFailure>): Made {
  let made = first;
  for (let round = 1; round <= APART_ROUNDS; round += 1) {
    const before = leftOut.size;
    for (const { id, piece } of withOtherPieces(made)) leftOut.set(id, { code: "alteration/other-pieces", piece });
    for (const seam of leftOut.size > before ? [] : apartIn(made))
      for (const { id, gained } of settingApart(made, seam, round === APART_ROUNDS))
        leftOut.set(id, {
          code: "alteration/halves-apart",
          piece: seam.left.name,
          seam: "centre",
          off: Math.abs(gained),
        });
    if (leftOut.size === before) return made;
    made = makeHalves(work.alterations, work, picked, leftOut);
  }
  return made;
}

/** Alterations of one half alone that give it a piece which the other does not come to have. */
function withOtherPieces({ halves }: Made): readonly { readonly id: string; readonly piece: PieceName }[] {
  const { left, right } = halves;
  if (left === right) return [];
  return HALVES.flatMap((half) => {
    const other = halves[half === "left" ? "right" : "left"].pieces;
    return halves[half].alterations.flatMap(({ id, what, outcome }) => {
      if (what.kind !== "alteration" || what.alteration.half !== half || !outcome.ok) return [];
      const { before, after } = outcome.value;
      const piece = PIECE_ORDER.find(
        (name) => after[name] !== undefined && before[name] === undefined && other[name] === undefined,
      );
      return piece === undefined ? [] : [{ id, piece }];
    });
  });
}

/** The centre seams that cannot be sewn together. */
const apartIn = ({ halves: { left, right } }: Made): readonly CentreSeam[] =>
  left === right ? [] : centreSeams(left.pieces, right.pieces).filter(({ off }) => Math.abs(off) > HALVES_AGREE);

interface SetApart {
  readonly id: string;
  /** How much longer it makes the seam on the left against the right. */
  readonly gained: Mm;
}

/**
 * The last alterations of one half alone without which a centre seam would agree.
 *
 * @param all every one that changes the piece
 */
function settingApart({ halves }: Made, { of, off, ...pieces }: CentreSeam, all: boolean): readonly SetApart[] {
  const made = HALVES.flatMap((half) =>
    halves[half].alterations.flatMap(({ id, what, outcome }): readonly SetApart[] => {
      if (what.kind !== "alteration" || what.alteration.half !== half || !outcome.ok) return [];
      const { before, after } = outcome.value;
      const { name } = pieces[half];
      if (before[name] === after[name]) return [];
      const gained = centreOff(after, before, of);
      return [{ id, gained: half === "left" ? gained : -gained }];
    }),
  );
  if (all) return made.map(({ id }) => ({ id, gained: off }));
  const found: SetApart[] = [];
  let left = off;
  for (const one of made.toReversed()) {
    if (Math.abs(left) <= SEWN_AGREEMENT) break;
    if (Math.abs(one.gained) <= SEWN_AGREEMENT || one.gained > 0 !== left > 0) continue;
    found.push(one);
    left -= one.gained;
  }
  const last = made.at(-1);
  return found.length > 0 || last === undefined ? found : [{ ...last, gained: off }];
}

/** The alterations made again without those after which the pieces cannot be trued. */
function withoutUntrued(
  work: Decided,
  picked: Picked,
  first: TruingLeft,
  leftOut: Map<string, AlterationFailure>,
): Made {
  const { alterations } = work;
  const upTo = (count: number): Made => makeHalves(alterations.slice(0, count), work, picked, leftOut);
  let left: TruingLeft | null = first;
  for (let sought = 0; left !== null && sought < UNTRUED_SOUGHT; sought += 1) {
    // Without any they can be trued, with all they cannot: halving finds one that makes the difference.
    const { failing } = halve(0, alterations.length, 1, (count) => untruedOf(upTo(Math.floor(count))) === null);
    const at = Math.floor(failing) - 1;
    const why = untruedOf(upTo(at + 1)) ?? left;
    const isLast = sought === UNTRUED_SOUGHT - 1;
    for (const { id } of isLast ? alterations.slice(at) : alterations.slice(at, at + 1))
      leftOut.set(id, { code: "alteration/not-trued", ...why });
    left = untruedOf(upTo(alterations.length));
  }
  return upTo(alterations.length);
}

/** What could not be trued on either half. */
const untruedOf = ({ chains }: Made): TruingLeft | null => chains.find(({ left }) => left !== null)?.left ?? null;

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

/** The pieces of a half, or of both where they are alike, as far as they are made. */
interface Chain {
  readonly half: Half | null;
  readonly own: PickedHalf;
  readonly bustPoint: PiecePoint;
  readonly alterations: PlannedAlteration[];
  readonly truing: Map<string, { inner: Mm; outer: Mm }>;
  readonly girths: Partial<Record<"bust" | "waist" | "hip", Mm>>;
  pieces: PieceSet;
  isTouched: boolean;
}

interface Made {
  readonly halves: Halves;
  readonly chains: readonly { readonly left: TruingLeft | null }[];
}

/** Makes alterations one after the other, on both halves side by side where any is for one of them alone. */
function makeHalves(
  alterations: readonly Alteration[],
  work: Decided,
  picked: Picked,
  leftOut: ReadonlyMap<string, AlterationFailure>,
): Made {
  const isApart = work.alterations.some(isOneSided) || picked.halves.left !== picked.halves.right;
  const chains = (isApart ? HALVES : [null]).map((half): Chain => {
    const own = picked.halves[half ?? "left"];
    const { built, sizing } = own;
    return {
      half,
      own,
      bustPoint: built.bustPoint.own ?? built.bustPoint.printed,
      alterations: built.bust === null ? [] : [bustPlanned(work, built, sizing.bust)],
      truing: new Map(),
      girths: {},
      pieces: built.blended,
      isTouched: own.levelled !== null,
    };
  });
  for (const alteration of alterations) {
    const refused = leftOut.get(alteration.id);
    const own = chains.filter(({ half }) => half === null || isMadeOn(alteration, half));
    const done = own.map(({ pieces, bustPoint }) =>
      refused === undefined ? makeOne({ pieces, alteration, bustPoint }) : fail(refused),
    );
    const failed = done.find((result) => !result.ok);
    for (const [index, chain] of own.entries()) add(chain, alteration, failed ?? invariant(done[index], "half"));
  }
  const [first, second] = chains.map(finish);
  const finished = second === undefined ? [invariant(first, "half")] : trueHalves(invariant(first, "half"), second);
  const [left, right = left] = finished.map(({ made }) => made);
  return {
    halves: { left: invariant(left, "half"), right: invariant(right, "half") },
    chains: finished,
  };
}

/** One alteration, made or left out, added to what a half has become. */
function add(chain: Chain, alteration: Alteration, done: Result<Applied, AlterationFailure>): void {
  const { pieces, truing, girths } = chain;
  const dart = dartOfAlteration(alteration);
  chain.alterations.push({
    id: alteration.id,
    source: "wearer",
    phase: phaseOf(alteration),
    piece: done.ok ? done.value.trace.piece : (dart?.piece ?? firstPiece(alteration, pieces)),
    what: { kind: "alteration", alteration },
    outcome: done.ok ? ok(done.value.trace) : done,
  });
  if (!done.ok) return;
  chain.isTouched ||= !isRedraw(alteration) && done.value.pieces !== pieces;
  chain.pieces = done.value.pieces;
  for (const level of ["bust", "waist", "hip"] as const) {
    const change = done.value.girths[level];
    if (change !== undefined) girths[level] = (girths[level] ?? 0) + change;
  }
  if (dart === null) return;
  const before = truing.get(keyOf(dart)) ?? { inner: 0, outer: 0 };
  truing.set(keyOf(dart), {
    inner: before.inner + done.value.truing.inner,
    outer: before.outer + done.value.truing.outer,
  });
}

interface Finished {
  readonly made: AlterationsMade;
  readonly left: TruingLeft | null;
}

/**
 * Centres of two halves that were set apart by the way, brought to one length again: a seam that is drawn anew on one half moves
 * its ends a little. What is an alteration of length is left, and refused.
 */
function trueHalves(left: Finished, right: Finished): readonly [Finished, Finished] {
  return (["front", "back"] as const).reduce<readonly [Finished, Finished]>(
    ([a, b], of) => {
      const off = centreOff(a.made.pieces, b.made.pieces, of);
      if (Math.abs(off) <= HALVES_AGREE || Math.abs(off) > HALVES_TRUED) return [a, b];
      const asked = centreGained(a, of) - centreGained(b, of);
      if (Math.abs(asked) > HALVES_AGREE) return [a, b];
      const levelled = levelHalves(a.made.pieces, b.made.pieces, of);
      return [withLevel(a, levelled.left, of), withLevel(b, levelled.right, of)];
    },
    offFold(left, right),
  );
}

/** A centre that has become a seam on one half is one on the other, too: they are sewn to each other. */
function offFold(left: Finished, right: Finished): readonly [Finished, Finished] {
  const seams = centreSeams(left.made.pieces, right.made.pieces).filter(
    (seam) => seam.left.centreOnFold !== seam.right.centreOnFold,
  );
  const withSeams = ({ made, ...finished }: Finished, ofHalf: readonly Piece[]): Finished => ({
    ...finished,
    made: {
      ...made,
      pieces: ofHalf.reduce((set, piece) => withPiece(set, { ...piece, centreOnFold: false }), made.pieces),
    },
  });
  if (seams.length === 0) return [left, right];
  return [
    withSeams(
      left,
      seams.map((seam) => seam.left),
    ),
    withSeams(
      right,
      seams.map((seam) => seam.right),
    ),
  ];
}

const centreGained = ({ made: { alterations } }: Finished, of: PieceName): Mm =>
  alterations.reduce(
    (sum, { phase, outcome }) =>
      phase === "length" && outcome.ok ? sum + centreOff(outcome.value.after, outcome.value.before, of) : sum,
    0,
  );

function withLevel({ made, left }: Finished, { pieces, level }: Levelled, of: "front" | "back"): Finished {
  if (level === null) return { made, left };
  const piece = pieces.centreFront !== undefined && of === "front" ? "centreFront" : of;
  const change: TruingChange = {
    piece,
    seam: "centre",
    what: "seamWalked",
    point: "centreWaist",
    amount: level.amount,
  };
  return { made: { ...made, pieces, changes: [...made.changes, change] }, left };
}

/** A drag on one half leaves the pieces of the other as they were trued. */
const truedAtEnd = remember(
  ["pieces", "isTouched"],
  ({ pieces, isTouched }: { readonly pieces: PieceSet; readonly isTouched: boolean }) =>
    // A redrawn dart is trued, and given back, as it is made; the rest is trued when all of it is done.
    isTouched ? trueAll(pieces) : trueAll(pieces, SEWN_ONLY),
);

function finish({ own: { built, cutLines }, pieces, truing, girths, alterations, isTouched }: Chain): Finished {
  const trued = truedAtEnd({ pieces, isTouched });
  return {
    left: isTouched ? trued.left : null,
    made: {
      pieces: trued.pieces,
      truing,
      // A basque by a redrawn dart is out by tenths of a millimetre, of which nobody needs to know.
      changes: isTouched ? trued.changes : trued.changes.filter(({ amount }) => amount >= READS_AS_NOTHING),
      girths,
      alterations: [...alterations, ...cutLines.map((line) => blendPlanned(line, built))],
    },
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

function bustPlanned(
  { pattern }: Decided,
  { bust, cut, blended, bustPoint }: Built,
  { asked, alteration }: BustPick,
): PlannedAlteration {
  const outcome = invariant(bust, "bust alteration");
  const { bustPiece } = styleOf(pattern.style);
  const base = { id: "bust", source: "bust", phase: "bust", piece: bustPiece } as const;
  if (!outcome.ok) {
    const failure: AlterationFailure = { code: "alteration/bust-too-much", asked, most: 2 * outcome.failure.most };
    return {
      ...base,
      what: { kind: "bust", amount: asked, asked, spread: asked / 2, drop: 0, turn: radians(0) },
      outcome: fail(failure),
    };
  }
  const { turn, drop, smoothed, traces } = outcome.value;
  const from = pointOf(pieceIn(cut, bustPiece), "bustPoint");
  return {
    ...base,
    what: { kind: "bust", amount: alteration, asked, spread: alteration / 2, drop, turn },
    outcome: ok({
      ...untouched(bustPiece, cut, blended),
      surgery: traces,
      moved: [{ piece: bustPiece, from, to: bustPoint.printed }],
      notes: [
        ...(alteration === asked ? [] : [{ code: "bustShort" as const, asked, made: alteration }]),
        ...(drop === 0
          ? []
          : [{ code: bustPiece === "cup" ? ("cupLengthened" as const) : ("centreLengthened" as const), amount: drop }]),
        ...(smoothed === 0 ? [] : [{ code: "armholeSmoothed" as const, turned: smoothed }]),
      ],
    }),
  };
}
