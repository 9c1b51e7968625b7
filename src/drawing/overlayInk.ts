/** One strip of the overlay as ink, in the piece frame: what changed, what it is laid on by, and how it must lie. */
import type { LayOnPoint, NeighbourLine, Patch, PatchLine, SlantBox } from "../core/overlay/overlay";
import { edgeFlatten, edgePointAt, lineEdge, type EdgeCurve } from "../core/geometry/edgeCurve";
import { distance, midpoint, piecePoint, rotateAbout, shift, type PiecePoint } from "../core/geometry/point";
import type { LengthUnit } from "../core/decisions/work";
import { invariant } from "../core/result";
import { WORDS_ACCURACY } from "../core/tolerance";
import { radians, type Mm, type Radians } from "../core/units";
import {
  amountWords,
  centreArrowWords,
  layOnLines,
  layOnWords,
  lineCalled,
  stripOf,
  stripTitle,
  upWords,
} from "../words/overlay";
import type { Ink, InkLine, InkRole, InkText } from "./ink";
import * as say from "../words/planLabels";

type PieceInk = Ink<"piece">;

/** The least type on a strip: it is read on a table. mm. */
const SMALL_TYPE: Mm = 2.8;
const TITLE_TYPE: Mm = 4;

/** Width of a letter as a share of the type's size: a little over the mean of plain type, so that words never need more. */
const LETTER = 0.54;
const wordsWidth = (text: string, size: Mm): Mm => text.length * size * LETTER;

const CROSS: Mm = 4;
const UPRIGHT = radians(0);

interface BaseSize {
  /** null: a piece as it was before. */
  readonly label: string | null;
  readonly size: number;
}

/**
 * The ink of a strip.
 *
 * @param baseSize the printed size it is laid on: its label and its place in the chart
 * @returns lines under, words over; all of it within the patch's ring
 */
export function overlayInk(patch: Patch, baseSize: BaseSize, unit: LengthUnit): readonly PieceInk[] {
  const lines: InkLine<"piece">[] = [
    inkLine("frame", ringEdges(patch.ring), true),
    ...patch.neighbours.map((line) => ({ ...inkLine("printed", line.edges), size: line.size })),
    ...patch.baseSize.map(({ kind, edges }) =>
      kind === "level" ? inkLine("level", edges) : { ...inkLine("layOn", edges), size: baseSize.size },
    ),
    ...patch.changed.map(({ edges }) => inkLine("changed", edges)),
    ...patch.layOn.flatMap(({ at }) => cross(at)),
    ...patch.ends.flatMap(dartEnd),
  ];
  const title = titleInk(patch, lineCalled(baseSize.label));
  return [...lines, ...title, ...labelInk(patch, baseSize, unit, lines)];
}

const inkLine = (role: InkRole, edges: readonly EdgeCurve<"piece">[], closed = false): InkLine<"piece"> => ({
  kind: "line",
  role,
  edges,
  closed,
});

const ringEdges = (ring: readonly PiecePoint[]): readonly EdgeCurve<"piece">[] =>
  ring.map((a, index) => lineEdge(a, invariant(ring[(index + 1) % ring.length], "corner")));

/** A cross in a small square on its corner, so that it is not taken for lines that merely cross. */
function cross(at: PiecePoint): readonly InkLine<"piece">[] {
  const arm = (dx: Mm, dy: Mm): PiecePoint => shift(at, dx, dy);
  const half = CROSS / 2;
  return [
    inkLine("mark", [lineEdge(arm(-CROSS, 0), arm(CROSS, 0))]),
    inkLine("mark", [lineEdge(arm(0, -CROSS), arm(0, CROSS))]),
    inkLine("mark", ringEdges([arm(0, -half), arm(half, 0), arm(0, half), arm(-half, 0)]), true),
  ];
}

/** The end of the wearer's own dart: a filled spot. */
function dartEnd(at: PiecePoint): readonly InkLine<"piece">[] {
  const r = 0.9;
  const spot = ringEdges([shift(at, 0, -r), shift(at, r, 0), shift(at, 0, r), shift(at, -r, 0)]);
  return [{ ...inkLine("changed", spot, true), filled: true }];
}

/** The words in the box that the strip keeps free, and its two arrows. */
function titleInk(patch: Patch, baseSize: string): readonly PieceInk[] {
  const { title } = patch;
  const what = stripOf(patch);
  const lines = [
    { text: stripTitle(patch), size: TITLE_TYPE, bold: true },
    ...what.map((text) => ({ text, size: fitting(text, 3.2, title.width), bold: false })),
    ...layOnLines(patch, baseSize).map((text, index) => ({
      text,
      size: index === 0 ? fitting(text, 3, title.width) : SMALL_TYPE,
      bold: false,
    })),
  ];
  let foot = -title.height / 2;
  const words = lines.map(({ text, size, bold }): InkText<"piece"> => {
    foot += size * 1.25;
    const at = inBox(title, -title.width / 2, foot);
    return {
      kind: "text",
      role: "title",
      at,
      anchor: "start",
      text,
      size,
      turn: title.turn,
      ...(bold ? { bold: true } : {}),
    };
  });
  // Arrows point as the piece lies, however the words are turned.
  const row = title.height / 2 - ARROW / 2 - 0.5;
  return [
    ...words,
    ...arrow(inBox(title, -title.width / 2 + ARROW / 2, row), 0, -1),
    arrowWords(title, -title.width / 2 + ARROW + 1.5, row, upWords(patch.piece)),
    ...arrow(inBox(title, ARROW * 1.5 + 0.5 - 8, row), -1, 0),
    arrowWords(title, ARROW * 2 + 2 - 8, row, centreArrowWords(patch.piece)),
  ];
}

const ARROW: Mm = 8;

const fitting = (text: string, size: Mm, width: Mm): Mm =>
  Math.max(SMALL_TYPE, Math.min(size, width / (text.length * LETTER)));

const arrowWords = (title: SlantBox, x: Mm, row: Mm, text: string): InkText<"piece"> => ({
  kind: "text",
  role: "title",
  at: inBox(title, x, row + 1),
  anchor: "start",
  text,
  size: SMALL_TYPE,
  turn: title.turn,
});

/** A place in a box, from its centre along its own sides. */
const inBox = ({ centre, turn }: SlantBox, x: Mm, y: Mm): PiecePoint => rotateAbout(shift(centre, x, y), centre, turn);

/** An arrow about its middle, towards (dx, dy), a direction of length 1. */
function arrow(middle: PiecePoint, dx: number, dy: number): readonly InkLine<"piece">[] {
  const along = (by: Mm, aside: Mm): PiecePoint => shift(middle, dx * by - dy * aside, dy * by + dx * aside);
  const tip = along(ARROW / 2, 0);
  return [
    inkLine("mark", [lineEdge(along(-ARROW / 2, 0), along(ARROW / 2 - 2.4, 0))]),
    { ...inkLine("mark", ringEdges([tip, along(ARROW / 2 - 3, 1.1), along(ARROW / 2 - 3, -1.1)]), true), filled: true },
  ];
}

/** What is written beside a point or a line. */
interface Wanted {
  readonly role: InkRole;
  readonly text: string;
  readonly at: PiecePoint;
  readonly bold: boolean;
}

/** Words beside points and lines, each where it covers least; joined to its point by a fine line where it stands off. */
function labelInk(
  patch: Patch,
  baseSize: BaseSize,
  unit: LengthUnit,
  lines: readonly InkLine<"piece">[],
): readonly PieceInk[] {
  const drawn = lines.filter(({ role }) => role !== "frame").flatMap(({ edges }) => edges.flatMap(sampled));
  const taken: Box[] = [boxOf(patch.title)];
  return wantedLabels(patch, baseSize, unit).flatMap((label): PieceInk[] => {
    const spots = spotsFor(label, patch.title.turn).filter(({ box }) =>
      cornersOf(box).every((p) => isInRing(patch.ring, p)),
    );
    const best = spots
      .map((spot) => ({
        spot,
        cost: spot.off * 0.6 + costOf(spot.box, drawn, taken) + leaderCost(leaderOf(spot, label.at), taken),
      }))
      .toSorted((a, b) => a.cost - b.cost)[0];
    if (best === undefined) return [];
    const { box, at, turn } = best.spot;
    const leader = leaderOf(best.spot, label.at);
    taken.push(box);
    const words: InkText<"piece"> = {
      kind: "text",
      role: label.role,
      at,
      anchor: "start",
      text: label.text,
      size: SMALL_TYPE,
      turn,
      ...(label.bold ? { bold: true } : {}),
    };
    if (leader === null) return [words];
    drawn.push(...sampled(leader));
    return [words, inkLine("note", [leader])];
  });
}

/** From words that stand off to what they name; null where they stand beside it. */
function leaderOf({ box, off }: Spot, to: PiecePoint): EdgeCurve<"piece"> | null {
  if (off < LEADER_FROM) return null;
  const near = [...cornersOf(box), ...sidesOf(box)].toSorted((p, q) => distance(p, to) - distance(q, to))[0];
  return lineEdge(invariant(near, "corner"), to);
}

/** A leader through other words strikes them out. */
function leaderCost(leader: EdgeCurve<"piece"> | null, taken: readonly Box[]): number {
  if (leader === null) return 0;
  const along = sampled(leader);
  return OVER_WORDS * taken.filter((box) => along.some((p) => isInBox(box, p))).length;
}

function isInBox(box: Box, p: PiecePoint): boolean {
  // No corner lies further from the middle than half of both sides together; nearly all that is drawn does.
  const reach = (box.width + box.height) / 2 + 2 * CLEAR;
  if (Math.abs(p.x - box.centre.x) > reach || Math.abs(p.y - box.centre.y) > reach) return false;
  const { x, y } = within(box, p);
  return Math.abs(x) < box.width / 2 + CLEAR && Math.abs(y) < box.height / 2 + CLEAR;
}

/** Words further than this from their point are joined to it, mm. */
const LEADER_FROM: Mm = 6;

function wantedLabels(patch: Patch, baseSize: BaseSize, unit: LengthUnit): readonly Wanted[] {
  const names = patch.layOn.map(({ name, at }: LayOnPoint): Wanted => ({
    role: "layOn",
    text: layOnWords(name, patch.tissue),
    at,
    bold: false,
  }));
  const amounts = patch.amounts.map((amount): Wanted => ({
    role: "changed",
    text: amountWords(amount, unit),
    at: amount.at,
    bold: true,
  }));
  const others = [...new Set(patch.neighbours.map(({ label }) => label))].flatMap((label) =>
    sizeLabel(
      label,
      patch.neighbours.filter((line: NeighbourLine) => line.label === label),
    ),
  );
  return [
    ...names,
    ...amounts,
    ...sizeLabel(
      say.layOn(lineCalled(baseSize.label)),
      patch.baseSize.filter(({ kind }) => kind === "seam"),
    ),
    ...others,
  ];
}

function sizeLabel(label: string, chains: readonly PatchLine[]): readonly Wanted[] {
  const at = onLongest(chains);
  return at === null ? [] : [{ role: "printed", text: label, at, bold: false }];
}

/** A place on the longest edge, a little off its middle, where many lines are furthest apart. */
function onLongest(chains: readonly PatchLine[]): PiecePoint | null {
  const edge = chains.flatMap(({ edges }) => edges).toSorted((a, b) => distance(b.a, b.b) - distance(a.a, a.b))[0];
  return edge === undefined ? null : edgePointAt(edge, 0.4);
}

interface Box {
  readonly centre: PiecePoint;
  readonly width: Mm;
  readonly height: Mm;
  readonly turn: Radians;
}

interface Spot {
  readonly box: Box;
  /** Start of the words, on their foot. */
  readonly at: PiecePoint;
  readonly turn: Radians;
  /** From the words to what they name. */
  readonly off: Mm;
}

const OFFS: readonly Mm[] = [1.5, 3, 5, 8, 12, 17, 23, 30];

/** Places round a point, level and along the strip, near ones first. */
function spotsFor({ text, at }: Wanted, slant: Radians): readonly Spot[] {
  const [width, height] = [wordsWidth(text, SMALL_TYPE), SMALL_TYPE];
  const turns = slant === 0 ? [UPRIGHT] : [UPRIGHT, slant];
  return turns.flatMap((turn) =>
    OFFS.flatMap((off) =>
      [-1, -0.5, 0, 0.5, 1].flatMap((sideX) =>
        [-1, -0.5, 0, 0.5, 1].flatMap((sideY): Spot[] => {
          if (Math.max(Math.abs(sideX), Math.abs(sideY)) < 1) return [];
          const centre = rotateAbout(shift(at, sideX * (width / 2 + off), sideY * (height / 2 + off)), at, turn);
          const box = { centre, width, height, turn };
          return [{ box, at: inBox(box, -width / 2, height * 0.36), turn, off }];
        }),
      ),
    ),
  );
}

const boxOf = ({ centre, width, height, turn }: SlantBox): Box => ({ centre, width, height, turn });

/** In the box's own frame, from its centre. */
const within = ({ centre, turn }: Box, p: PiecePoint): PiecePoint => {
  const turned = rotateAbout(p, centre, radians(-turn));
  return piecePoint(turned.x - centre.x, turned.y - centre.y);
};

const cornersOf = (box: Box): readonly PiecePoint[] =>
  [-1, 1].flatMap((x) => [-1, 1].map((y) => inBox(box, (x * box.width) / 2, (y * box.height) / 2)));
const sidesOf = (box: Box): readonly PiecePoint[] => [
  inBox(box, 0, -box.height / 2),
  inBox(box, 0, box.height / 2),
  inBox(box, -box.width / 2, 0),
  inBox(box, box.width / 2, 0),
];

const CLEAR: Mm = 0.7;
const OVER_LINE = 2;
const OVER_WORDS = 60;

function costOf(box: Box, drawn: readonly PiecePoint[], taken: readonly Box[]): number {
  const lines = drawn.filter((p) => isInBox(box, p)).length;
  const words = taken.filter((other) => doOverlap(box, other)).length;
  return lines * OVER_LINE + words * OVER_WORDS;
}

/**
 * Whether two boxes at a slant overlap.
 *
 * @source separating axes: two boxes lie apart where they do along one of their own four sides
 */
function doOverlap(a: Box, b: Box): boolean {
  return !areApart(a, b) && !areApart(b, a);
}

/** Whether the corners of the other lie past one and the same side of the first. */
function areApart(one: Box, other: Box): boolean {
  const corners = cornersOf(other).map((p) => within(one, p));
  return (
    arePast(
      corners.map(({ x }) => x),
      one.width / 2,
    ) ||
    arePast(
      corners.map(({ y }) => y),
      one.height / 2,
    )
  );
}

const arePast = (values: readonly Mm[], half: Mm): boolean =>
  values.every((v) => v > half + CLEAR) || values.every((v) => v < -half - CLEAR);

/** The ring goes round clockwise on screen: what lies within is on the same side of all four. */
const isInRing = (ring: readonly PiecePoint[], p: PiecePoint): boolean =>
  ring.every((a, index) => {
    const b = invariant(ring[(index + 1) % ring.length], "corner");
    const span = distance(a, b);
    return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) >= EDGE_CLEAR * span;
  });

const EDGE_CLEAR: Mm = 1;

/** Points along an edge, 1 mm apart or less. */
const sampled = (edge: EdgeCurve<"piece">): readonly PiecePoint[] => {
  const points = edgeFlatten(edge, WORDS_ACCURACY);
  return points.flatMap((a, index) => {
    const b = points[index + 1];
    return b === undefined ? [] : halved(a, b);
  });
};

const halved = (a: PiecePoint, b: PiecePoint): readonly PiecePoint[] => {
  if (distance(a, b) <= 1) return [a, b];
  const middle = midpoint(a, b);
  return [...halved(a, middle), ...halved(middle, b)];
};
