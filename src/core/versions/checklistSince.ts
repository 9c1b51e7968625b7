/**
 * From the paper she has to that of another version: on each piece only what is other, told from how the piece lies now. What
 * does not change stays; what cannot be told from the old piece is made anew from the tissue.
 */
import { applyAlteration } from "../alterations/applyAlteration";
import type { AlterationTrace } from "../alterations/outcome/trace";
import { isRedraw, type Alteration, type Half } from "../decisions/alteration";
import { distance, type PiecePoint } from "../geometry/point";
import { isBend, type DartName, type Piece, type PieceName, type PointName } from "../pattern/piece";
import { isSamePiece, PIECE_ORDER, setOf } from "../pattern/pieceSet";
import type { ChecklistItem, ChecklistStep, CutLine, Plan, PlanHalf } from "../plan/plan";
import { dartPlaces, drawnLengths, movedOnTissue, printedOf, stayedOnTissue } from "../plan/tissuePlaces";
import { isSame } from "../same";
import { HAND_AGREEMENT, READS_AS_NOTHING } from "../tolerance";
import type { Mm } from "../units";
import { rowsOnHalf, type AlterationRow } from "./alterationRows";

/** What is said of a piece before it is drawn: which decisions are other. */
export type ChangedStep =
  /** The paper of the piece as it was sewn is taken up; `isTwice`: it was one for both halves, and is no longer. */
  | { readonly kind: "takeUp"; readonly isTwice: boolean }
  /** `trace`: how what is other is made on the piece as it lies, where that can be done in moves. */
  | { readonly kind: "altered"; readonly row: AlterationRow; readonly trace: AlterationTrace | null }
  | { readonly kind: "bustAltered"; readonly before: Mm; readonly after: Mm }
  | { readonly kind: "lineMoved"; readonly before: CutLine | null; readonly after: CutLine };

export interface SinceItem {
  readonly piece: PieceName;
  /** Steps of the order of work are told from the old piece, not from the tissue. */
  readonly step: ChangedStep | ChecklistStep;
  readonly amount: Mm;
  readonly half?: Half;
}

/** Why a piece is made anew: it was not there; the size or pattern traced is another; it has other darts or seams. */
export type AnewWhy = "notThere" | "otherSize" | "otherDarts";

/** A piece, or one half of it where the halves differ in either version. */
export interface PieceSince {
  readonly piece: PieceName;
  readonly half: Half | null;
}

export interface Since {
  /** Work on the paper she has, piece by piece. */
  readonly changed: readonly (PieceSince & { readonly items: readonly SinceItem[] })[];
  /** Pieces made from the tissue, by the order of work of the new plan. */
  readonly anew: readonly (PieceSince & { readonly why: AnewWhy; readonly items: readonly ChecklistItem[] })[];
  /** Pieces that stay as they are. */
  readonly stays: readonly PieceSince[];
  /** Pieces that are no longer needed. */
  readonly gone: readonly PieceSince[];
  /** Seams of which a side changed, to be walked when all is done. */
  readonly walks: readonly ChecklistItem[];
}

export function checklistSince(from: Plan, to: Plan): Since {
  const told = PIECE_ORDER.flatMap((name): readonly Told[] => {
    const on = (half: Half, isBoth: boolean): readonly Told[] => {
      const one = toldOf(name, { from: from[half], to: to[half], half: isBoth ? null : half, whole: { from, to } });
      return one === null ? [] : [one];
    };
    // Alterations of one half alone are told of a piece that they leave alike on both.
    return isAlike(from, name) && isAlike(to, name) ? on("left", true) : [...on("left", false), ...on("right", false)];
  });
  const changedNames = new Set(told.flatMap((one) => (one.kind === "stays" ? [] : [one.piece])));
  return {
    changed: told.filter((one) => one.kind === "changed"),
    anew: told.filter((one) => one.kind === "anew"),
    stays: told.filter((one) => one.kind === "stays"),
    gone: told.filter((one) => one.kind === "gone"),
    walks: to.checklist.filter(
      ({ step }) => step.kind === "walk" && [...step.first, ...step.second].some((piece) => changedNames.has(piece)),
    ),
  };
}

type Told = PieceSince &
  (
    | { readonly kind: "changed"; readonly items: readonly SinceItem[] }
    | { readonly kind: "anew"; readonly why: AnewWhy; readonly items: readonly ChecklistItem[] }
    | { readonly kind: "stays" | "gone" }
  );

interface Halves {
  readonly from: PlanHalf;
  readonly to: PlanHalf;
  readonly half: Half | null;
  readonly whole: { readonly from: Plan; readonly to: Plan };
}

const pieceOf = ({ pieces }: PlanHalf, name: PieceName): Piece | undefined =>
  pieces.find((piece) => piece.name === name);

/** Whether a piece is the same on both halves. */
const isAlike = ({ left, right }: Plan, name: PieceName): boolean =>
  left === right || isSamePiece(pieceOf(left, name), pieceOf(right, name));

function toldOf(name: PieceName, halves: Halves): Told | null {
  const { from, to, half, whole } = halves;
  const [old, made] = [pieceOf(from, name), pieceOf(to, name)];
  const of = { piece: name, half };
  if (made === undefined) return old === undefined ? null : { ...of, kind: "gone" };
  const why = whyAnew(name, halves);
  if (why !== null || old === undefined) {
    const isHeld = old !== undefined && !isAnyMoved(old, made);
    if (isHeld && why === "otherSize") return { ...of, kind: "stays" };
    const items = whole.to.checklist.filter(
      (item) =>
        item.piece === name &&
        item.step.kind !== "walk" &&
        (half === null || item.half === undefined || item.half === half),
    );
    return { ...of, kind: "anew", why: why ?? "notThere", items };
  }
  const items = workOn(old, made, halves);
  if (items.length === 0) return { ...of, kind: "stays" };
  const isTwice = half !== null && isAlike(whole.from, name);
  const all: readonly Pick<SinceItem, "step" | "amount">[] = [
    { step: { kind: "takeUp", isTwice }, amount: 0 },
    ...reasonsOn(name, halves),
    ...items,
  ];
  return {
    ...of,
    kind: "changed",
    items: all.map((item) => ({ ...item, piece: name, ...(half === null ? {} : { half }) })),
  };
}

function whyAnew(name: PieceName, { from, to }: Halves): AnewWhy | null {
  const [old, made] = [pieceOf(from, name), pieceOf(to, name)];
  if (old === undefined || made === undefined) return "notThere";
  if (!isSamePiece(printedOf(from.printed, name), printedOf(to.printed, name))) return "otherSize";
  return isSame(cornersOf(old), cornersOf(made)) ? null : "otherDarts";
}

/** Corners that can be seen, in their order, and darts: what both pieces must have for one to be told from the other. */
const cornersOf = ({ edges, darts }: Piece): unknown => [
  edges.flatMap(({ from, seam }) => (isMadeOnTheWay(from) ? [] : [[from, seam]])),
  darts.map(({ name, gathered = false }) => [name, gathered]),
];

/** A point that only shapes a line, or that an alteration cut or turned at: nobody sees it on the paper. */
const isMadeOnTheWay = (name: PointName): boolean => isBend(name) || name.startsWith("cut") || name === "armholeHinge";

const isAnyMoved = (old: Piece, made: Piece): boolean =>
  !isSame(cornersOf(old), cornersOf(made)) ||
  movedOnTissue(old, made, []).length > 0 ||
  drawnLengths(old, made).length > 0 ||
  made.darts.some(({ name }) => isDartMoved(old, made, name));

function isDartMoved(old: Piece, made: Piece, name: DartName): boolean {
  const [was, is] = [old, made].map(({ darts }) => darts.find((dart) => dart.name === name));
  const ends = [`${name}Inner`, `${name}Outer`, `${name}Apex`] as const;
  const isBowed = Math.abs((was?.bow ?? 0) - (is?.bow ?? 0)) > READS_AS_NOTHING;
  return isBowed || ends.some((end) => isApart(old.points[end]?.at, made.points[end]?.at, HAND_AGREEMENT / 2));
}

const isApart = (a: PiecePoint | undefined, b: PiecePoint | undefined, by: Mm): boolean =>
  a === undefined || b === undefined ? a !== b : distance(a, b) > by;

type Work = Pick<SinceItem, "step" | "amount">;

/** What is drawn and put on a piece, told from the old one; nothing where nothing is to be marked. */
function workOn(old: Piece, made: Piece, { to }: Halves): readonly Work[] {
  const darts = to.darts.filter(
    ({ ref }) =>
      ref.piece === made.name &&
      made.darts.find(({ name }) => name === ref.dart)?.gathered !== true &&
      isDartMoved(old, made, ref.dart),
  );
  const drawn = darts.map(({ ref }) => ref.dart);
  const places = movedOnTissue(old, made, drawn);
  const lengths = drawnLengths(old, made);
  if (darts.length + places.length + lengths.length === 0) return [];
  const ofDarts = darts.flatMap(({ ref, drawn: figures, bySight }): readonly Work[] => {
    const bowed = to.alterations.filter(
      ({ what, outcome }) =>
        outcome.ok &&
        what.kind === "alteration" &&
        what.alteration.kind === "dartLegs" &&
        what.alteration.dart.piece === ref.piece &&
        what.alteration.dart.dart === ref.dart,
    );
    return [
      {
        step: {
          kind: "dart",
          dart: ref,
          figures,
          places: dartPlaces(old, made, ref.dart),
          isByOwnPoint: to.bustPoint.own !== null,
          isBySight: bySight !== null,
          isMovedAlready: false,
          late: false,
        },
        amount: figures.intake,
      },
      ...bowed.map((planned): Work => ({ step: { kind: "alteration", planned }, amount: 0 })),
    ];
  });
  const put: readonly Work[] =
    places.length + lengths.length === 0
      ? []
      : [{ step: { kind: "places", places, lengths, stayed: stayedOnTissue(old, made) }, amount: 0 }];
  const trued = to.truing
    .filter(({ piece, what }) => piece === made.name && (what === "seamSmoothed" || what === "cornerSquared"))
    .map((change): Work => ({ step: { kind: "trued", change }, amount: 0 }));
  const isSideMoved = places.some(({ point }) => point === "sideWaist" || point === "underarm" || point === "sideBust");
  const crossed = to.darts.filter(
    ({ ref }) => ref.piece === made.name && (drawn.includes(ref.dart) || (isSideMoved && ref.dart === "sideDart")),
  );
  return [
    ...ofDarts,
    ...put,
    ...trued,
    ...crossed.map(({ ref, truing }): Work => {
      const amount = Math.max(Math.abs(truing.inner), Math.abs(truing.outer));
      return { step: { kind: "trueDart", dart: ref, amount }, amount };
    }),
  ];
}

/** The wearer's alterations that are made on a half. */
const madeOn = ({ alterations }: PlanHalf): readonly Alteration[] =>
  alterations.flatMap(({ what, outcome }) => (what.kind === "alteration" && outcome.ok ? [what.alteration] : []));

/** What was decided otherwise and shows on a piece. */
function reasonsOn(name: PieceName, { from, to, half }: Halves): readonly Work[] {
  const rows = rowsOnHalf(madeOn(from), madeOn(to), half).filter(({ isChanged }) => isChanged);
  const altered = rows.flatMap((row): readonly Work[] => {
    const trace = traceOf(row, from, name);
    const isHere = trace !== null || isTouched(row, from, to, name);
    return isHere ? [{ step: { kind: "altered", row, trace }, amount: row.by ?? 0 }] : [];
  });
  const [before, after] = [from.sizing.bust.alteration, to.sizing.bust.alteration];
  const isBust =
    Math.abs(after - before) > READS_AS_NOTHING &&
    [from, to].some(({ alterations }) =>
      alterations.some(({ what, outcome }) => what.kind === "bust" && outcome.ok && outcome.value.after[name]),
    );
  const lines = to.cutLines.flatMap((line): readonly Work[] => {
    const was = from.cutLines.find(({ piece, level }) => piece === line.piece && level === line.level) ?? null;
    const isMoved = was === null || Math.abs(was.at.x - line.at.x) > READS_AS_NOTHING;
    return line.piece === name && line.level !== "bust" && isMoved
      ? [{ step: { kind: "lineMoved", before: was, after: line }, amount: line.at.x - (was?.at.x ?? 0) }]
      : [];
  });
  return [
    ...(isBust ? [{ step: { kind: "bustAltered" as const, before, after }, amount: (after - before) / 2 }] : []),
    ...lines,
    ...altered,
  ];
}

/** A fit of another amount, made on the pieces as they lie by what it is more or less; null where that is no such work. */
function traceOf({ before, after, by, half }: AlterationRow, from: PlanHalf, name: PieceName): AlterationTrace | null {
  const known = after ?? before;
  if (known === null || known.kind !== "fit" || by === null) return null;
  const { half: _half, ...whole } = known;
  const difference: Alteration = { ...whole, amount: by, ...(half === null ? {} : { half }) };
  const done = applyAlteration(setOf(from.pieces), difference, {
    bustPoint: from.bustPoint.own ?? from.bustPoint.printed,
  });
  return done.ok && done.value.trace.after[name] !== undefined ? done.value.trace : null;
}

/** Whether an alteration shows on a piece in either version. */
function isTouched({ before, after }: AlterationRow, from: PlanHalf, to: PlanHalf, name: PieceName): boolean {
  const ids = [before?.id, after?.id];
  return [from, to].some(({ alterations }) =>
    alterations.some(({ id, what, outcome }) => {
      if (!ids.includes(id) || !outcome.ok || what.kind !== "alteration") return false;
      return isRedraw(what.alteration) ? what.alteration.dart.piece === name : outcome.value.after[name] !== undefined;
    }),
  );
}
