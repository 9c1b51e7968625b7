/**
 * Parts of the dress at true scale, drawn as the pieces of its bodice are: panels of a skirt, linings, facings. Rectangles and
 * sectors of circles are given by their measures and are none of them.
 */
import type { Allowances } from "../decisions/allowances";
import { HALVES, type Half } from "../decisions/alteration";
import type { ClothName } from "../decisions/dress";
import type { Closure } from "../decisions/pattern";
import { drawnPieces } from "../parts/halfParts";
import type { Part, PartGroup, PiecePart } from "../parts/part";
import { isSamePiece, setOf, type PieceSet } from "../pattern/pieceSet";
import type { Piece, PieceName } from "../pattern/piece";
import { isBelowWaist } from "../pattern/pieceGroups";
import type { Plan } from "../plan/plan";
import { fail, ok, type Result } from "../result";
import type { Mm } from "../units";
import { belowIn, buttonPlaces, buttonRow, buttonsOnMeasured, type ButtonRow } from "./buttons";
import { notchesOfHalves, type NotchPlace, type Numbers, type OfHalves } from "./notches";
import type { TruePiece } from "./truePiece";
import {
  areSamePlaces,
  isRefused,
  truePiece,
  turnedOver,
  type OutlineRefused,
  type Skirted,
  type TrueOptions,
} from "./truePieces";
import { FACES_BODY, isPartTurnedOver } from "./turnedOver";
import type { WalkedPlace } from "./walk";

/** What is printed of a dress besides the pieces of its bodice, in the order in which it is offered. */
export const PRINTED_GROUPS = ["skirt", "bodiceLining", "skirtLining", "facing", "strap", "underlining"] as const;
export type PrintedGroup = (typeof PRINTED_GROUPS)[number];

/** A part to print: both of its halves where they differ. */
export interface PrintedPart {
  /** The key of the part, without its half. */
  readonly id: string;
  readonly group: PrintedGroup;
  readonly name: PieceName;
  readonly cloth: ClothName;
  readonly halves: readonly PiecePart[];
}

export interface PartsAsked {
  /** All parts of the dress, those of the bodice too. */
  readonly parts: readonly Part[];
  /** Those wanted, by their ids. */
  readonly ids: readonly string[];
  /** Pieces of the bodice that are printed beside them; absent: all. */
  readonly pieces?: readonly PieceName[];
  /** null: cut along the stitch line. */
  readonly allowances: Allowances | null;
  readonly closure: Closure;
  /** How far below the waist a lining is left free of the zip; null: it has no opening of its own. */
  readonly liningOpen: Mm | null;
}

const isPrintedGroup = (group: PartGroup): group is PrintedGroup => PRINTED_GROUPS.some((one) => one === group);

const idOf = ({ key, half }: PiecePart): string =>
  half !== null && key.endsWith(`-${half}`) ? key.slice(0, -half.length - 1) : key;

/** A piece of the bodice itself; a strap that is drafted anew has a key of another kind. */
const isOfBodice = ({ group, key, half, piece }: PiecePart): boolean =>
  group === "bodice" || (group === "strap" && key === (half === null ? piece.name : `${piece.name}-${half}`));

/** Whether paper is printed, by its id: that of a part, or the name of a piece of the bodice. */
export type IsPrinted = (id: string) => boolean;
const ALL: IsPrinted = () => true;

/** Whether one is cut by the other's paper, wherever it lies: of a half that looks at the body that would be the other half. */
const isCutAlike = (one: PiecePart, other: PiecePart): boolean =>
  one.half === other.half &&
  (one.half === null || FACES_BODY.has(one.group) === FACES_BODY.has(other.group)) &&
  isSamePiece(one.piece, other.piece);

/**
 * Each part that is drawn, and those of the same outline that are cut by its paper, as an interfacing is. What is not printed
 * has no paper to cut another by; but what belongs to it, as an interfacing to its facing, stays with it.
 */
function drawnParts(
  parts: readonly Part[],
  isPrinted: IsPrinted,
): readonly { readonly part: PiecePart; readonly also: readonly PiecePart[] }[] {
  const drawn: { readonly part: PiecePart; readonly also: PiecePart[] }[] = [];
  for (const part of drawnPieces(parts)) {
    const like = drawn.find(
      ({ part: own }) => isCutAlike(own, part) && (own.group === part.group || isPrinted(idOf(own))),
    );
    if (like === undefined) drawn.push({ part, also: [] });
    else like.also.push(part);
  }
  return drawn;
}

/** Whether a key is that of a part, or of one of its halves that are alike and yet drawn apart, since what stands on them differs. */
export const isKeyOf = (key: string, { key: own, half }: PiecePart): boolean =>
  key === own || (half === null && HALVES.some((one) => key === `${own}-${one}`));

/** Other cloths that are cut by the paper of a part, the main one's pieces among them; none for a key that is not drawn. */
export const alsoCutBy = (parts: readonly Part[], key: string, isPrinted = ALL): readonly ClothName[] => [
  ...new Set(
    drawnParts(parts, isPrinted)
      .find(({ part }) => isKeyOf(key, part))
      ?.also.map(({ cloth }) => cloth),
  ),
];

/** The key of the part by whose paper another is cut where all are printed: its own key where that is its own. */
export const paperOf = (parts: readonly Part[], key: string): string =>
  drawnParts(parts, ALL).find(({ also }) => also.some((part) => isKeyOf(key, part)))?.part.key ?? key;

/**
 * The parts that are printed besides the bodice; one of the same outline as another is cut by the paper of that, where that
 * is printed. Those that are not printed are among them.
 */
export function printedParts(parts: readonly Part[], isPrinted = ALL): readonly PrintedPart[] {
  const found = new Map<string, { group: PrintedGroup; name: PieceName; cloth: ClothName; halves: PiecePart[] }>();
  for (const { part } of drawnParts(parts, isPrinted)) {
    if (isOfBodice(part) || !isPrintedGroup(part.group)) continue;
    const own = found.get(idOf(part));
    if (own === undefined)
      found.set(idOf(part), { group: part.group, name: part.piece.name, cloth: part.cloth, halves: [part] });
    else own.halves.push(part);
  }
  return [...found]
    .map(([id, own]): PrintedPart => ({ id, ...own }))
    .toSorted((a, b) => PRINTED_GROUPS.indexOf(a.group) - PRINTED_GROUPS.indexOf(b.group));
}

/** Pieces of the plan that the dress is cut without: a basque where a skirt hangs, a strap that is drafted anew. */
export function replacedPieces({ left }: Plan, parts: readonly Part[]): readonly PieceName[] {
  const cut = new Set(
    parts
      .flatMap((part) => (part.kind === "piece" ? [part] : []))
      .flatMap(({ group, piece }) => (group === "bodice" || group === "strap" ? piece.name : [])),
  );
  return left.pieces.map(({ name }) => name).filter((name) => !cut.has(name));
}

type Groups = readonly PartGroup[];

/** The pieces of some groups, the wearer's left half first; of two layers of one piece the first. */
function setsOf(parts: readonly Part[], groups: Groups): readonly [PieceSet, PieceSet] {
  const drawn = drawnPieces(parts);
  const of = (half: Half): PieceSet => {
    const set: Partial<Record<PieceName, Piece>> = {};
    for (const group of groups) {
      for (const part of drawn) {
        if (part.group !== group || (part.half !== null && part.half !== half)) continue;
        set[part.piece.name] ??= part.piece;
      }
    }
    return set;
  };
  const left = of("left");
  return drawn.some(({ group, half }) => half !== null && groups.includes(group)) ? [left, of("right")] : [left, left];
}

const isThere = (parts: readonly Part[], group: PartGroup): boolean =>
  parts.some((part) => part.kind === "piece" && part.group === group);

/** What hangs in the waist seam of the shell and is drafted: the skirt, else a lining of it that has no lined bodice to hang on. */
const hangingOn = (parts: readonly Part[]): Groups =>
  isThere(parts, "skirt") ? ["skirt"] : isThere(parts, "bodiceLining") ? [] : ["skirtLining"];

/** What is sewn to the pieces of the bodice: they are notched together. */
export const sewnOnBodice = (parts: readonly Part[]): readonly [PieceSet, PieceSet] =>
  setsOf(parts, [...hangingOn(parts), "facing"]);

/** Whether a skirt hangs on the bodice, drafted or not. */
export const isSkirted = (parts: readonly Part[]): boolean => parts.some(({ group }) => group === "skirt");

/** The skirt of a dress; null where none hangs on the bodice. */
const skirtOf = (parts: readonly Part[]): Skirted | null =>
  isSkirted(parts) ? { panels: setsOf(parts, ["skirt"]), below: belowIn(parts) } : null;

/** Buttons on a skirt that is given by its measures, where nothing marks them: how far below the waist seam each comes, mm. */
export function buttonsOnSkirt({ left }: Plan, parts: readonly Part[], closure: Closure): readonly Mm[] {
  const below = skirtOf(parts)?.below ?? "drafted";
  return below === "drafted"
    ? []
    : buttonsOnMeasured(setOf(left.pieces.filter(({ name }) => !isBelowWaist(name))), closure, below);
}

/** The row of buttons down a dress: over what it is cut from, on her left half; null without buttons. mm. */
export function buttonRowOn(plan: Plan, parts: readonly Part[], closure: Closure): ButtonRow | null {
  const replaced = replacedPieces(plan, parts);
  const skirt = skirtOf(parts);
  const kept = setOf(plan.left.pieces.filter(({ name }) => !replaced.includes(name)));
  return buttonRow({ ...kept, ...skirt?.panels[0] }, closure, skirt?.below);
}

/** What the pieces of the bodice are marked by besides themselves. */
export const markedWith = (
  plan: Plan,
  parts: readonly Part[],
): Required<Pick<TrueOptions, "sewnOn" | "replaced" | "skirt">> => ({
  sewnOn: sewnOnBodice(parts),
  replaced: replacedPieces(plan, parts),
  skirt: skirtOf(parts),
});

/** What each group is sewn together with. */
function sewnWith(parts: readonly Part[], group: PrintedGroup): Groups {
  switch (group) {
    case "skirt":
    case "facing":
    case "strap":
    case "underlining":
      return ["bodice", "strap", ...hangingOn(parts), "facing"];
    case "bodiceLining":
      return ["bodiceLining", "skirtLining"];
    case "skirtLining":
      return [isThere(parts, "bodiceLining") ? "bodiceLining" : "bodice", "skirtLining"];
  }
}

/** A part of both halves drawn once for each: what stands on it differs. */
const apart = (part: PiecePart): readonly PiecePart[] =>
  part.half === null
    ? HALVES.map((half) => ({
        ...part,
        key: `${part.key}-${half}`,
        half,
        cut: part.cut.onFold ? part.cut : { onFold: false, count: part.cut.count / 2 },
      }))
    : [part];

/** What is printed where some parts are wanted, and some pieces of the bodice beside them. */
export function isPrintedAmong(
  parts: readonly Part[],
  ids: readonly string[],
  pieces: readonly PieceName[] | undefined,
): IsPrinted {
  const bodice: ReadonlySet<string> = new Set(pieces ?? drawnPieces(parts).filter(isOfBodice).map(idOf));
  return (id) => bodice.has(id) || ids.includes(id);
}

/** The parts wanted, in the order in which they are offered; both halves of those that differ, the left one first. */
export function truePartsOf({
  parts,
  ids,
  pieces,
  allowances,
  closure,
  liningOpen,
}: PartsAsked): Result<readonly TruePiece[], OutlineRefused> {
  const notches = new Map<string, OfHalves<readonly NotchPlace[]>>();
  const closureOf = (group: PrintedGroup): Closure => {
    if (group !== "skirtLining" && group !== "bodiceLining") return closure;
    const { place } = closure;
    return { place, belowWaist: liningOpen ?? 0 };
  };
  const numbers: Numbers = new Map();
  const shell = notchesOfHalves(setsOf(parts, sewnWith(parts, "skirt")), closure, numbers);
  const notchesOf = (group: PrintedGroup): OfHalves<readonly NotchPlace[]> => {
    const groups = sewnWith(parts, group);
    const key = `${groups.join(" ")} ${group === "skirtLining"}`;
    // A lining of a skirt that hangs on the shell's bodice meets its notches as they are.
    const onShell = group === "skirtLining" && groups.includes("bodice") ? shell : undefined;
    const both = notches.get(key) ?? notchesOfHalves(setsOf(parts, groups), closureOf(group), numbers, onShell);
    notches.set(key, both);
    return both;
  };
  const [left, right] = setsOf(parts, ["bodice", "skirt"]);
  const buttonsOf = {
    left: buttonPlaces(left, closure),
    right: buttonPlaces(right, closure, left),
  };
  const isPrinted = isPrintedAmong(parts, ids, pieces);
  const wanted = printedParts(parts, isPrinted).filter(({ id }) => ids.includes(id));
  const made: TruePiece[] = [];
  for (const [index, { group, halves }] of wanted.entries()) {
    const own = notchesOf(group);
    const notchesOn = (name: PieceName, half: Half): readonly NotchPlace[] =>
      own[half === "left" ? 0 : 1].filter(({ piece }) => piece === name);
    const buttonsOn = (name: PieceName, half: Half): readonly WalkedPlace[] =>
      group === "skirt" ? buttonsOf[half].filter(({ piece }) => piece === name) : [];
    const isMarkedAlike = ({ piece: { name } }: PiecePart): boolean =>
      [notchesOn, buttonsOn].every((marksOn) => areSamePlaces(marksOn(name, "left"), marksOn(name, "right")));
    for (const part of halves.flatMap((one) => (isMarkedAlike(one) ? [one] : apart(one)))) {
      const { piece, half, key } = part;
      const refused = fail({ code: "paper/outline-refused" as const, piece: piece.name, half });
      if (isRefused(piece)) return refused;
      const bare = truePiece(piece, {
        key,
        size: null,
        allowances: allowances === null ? null : { ...allowances, ...part.allowances },
        closure: closureOf(group),
        label: undefined,
        half,
        number: [index + 1, wanted.length],
        notches: notchesOn(piece.name, half ?? "left"),
        buttons: buttonsOn(piece.name, half ?? "left"),
        lengthen: [],
        bustPoint: null,
        cut: part.cut,
      });
      const drawn: TruePiece = {
        ...bare,
        seams: bare.seams.map((run) => (run.opens !== null && FACES_BODY.has(group) ? { ...run, opens: "free" } : run)),
        part: { group, cloth: part.cloth },
        also: alsoCutBy(parts, key, isPrinted),
      };
      if (drawn.cutting.length < 3) return refused;
      made.push(isPartTurnedOver(group, piece.name, half) ? turnedOver(drawn) : drawn);
    }
  }
  return ok(made);
}
