/** Every alteration of every kind before and after: some of it, and the most that goes. */
import type { Alteration, AlterationKind, DartSurgery, FitAlteration } from "../../../src/core/decisions/alteration";
import { FIT_NAMES, type FitName } from "../../../src/core/decisions/fitNames";
import { STYLE_NAMES, type StyleName } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { fitOf } from "../../../src/core/alterations/fit/index";
import { giveBackPlaces } from "../../../src/core/alterations/redraw/giveBack";
import { hasHome } from "../../../src/core/alterations/dartSurgery/places";
import { DART_HOMES, dartName, homeOf } from "../../../src/core/pattern/dartNames";
import type { DartHome, DartName, DartRef, Piece } from "../../../src/core/pattern/piece";
import { pieceIn, piecesOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { alterationTitle } from "../../../src/words/planned";
import { capital, styleWords } from "../../../src/words/terms/names";
import { workOf } from "./bodies";
import { altered, goes, piecesOfWork } from "./planned";
import type { Scene } from "./scene";

/** One way to alter, by any amount of it. */
interface Way {
  /** After the name of its kind. */
  readonly key: string;
  readonly at: (amount: number) => Alteration;
  /** A small amount, and the furthest that is tried in the same direction; one alone where it has no amount. */
  readonly some: number;
  readonly most?: number;
  /** Only of its largest is it worth while to keep the outline apart. */
  readonly isKept: boolean;
}

const ID = "shown";
/** mm; as far as anything is tried that has no range of its own. */
const FAR = 200;
const HALVINGS = 12;

/** Of an amount that goes and one that does not, the last that still goes, to a tenth. */
function mostOf(work: Work, { at, some, most = some }: Way): number | null {
  if (most === some || !goes(work, at(some)).ok) return null;
  const end = goes(work, at(most));
  if (end.ok) return most;
  let [near, far] = [some, most];
  const said = end.most === null ? null : inTenths(end.most);
  const isBetween = said !== null && Math.abs(said) >= Math.abs(some) && Math.abs(said) < Math.abs(most);
  if (isBetween && Math.sign(said) === Math.sign(some) && goes(work, at(said)).ok) return said;
  for (let round = 0; round < HALVINGS && Math.abs(far - near) > 0.1; round += 1) {
    const middle = (near + far) / 2;
    if (goes(work, at(middle)).ok) near = middle;
    else far = middle;
  }
  const found = inTenths(near);
  return found === some ? null : found;
}

/** Towards nothing, to a tenth of a millimetre; to a hundredth where the whole is 1. */
const inTenths = (amount: number): number =>
  Math.abs(amount) <= 1 ? Math.trunc(amount * 100) / 100 : Math.trunc(amount * 10) / 10;

function scenesOf(work: Work, kind: string, own: Way): readonly Scene[] {
  const { style } = work.pattern;
  const titled = (alteration: Alteration): string =>
    `${capital(alterationTitle(alteration, "cm"))} (${kindOf(alteration)}, ${styleWords(style)})`;
  const some: Scene = {
    key: `${kind}/${style}/${own.key}/some`,
    title: titled(own.at(own.some)),
    isKept: own.isKept,
    make: () => altered(work, own.at(own.some)),
  };
  if (own.most === undefined) return [some];
  let most: number | null | undefined;
  const found = (): number | null => (most === undefined ? (most = mostOf(work, own)) : most);
  return [
    some,
    {
      key: `${kind}/${style}/${own.key}/most`,
      get title() {
        return titled(own.at(found() ?? own.some));
      },
      isKept: false,
      isMore: () => found() !== null,
      make: () => altered(work, own.at(found() ?? own.some)),
    },
  ];
}

const kindOf = (alteration: Alteration): string => (alteration.kind === "fit" ? alteration.fit : alteration.kind);

// Fit alterations.

const SOME_OF_FIT = 8;

function fitWays(fit: FitName, isKept: boolean): readonly Way[] {
  const { range } = fitOf(fit);
  const at = (amount: number): FitAlteration => ({ kind: "fit", id: ID, fit, amount });
  return [
    ...(range.most > 0
      ? [{ key: `${fit}/more`, at, some: Math.min(SOME_OF_FIT, range.most / 2), most: range.most, isKept }]
      : []),
    ...(range.least < 0
      ? [{ key: `${fit}/less`, at, some: Math.max(-SOME_OF_FIT, range.least / 2), most: range.least, isKept }]
      : []),
  ];
}

/** By its name, its seams and its darts. */
const kindOfPiece = (piece: Piece | undefined): string =>
  piece === undefined
    ? ""
    : [piece.name, ...new Set(piece.edges.map(({ seam }) => seam)), ...piece.darts.map(({ name }) => name)].join(" ");

/** Each on every style that has what it is made on; kept on the first of those where it is made on pieces of a kind. */
export function fitScenes(): readonly Scene[] {
  return FIT_NAMES.flatMap((fit) => {
    const { applies, madeOn } = fitOf(fit);
    const seen = new Set<string>();
    const shown = STYLE_NAMES.flatMap((style) => {
      const work = workOf(style);
      const pieces = piecesOfWork(work);
      if (!applies(pieces)) return [];
      const on = madeOn.map((name) => kindOfPiece(pieces[name])).join(" ");
      const isKept = !seen.has(on);
      seen.add(on);
      return fitWays(fit, isKept).flatMap((one) => scenesOf(work, "fit", one));
    });
    // Made on nothing that there is: shown once, with its refusal.
    return shown.length > 0 ? shown : fitWays(fit, true).flatMap((one) => scenesOf(workOf("sideDart"), "fit", one));
  });
}

// Darts.

interface OfDart {
  readonly dart: DartRef;
  readonly pieces: PieceSet;
  readonly piece: Piece;
}

type DartKind = Exclude<AlterationKind, "fit">;

/** A line for each kind: one that is added without is refused by the compiler. */
const DART_WAYS: { readonly [K in DartKind]: (of: OfDart) => readonly Way[] } = {
  dartEnd: ({ dart }) =>
    (["mouth", "fullness"] as const).flatMap((hold) => {
      const common = { kind: "dartEnd", id: ID, dart, hold, giveBack: {} } as const;
      return [
        way(`shorter, ${hold} held`, 12, FAR, (shorten) => ({ ...common, shorten, across: 0 }), hold === "fullness"),
        way(`longer, ${hold} held`, -12, -FAR, (shorten) => ({ ...common, shorten, across: 0 }), hold === "mouth"),
        way(`to the one side, ${hold} held`, 6, FAR, (across) => ({ ...common, shorten: 0, across }), hold === "mouth"),
        way(
          `to the other side, ${hold} held`,
          -6,
          -FAR,
          (across) => ({ ...common, shorten: 0, across }),
          hold === "fullness",
        ),
      ];
    }),
  dartMouth: ({ dart, pieces }) => {
    const common = { kind: "dartMouth", id: ID, dart, giveBack: {} } as const;
    return [
      way("wider", 3, FAR, (by) => ({ ...common, inner: by, outer: by })),
      way("narrower", -3, -FAR, (by) => ({ ...common, inner: by, outer: by })),
      way("wider at the inner end", 4, FAR, (inner) => ({ ...common, inner, outer: 0 })),
      way("narrower at the outer end", -4, -FAR, (outer) => ({ ...common, inner: 0, outer })),
      ...giveBackPlaces(pieces, dart).map((place) =>
        way(`given back at ${place}`, 4, undefined, (by) => ({
          ...common,
          inner: by,
          outer: by,
          giveBack: { [place]: 1 },
        })),
      ),
    ];
  },
  dartPlace: ({ dart }) => {
    const common = { kind: "dartPlace", id: ID, dart, giveBack: {} } as const;
    return [
      way("to the one side", 6, FAR, (by) => ({ ...common, by, how: "redraw" })),
      way("to the other side", -6, -FAR, (by) => ({ ...common, by, how: "redraw" })),
      way("off the centre seam", 5, FAR, (by) => ({ ...common, by, how: "offCentreSeam" })),
    ];
  },
  dartPivot: ({ dart, piece }) =>
    DART_HOMES.filter((to) => hasHome(piece, to) && to !== homeOf(dart.dart)).flatMap((to) => [
      way(`to the ${to}`, 1, undefined, (share) => ({ kind: "dartPivot", id: ID, dart, to, share })),
      way(`in part to the ${to}`, 0.4, undefined, (share) => ({ kind: "dartPivot", id: ID, dart, to, share })),
    ]),
  dartSplit: ({ dart }) =>
    ([2, 3] as const).map((into) =>
      way(`into ${into}`, into, undefined, () => ({ kind: "dartSplit", id: ID, dart, into })),
    ),
  dartGather: ({ dart }) => [way("all", 1, undefined, () => ({ kind: "dartGather", id: ID, dart }))],
  dartLegs: ({ dart }) => [
    way("in", 2, FAR, (bow) => ({ kind: "dartLegs", id: ID, dart, bow })),
    way("out", -2, -FAR, (bow) => ({ kind: "dartLegs", id: ID, dart, bow })),
  ],
  dartSeam: ({ dart }) => [way("all", 1, undefined, () => ({ kind: "dartSeam", id: ID, dart }))],
};

function way(key: string, some: number, most: number | undefined, at: Way["at"], isKept = true): Way {
  return { key, at, some, isKept, ...(most === undefined ? {} : { most }) };
}

/** The record has these keys alone, which `Object.keys` cannot know. */
export const DART_KINDS = Object.keys(DART_WAYS) as readonly DartKind[];

const waysOf = (kind: DartKind, of: OfDart): readonly Way[] => DART_WAYS[kind](of);

const dartsIn = (pieces: PieceSet): readonly DartRef[] =>
  piecesOf(pieces).flatMap((piece) => piece.darts.map(({ name }): DartRef => ({ piece: piece.name, dart: name })));

/** Every kind on every dart of a work, but on those that were shown already. */
function onDarts(work: Work, kinds: readonly DartKind[], isShown: (dart: DartRef) => boolean, after = ""): Scene[] {
  const pieces = piecesOfWork(work);
  return dartsIn(pieces)
    .filter((dart) => !isShown(dart))
    .flatMap((dart) =>
      kinds.flatMap((kind) =>
        waysOf(kind, { dart, pieces, piece: pieceIn(pieces, dart.piece) }).flatMap((one) =>
          scenesOf(work, kind, {
            ...one,
            key: `${dart.piece} ${dart.dart}${after}/${one.key}`,
            isKept: one.isKept && (after === "" || KEPT_AFTER.has(kind)),
          }),
        ),
      ),
    );
}

export function dartScenes(): readonly Scene[] {
  const seen = new Set<string>();
  const keyOf = ({ piece, dart }: DartRef): string => `${piece} ${dart}`;
  const asDrafted = STYLE_NAMES.flatMap((style) => {
    const work = workOf(style);
    const scenes = onDarts(work, DART_KINDS, (dart) => seen.has(keyOf(dart)));
    for (const dart of dartsIn(piecesOfWork(work))) seen.add(keyOf(dart));
    return scenes;
  });
  return [...asDrafted, ...STYLE_NAMES.flatMap((style) => afterPivot(style, seen))];
}

/** Kinds made on darts that another alteration opened: the seam from an upper dart, redraws on every other seam. */
const AFTER_PIVOT: readonly DartKind[] = DART_KINDS.filter((kind) => kind !== "dartPivot" && kind !== "dartGather");

/** Of those, what goes by the seam and not by the dart alone: enough to be kept there too. */
const KEPT_AFTER: ReadonlySet<DartKind> = new Set<DartKind>(["dartMouth", "dartSplit", "dartSeam"]);

/** Every dart that can be opened somewhere else, altered there. */
function afterPivot(style: StyleName, seen: Set<string>): readonly Scene[] {
  const work = workOf(style);
  // From the side before from the waist: an upper dart is joined to the waist dart that is left.
  const pieces = piecesOfWork(work);
  return dartsIn(pieces)
    .toReversed()
    .flatMap((dart) =>
      DART_HOMES.filter((to) => hasHome(pieceIn(pieces, dart.piece), to)).flatMap((to) => {
        const opened: DartRef = { piece: dart.piece, dart: dartName(to) };
        const key = `${opened.piece} ${opened.dart}`;
        if (seen.has(key)) return [];
        const first = pivot(dart, to);
        if (!goes(work, first).ok) return [];
        seen.add(key);
        const ready = { ...work, alterations: [first] };
        return onDarts(ready, AFTER_PIVOT, (one) => !isSameName(one, opened), ` from the ${dart.dart}`);
      }),
    );
}

const isSameName = (a: DartRef, b: { readonly piece: string; readonly dart: DartName }): boolean =>
  a.piece === b.piece && a.dart === b.dart;

const pivot = (dart: DartRef, to: DartHome): DartSurgery => ({ kind: "dartPivot", id: "first", dart, to, share: 1 });
