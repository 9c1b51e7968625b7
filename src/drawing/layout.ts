/** Where each piece lies on the table: front and back of the bodice side by side, bands and basques under them. */
import { isTurnedOver } from "../core/cutting/turnedOver";
import { otherHalf, type Half } from "../core/decisions/alteration";
import { outlineBounds } from "../core/geometry/outline";
import type { Piece, PieceName } from "../core/pattern/piece";
import { OTHER_PIECES } from "../core/pattern/pieceSet";
import { outlineOf } from "../core/pattern/ring";
import type { Mm } from "../core/units";

export interface Box {
  readonly x: Mm;
  readonly y: Mm;
  readonly width: Mm;
  readonly height: Mm;
}

export interface Place {
  readonly piece: PieceName;
  /** From piece frame to table, mm. */
  readonly dx: Mm;
  readonly dy: Mm;
  /** Everything of the piece in all sizes, on the table. */
  readonly box: Box;
  /** Of which half of the body, where both lie there. */
  readonly half?: Half;
  /** Turned over: x runs to the left from `dx`. */
  readonly mirrored?: true;
}

/** A point of a piece, on the table. */
export const onTable = ({ dx, dy, mirrored }: Place, { x, y }: { readonly x: Mm; readonly y: Mm }) => ({
  x: dx + (mirrored === true ? -x : x),
  y: dy + y,
});

/** The same for all of a piece's drawing. */
export const placeTransform = ({ dx, dy, mirrored }: Place): string =>
  mirrored === true ? `matrix(-1 0 0 1 ${dx} ${dy})` : `translate(${dx} ${dy})`;

/** Unlike that of any other place. */
export const placeKey = ({ piece, half }: Place): string => (half === undefined ? piece : `${piece}-${half}`);

/** Room between pieces: for labels at the sides and the amounts between waist and waist; less where they belong together. */
const BESIDE: Mm = 140;
const TOGETHER: Mm = 45;
const BETWEEN: Mm = 55;

/** Front and back of the body, each from above: what lies side by side, and what hangs under it. */
const GROUPS: readonly {
  readonly uppers: readonly PieceName[];
  readonly below: readonly (readonly [PieceName, Row])[];
}[] = [
  {
    uppers: ["front", "centreFront", "sideFront", "cup"],
    below: [
      ["frontBand", "band"],
      ["frontBasque", "basque"],
    ],
  },
  {
    uppers: ["back"],
    below: [
      ["backBand", "band"],
      ["backBasque", "basque"],
    ],
  },
  { uppers: ["strap"], below: [] },
];

type Row = "upper" | "band" | "basque";

/**
 * Places for the pieces so that no size of one meets any size of another.
 *
 * @param sizes all the pieces to be shown, of every size, and the wearer's own
 */
export function placePieces(sizes: readonly (readonly Piece[])[]): readonly Place[] {
  const boxes = new Map<PieceName, Box>();
  for (const piece of sizes.flat()) boxes.set(piece.name, around(boxes.get(piece.name), boundsOf(piece)));
  const found = <T>(names: readonly T[], nameOf: (of: T) => PieceName) =>
    names.flatMap((of) => {
      const name = nameOf(of);
      const box = boxes.get(name);
      return box === undefined ? [] : [{ of, name, box }];
    });
  const uppers = found(
    GROUPS.flatMap((group) => group.uppers),
    (name) => name,
  ).filter(({ name }) => name !== "strap");
  const top = uppers.length === 0 ? 0 : Math.min(...uppers.map(({ box }) => box.y));
  const bottom = Math.max(top, ...uppers.map(({ box }) => box.y + box.height));
  const bands = found(
    GROUPS.flatMap(({ below }) => below.filter(([, row]) => row === "band")),
    ([name]) => name,
  );
  const bandHeight = Math.max(0, ...bands.map(({ box }) => box.height));
  const rowTop: Readonly<Record<Exclude<Row, "upper">, Mm>> = {
    band: bottom - top + BETWEEN,
    basque: bottom - top + BETWEEN + (bandHeight > 0 ? bandHeight + BETWEEN : 0),
  };
  const places: Place[] = [];
  let x = 0;
  for (const group of GROUPS) {
    const above = found(group.uppers, (name) => name);
    const below = found(group.below, ([name]) => name);
    const first = above[0];
    if (first === undefined) continue;
    const left = Math.min(first.box.x, ...below.map(({ box }) => box.x));
    let end = x;
    let at = x - left;
    for (const { name, box } of above) {
      // All upper pieces share one height for the nape, so that their waists lie level; a strap lies at the top.
      const dx = name === first.name ? at : at - box.x;
      places.push(placed(name, box, dx, name === "strap" ? -box.y : -top));
      end = Math.max(end, dx + box.x + box.width);
      at = end + TOGETHER;
    }
    for (const { of, name, box } of below) {
      places.push(placed(name, box, x - left, rowTop[of[1] === "band" ? "band" : "basque"] - box.y));
      end = Math.max(end, x - left + box.x + box.width);
    }
    x = end + BESIDE;
  }
  return [
    ...places,
    ...placeOthers(
      places,
      found(OTHER_PIECES, (name) => name),
    ),
  ];
}

/** Room between the centre lines of the two halves of a piece. */
const HALVES_APART: Mm = 30;
/** Between what is written at the right of one piece and at the left of the next. */
const WORDS_BOTH: Mm = 190;

const groupOf = (name: PieceName): number =>
  GROUPS.findIndex(({ uppers, below }) => uppers.includes(name) || below.some(([other]) => other === name));

/**
 * Both halves of the body side by side, centre line to centre line, each as the sewn garment is looked at: from the front her right
 * half is at the left, from behind her left one. The half that a piece as drawn is not is turned over.
 *
 * @param places of one half
 */
export function placeHalves(places: readonly Place[]): readonly Place[] {
  const columns = new Map<string, Place[]>();
  for (const place of places) {
    const group = groupOf(place.piece);
    const key = group < 0 ? place.piece : String(group);
    columns.set(key, [...(columns.get(key) ?? []), place]);
  }
  const rows: { x: Mm } = { x: 0 };
  const others: { x: Mm } = { x: 0 };
  return [...columns.values()].flatMap((column) => {
    const row = column.some(({ piece }) => groupOf(piece) >= 0) ? rows : others;
    const left = Math.min(...column.map(({ box }) => box.x));
    const width = Math.max(...column.map(({ box }) => box.x + box.width)) - left;
    const axis = row.x + width + HALVES_APART / 2;
    row.x = axis + HALVES_APART / 2 + width + WORDS_BOTH;
    const [near, far] = [axis + HALVES_APART / 2, axis - HALVES_APART / 2];
    return column.flatMap((place): Place[] => {
      const { piece, dx, dy, box } = place;
      const over: Half = isTurnedOver(piece, "left") ? "left" : "right";
      return [
        {
          piece,
          dx: far + left - dx,
          dy,
          box: { ...box, x: far - (box.x - left) - box.width },
          half: over,
          mirrored: true,
        },
        { piece, dx: near - left + dx, dy, box: { ...box, x: near - left + box.x }, half: otherHalf(over) },
      ];
    });
  });
}

/** Pieces without a name of ours lie beneath all the others, side by side. */
function placeOthers(
  places: readonly Place[],
  others: readonly { readonly name: PieceName; readonly box: Box }[],
): readonly Place[] {
  const y = Math.max(-BETWEEN, ...places.map(({ box }) => box.y + box.height)) + BETWEEN;
  let x = 0;
  return others.map(({ name, box }) => {
    const place = placed(name, box, x - box.x, y - box.y);
    x += box.width + BESIDE;
    return place;
  });
}

const placed = (piece: PieceName, box: Box, dx: Mm, dy: Mm): Place => ({
  piece,
  dx,
  dy,
  box: { ...box, x: box.x + dx, y: box.y + dy },
});

/** The box round all places, with a margin. */
export function boxOf(places: readonly Place[], margin: Mm): Box {
  const all = places.reduce<Box | undefined>((box, place) => around(box, place.box), undefined);
  const { x, y, width, height } = all ?? { x: 0, y: 0, width: 100, height: 100 };
  return { x: x - margin, y: y - margin, width: width + 2 * margin, height: height + 2 * margin };
}

export function boundsOf(piece: Piece): Box {
  const { min, max } = outlineBounds(outlineOf(piece));
  return { x: min.x, y: min.y, width: max.x - min.x, height: max.y - min.y };
}

export function around(a: Box | undefined, b: Box): Box {
  if (a === undefined) return b;
  const x = Math.min(a.x, b.x);
  const y = Math.min(a.y, b.y);
  return {
    x,
    y,
    width: Math.max(a.x + a.width, b.x + b.width) - x,
    height: Math.max(a.y + a.height, b.y + b.height) - y,
  };
}
