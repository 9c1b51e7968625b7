/** Pieces traced from outlines by hand, and what is read off them. */
import type { StyleName } from "../../../src/core/decisions/pattern";
import type { OwnPieceSaid } from "../../../src/core/decisions/ownPattern";
import type { OpenLine, OutlineGroup } from "../../../src/core/outlines/outlineReading";
import { tracePiece, type TracedPiece } from "../../../src/core/ownPieces/tracePiece";
import { pointOn } from "../../../src/core/ownPieces/tracedRing";
import type { PieceName, PointName } from "../../../src/core/pattern/piece";
import { groupedOutlines, type At } from "../../support/outlineGroups";

type Sizes = Parameters<typeof groupedOutlines>[0];
interface Given {
  readonly said?: Partial<OwnPieceSaid>;
  readonly style?: StyleName;
  readonly group?: Partial<OutlineGroup>;
  readonly loose?: readonly OpenLine[];
  readonly scale?: number;
}

const LABELS = ["8", "10", "12", "14"];
export const inputOf = (
  name: PieceName,
  sizes: Sizes,
  { said, style = "sideDart", group, loose = [], scale = 1 }: Given = {},
) => ({
  ...groupedOutlines(sizes, group),
  loose,
  said: said === undefined ? undefined : { id: "group", name, ...said },
  name,
  style,
  labels: LABELS,
  scale,
});
/** Traced as it lies, by what is said besides. */
export const lying = (name: PieceName, sizes: Sizes, { said, ...given }: Given = {}) =>
  traced(name, sizes, { ...given, said: { turns: 0, turnedOver: false, ...said } });
export const traced = (name: PieceName, sizes: Sizes, given: Given = {}) => tracePiece(inputOf(name, sizes, given));

export const rounded = (value: number): number => Math.round(value * 1e4) / 1e4 + 0;
export const xy = ({ x, y }: { readonly x: number; readonly y: number }): At => [rounded(x), rounded(y)];

/** Corners of each size: where they lie in the piece frame, and by what they are there. */
export const corners = ({ sizes }: TracedPiece, size = 0) =>
  Object.fromEntries(
    (sizes[size]?.corners ?? []).map(({ name, s, by }) => {
      const ring = sizes[size]?.ring;
      return [name, [...(ring === undefined ? [] : xy(pointOn(ring, s))), by]];
    }),
  );
export const ringOf = ({ sizes }: TracedPiece, size = 0) => sizes[size]?.ring.edges.map(({ a }) => xy(a)) ?? [];
export const darts = ({ sizes }: TracedPiece, size = 0) =>
  (sizes[size]?.darts ?? []).map(({ name, seam, first, second, apex, by, innerFirst }) => {
    const ring = sizes[size]?.ring;
    const on = (s: number) => (ring === undefined ? [] : xy(pointOn(ring, s)));
    return { name, seam, first: on(first), second: on(second), apex: xy(apex), by, innerFirst };
  });

export const moved = (places: readonly At[], dx: number, dy: number): At[] => places.map(([x, y]) => [x + dx, y + dy]);
export const turnedBy = (places: readonly At[], by: number): At[] =>
  places.map(([x, y]) => [x * Math.cos(by) - y * Math.sin(by), x * Math.sin(by) + y * Math.cos(by)]);

/** 190 wide at the waist and 400 high, like the usual shape of a front. */
export const FRONT: readonly At[] = [
  [0, 72],
  [60, 0],
  [150, 40],
  [194, 188],
  [190, 400],
  [0, 400],
];
export const NAMES = ["centreNeck", "sideNeck", "shoulderTip", "underarm", "sideWaist", "centreWaist"] as const;
export const named = (names: readonly PointName[], places: readonly At[], by = "form") =>
  Object.fromEntries(names.map((name, index) => [name, [...(places[index] ?? []).map(rounded), by]]));
/** Its waist lies 420 down. */
export const STANDING = moved(FRONT, 0, 20);
