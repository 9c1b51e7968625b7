/**
 * The whole dress, from the front and from behind, as it is worn: a line drawing by its own girths, lengths and edges. Whoever
 * looks at the front has the wearer's right half at the left.
 */
import { otherHalf, type Half } from "../core/decisions/alteration";
import type { Dress } from "../core/decisions/dress";
import type { Closure } from "../core/decisions/pattern";
import type { DressPlan } from "../core/dress/dressPlan";
import { levelWidth } from "../core/girth/levelWidth";
import { seamLength } from "../core/girth/seamLength";
import { outlineBounds } from "../core/geometry/outline";
import type { Piece, PieceName } from "../core/pattern/piece";
import { isFrontPiece } from "../core/pattern/pieceGroups";
import { piecesOf, type PieceSet } from "../core/pattern/pieceSet";
import { outlineOf } from "../core/pattern/ring";
import type { LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { zipMarkWords } from "../words/dressDrawing";
import { zipToBuy } from "../words/terms/zip";
import { bodiceHalf, held, SEEN, seenWidths, type BodiceHalf, type Side } from "./bodiceShape";
import { textWidth } from "./fitLines";
import { arcSpots, line, words, type Figure, type FigureMark, type Spot } from "./figure";
import {
  fittedLines,
  foldShares,
  hemLine,
  levelLine,
  sideOf,
  skirtShape,
  type FittedLine,
  type SkirtShape,
} from "./skirtShape";
import { smoothOut } from "./smoothLine";

export interface DressDecidedOf {
  readonly dress: Dress;
  readonly closure: Closure;
  readonly unit: LengthUnit;
}

export interface DressFigure extends Figure {
  readonly side: Side;
  /** Half widths as drawn at bust, waist and hip, and from the waist down to the hem; mm, the mean of both halves. */
  readonly seen: { readonly bust: Mm; readonly waist: Mm; readonly hip: Mm | null; readonly length: Mm };
}

/** White round the drawing, mm. */
const ROOM: Mm = 24;
/** Of writing, as a share of the drawing's height. */
const WORDS = 1 / 30;

/** Both sides, in boxes of one size. */
export function dressDrawing(dress: DressPlan, decided: DressDecidedOf): readonly [DressFigure, DressFigure] {
  const [front, back] = [sideDrawing("front", dress, decided), sideDrawing("back", dress, decided)];
  const all = [...front.reach, ...back.reach];
  const out = Math.max(1, ...all.map(({ x }) => Math.abs(x)));
  const top = Math.min(0, ...all.map(({ y }) => y));
  const foot = Math.max(1, ...all.map(({ y }) => y));
  const box = { x: -out - ROOM, y: top - ROOM, width: 2 * (out + ROOM), height: foot - top + 2 * ROOM };
  const figure = (side: Side, { marks, seen, zip }: Drawn): DressFigure => ({
    side,
    box,
    marks: zip === null ? marks : [...marks, zipWords(zip, box)],
    seen,
  });
  return [figure("front", front), figure("back", back)];
}

/** Beside the end of the zip, within the drawing. */
function zipWords({ text, at }: ZipSaid, { x, width, height }: Figure["box"]): FigureMark {
  const size = height * WORDS;
  const right = x + width - textWidth(text, size);
  return words(text, { x: Math.min(at.x + size / 2, right), y: at.y + size / 3 }, size);
}

interface ZipSaid {
  readonly text: string;
  readonly at: Spot;
}

interface Drawn {
  readonly zip: ZipSaid | null;
  readonly marks: readonly FigureMark[];
  readonly reach: readonly Spot[];
  readonly seen: DressFigure["seen"];
}

/** The two halves as they stand from left to right. */
const halvesOn = (side: Side): readonly [Half, Half] => (side === "front" ? ["right", "left"] : ["left", "right"]);

const flipped = (spots: readonly Spot[]): readonly Spot[] => spots.map(({ x, y }) => ({ x: -x, y }));
/** A line of a half as it stands on the drawing: the first half at the left. */
const standing = (spots: readonly Spot[], at: 0 | 1): readonly Spot[] => (at === 0 ? flipped(spots) : spots);

interface HalfOn {
  readonly half: Half;
  readonly at: 0 | 1;
  readonly own: BodiceHalf;
  readonly behind: BodiceHalf | null;
  readonly pieces: PieceSet;
}

function sideDrawing(side: Side, dress: DressPlan, decided: DressDecidedOf): Drawn {
  const setOfHalf = (half: Half): PieceSet => dress.bodice[half === "left" ? 0 : 1];
  const [first, second] = halvesOn(side);
  const halves = ([first, second] as const).flatMap((half, index): HalfOn[] => {
    const pieces = setOfHalf(half);
    const own = bodiceHalf(pieces, side);
    const at = index === 0 ? 0 : 1;
    return own === null
      ? []
      : [{ half, at, own, behind: bodiceHalf(pieces, side === "front" ? "back" : "front"), pieces }];
  });
  const below = belowOf(dress, halves);
  const bound = new Set(dress.edges.edges.filter(({ finish }) => finish === "binding").map(({ edge }) => edge));
  const bodice = halves.map((half) => bodiceMarks(half, below !== null, bound));
  const closed = closureMarks(side, halves, below, dress, decided);
  const marks: FigureMark[] = [
    ...halves.flatMap((half) => insideMarks(half, dress, decided.dress)),
    ...(below === null ? [] : belowMarks(side, dress, halves, below)),
    ...bodice.flatMap(({ fill }) => fill),
    ...bodice.flatMap(({ lines }) => lines),
    ...centreMarks(side, halves, decided.closure),
    ...halves.flatMap((half) => strapMarks(half, side, dress, decided)),
    ...liningMarks(dress, below),
    ...closed.marks,
  ];
  const reach = [
    ...halves.flatMap(({ own, at }) =>
      standing([...own.neck, ...own.shoulder, ...own.side, ...(own.strapAim === null ? [] : [own.strapAim])], at),
    ),
    ...(below === null
      ? []
      : [...sideOf(below), { x: 0, y: below.length + ROOM }].flatMap((spot) => [spot, { x: -spot.x, y: spot.y }])),
  ];
  const widths = ([0, 1] as const).map((at) => seenWidths(dress.bodice[at]));
  const mean = (width: (of: (typeof widths)[number]) => Mm): Mm =>
    widths.reduce((sum, one) => sum + width(one), 0) / widths.length;
  return {
    zip: closed.zip,
    marks,
    reach,
    seen: {
      bust: mean(({ bust }) => bust),
      waist: mean(({ waist }) => waist),
      hip: below === null || below.length < dress.body.hipDepth ? null : below.out(dress.body.hipDepth),
      length: below?.length ?? 0,
    },
  };
}

/** The cloth of one half goes a little over the centre line, so that nothing shines through between the two, mm. */
const OVER_CENTRE: Mm = 1;
const overCentre = ([top]: readonly Spot[]): readonly Spot[] =>
  top === undefined
    ? []
    : [
        { x: -OVER_CENTRE, y: 0 },
        { x: -OVER_CENTRE, y: top.y },
      ];

/** From the centre along the upper edge to the underarm. */
const upperEdge = ({ neck, shoulder, armhole }: BodiceHalf): readonly Spot[] => [...neck, ...shoulder, ...armhole];

function bodiceMarks(
  { own, at }: HalfOn,
  hangs: boolean,
  bound: ReadonlySet<"neck" | "armhole">,
): { readonly fill: readonly FigureMark[]; readonly lines: readonly FigureMark[] } {
  const to = (spots: readonly Spot[]): readonly Spot[] => standing(spots, at);
  const waist = [own.waist.side, own.waist.centre];
  return {
    fill: [line("cloth", to([...upperEdge(own), ...own.side, ...waist, ...overCentre(own.neck)]), true)],
    lines: [
      ...own.seams.map((spots) => line("seam", to(spots))),
      ...own.darts.map(({ line: spots, gathered }) => (gathered ? gatherAt(to(spots)) : line("dart", to(spots)))),
      line(hangs ? "seam" : "edge", to(waist)),
      line(bound.has("neck") ? "binding" : "edge", to(own.neck)),
      ...(own.hasStrap ? [line("edge", to(own.shoulder))] : [line("seam", to(own.shoulder))]),
      line(bound.has("armhole") ? "binding" : "edge", to(own.armhole)),
      line("edge", to(own.side)),
    ],
  };
}

/** Gathers in place of a dart: short lines about where it would be. */
function gatherAt([mouth, end]: readonly Spot[]): FigureMark {
  if (mouth === undefined || end === undefined) return line("gather", []);
  const path = [-2, -1, 0, 1, 2]
    .map((i) => {
      const deep = i % 2 === 0 ? 0.55 : 0.35;
      const from = { x: mouth.x + i * 9, y: mouth.y };
      return line("gather", [
        from,
        { x: from.x + (end.x - mouth.x) * deep - i * 2, y: from.y + (end.y - mouth.y) * deep },
      ]).path;
    })
    .join("");
  return { kind: "line", role: "gather", path };
}

/** What is seen of the other side's inside above the upper edge of this one. */
function insideMarks(
  { half, own, behind, at }: HalfOn,
  { edges }: DressPlan,
  { straps }: Dress,
): readonly FigureMark[] {
  if (behind === null) return [];
  const [neckEnd, behindEnd] = [own.neck.at(-1), behind.neck.at(-1)];
  if (neckEnd === undefined || behindEnd === undefined) return [];
  const underarm = own.side[0] ?? own.waist.side;
  const isShoulder = !own.hasStrap && !behind.hasStrap;
  const wide = behindEnd.x === 0 || !isShoulder ? 1 : neckEnd.x / behindEnd.x;
  const down = isShoulder ? neckEnd.y - behindEnd.y : 0;
  const neck = behind.neck.map(({ x, y }) => ({ x: x * wide, y: y + down }));
  const tip = own.shoulder.at(-1) ?? neckEnd;
  const rest = isShoulder
    ? [...own.shoulder, ...held(behind.armhole, tip, underarm)]
    : [...behind.shoulder, ...behind.armhole];
  const edge = standing(neck, at);
  return [
    line(
      "inside",
      standing([...neck, ...rest, underarm, own.waist.side, own.waist.centre, ...overCentre(neck)], at),
      true,
    ),
    line("edge", edge),
    line("edge", standing(isShoulder ? rest.slice(own.shoulder.length) : rest, at)),
    ...(own.hasStrap && behind.hasStrap && own.strapAim !== null && straps?.kind !== "crossed"
      ? [
          line(
            "inside",
            standing(bandOf(behind.shoulder, own.strapAim, edges.strap?.[half].width ?? straps?.width ?? null), at),
            true,
          ),
        ]
      : []),
  ];
}

/** A strap from its seam to where it goes over the shoulder. */
function bandOf(seam: readonly Spot[], aim: Spot, width: Mm | null): readonly Spot[] {
  const [inner, outer] = [seam[0], seam.at(-1)];
  if (inner === undefined || outer === undefined) return [];
  const middle = { x: (inner.x + outer.x) / 2, y: (inner.y + outer.y) / 2 };
  const whole = Math.hypot(outer.x - inner.x, outer.y - inner.y);
  const wide = Math.min(width ?? whole, whole);
  const way = Math.atan2(aim.y - middle.y, aim.x - middle.x);
  const [sx, sy] = [(Math.sin(way) * wide) / 2, (-Math.cos(way) * wide) / 2];
  const share = whole === 0 ? 0 : wide / whole / 2;
  const at = (by: number): Spot => ({
    x: middle.x + (outer.x - inner.x) * by,
    y: middle.y + (outer.y - inner.y) * by,
  });
  return [at(-share), { x: aim.x + sx, y: aim.y + sy }, { x: aim.x - sx, y: aim.y - sy }, at(share)];
}

/** Where a strap that elastic draws in has its folds, as shares of its length from the back. */
const ELASTIC = [0.06, 0.12, 0.18, 0.24, 0.3] as const;

/** A bow of a tied strap, mm. */
const BOW: Mm = 26;

function strapMarks(
  { half, own, at }: HalfOn,
  side: Side,
  { edges }: DressPlan,
  { dress: { straps } }: DressDecidedOf,
): readonly FigureMark[] {
  if (!own.hasStrap || own.strapAim === null) return [];
  const { x, y } = own.strapAim;
  const isFromOther = straps?.kind === "crossed" && side === "back";
  const strap = edges.strap?.[isFromOther ? otherHalf(half) : half];
  const width = strap?.width ?? straps?.width ?? null;
  const aim = isFromOther ? { x: -x, y } : own.strapAim;
  const band = standing(bandOf(own.shoulder, aim, width), at);
  const bow =
    straps?.kind === "tied"
      ? [-1, 1].flatMap((way) => [
          line(
            "strap",
            standing(
              [
                { x, y },
                { x: x + way * BOW, y: y - BOW * 0.45 },
                { x: x + way * BOW, y: y + BOW * 0.25 },
              ],
              at,
            ),
            true,
          ),
          line(
            "edge",
            standing(
              [
                { x, y },
                { x: x + way * BOW * 0.6, y: y + BOW * 1.1 },
              ],
              at,
            ),
          ),
        ])
      : [];
  const [inner, top, , outer] = band;
  const elastic =
    side === "back" && strap?.elastic != null && inner !== undefined && top !== undefined && outer !== undefined
      ? ELASTIC.map((share) => {
          const by = { x: (top.x - inner.x) * share, y: (top.y - inner.y) * share };
          return line("gather", [
            { x: inner.x + by.x, y: inner.y + by.y },
            { x: outer.x + by.x, y: outer.y + by.y },
          ]);
        })
      : [];
  return [line("strap", band, true), ...elastic, ...bow];
}

/** Seams and openings on the centre line of the bodice. */
function centreMarks(side: Side, halves: readonly HalfOn[], { place }: Closure): readonly FigureMark[] {
  const names: readonly PieceName[] =
    side === "front" ? ["front", "centreFront", "cup", "frontBand"] : ["back", "backBand"];
  const seams = halves.some(({ pieces }) => names.some((name) => pieces[name]?.centreOnFold === false));
  const top = halves[0]?.own.neck[0];
  if (!seams || top === undefined || (side === "back" && place === "centreBack")) return [];
  return [line("seam", [top, { x: 0, y: 0 }])];
}

/** What hangs below the waist: the skirt, or the pattern's own basque. */
interface Below extends SkirtShape {
  readonly panels: (half: Half, side: Side) => readonly Piece[];
  readonly isFitted: boolean;
  /** How far each half's waist is wider than the mean. */
  readonly uneven: Readonly<Record<Half, Mm>>;
}

const SKIRT_ORDER: Readonly<Record<Side, readonly PieceName[]>> = {
  front: ["skirtFront", "skirtSideFront"],
  back: ["skirtBack", "skirtSideBack"],
};

function belowOf({ skirt, body, bodice, waist }: DressPlan, halves: readonly HalfOn[]): Below | null {
  const seen = { left: seenWidths(bodice[0]).waist, right: seenWidths(bodice[1]).waist };
  const mean = (seen.left + seen.right) / 2;
  const uneven = { left: seen.left - mean, right: seen.right - mean };
  if (skirt?.ok === true) {
    const draft = skirt.value;
    const shape = skirtShape(draft, { waist: waist.whole, hip: body.hip, hipDepth: body.hipDepth });
    return {
      ...shape,
      uneven,
      isFitted: draft.kind === "aLine" || draft.kind === "straight",
      panels: (half, side) => {
        const set = draft.halves[half === "left" ? 0 : 1];
        return SKIRT_ORDER[side].flatMap((name) => set[name] ?? []);
      },
    };
  }
  const basques = halves.flatMap(({ pieces }) => piecesOf(pieces).filter(({ name }) => name.endsWith("Basque")));
  if (basques.length === 0) return null;
  const girth = (width: (piece: Piece) => Mm): Mm => basques.reduce((sum, piece) => sum + width(piece), 0);
  const foot = Math.max(...basques.map(({ points }) => points.centreHem?.at.y ?? 0));
  const hip = Math.max(...basques.map(({ points }) => points.centreHip?.at.y ?? 0));
  const atHip = girth((piece) => levelWidth(piece, "hip") ?? 0);
  const out = smoothOut([
    { x: SEEN * girth((piece) => seamLength(piece, "waist")), y: 0 },
    ...(hip > 0 && hip < foot && atHip > 0 ? [{ x: SEEN * atHip, y: hip }] : []),
    { x: SEEN * girth((piece) => seamLength(piece, "hem")), y: foot },
  ]);
  return {
    out,
    length: foot,
    tiers: [{ top: 0, foot, gathered: false }],
    folds: 0,
    isFitted: true,
    uneven,
    panels: (half, side) => {
      const set = bodice[half === "left" ? 0 : 1];
      return side === "front" ? pieceOr(set.frontBasque) : pieceOr(set.backBasque);
    },
  };
}

const pieceOr = (piece: Piece | undefined): readonly Piece[] => (piece === undefined ? [] : [piece]);

/** Half width on one side of the drawing: what halves differ by at the waist is lost over the hip. */
function outOn(below: Below, half: Half, hipDepth: Mm): (y: Mm) => Mm {
  const more = below.uneven[half];
  return (y) => below.out(y) + more * Math.max(0, 1 - y / Math.max(1, hipDepth));
}

function belowMarks(side: Side, { body }: DressPlan, halves: readonly HalfOn[], below: Below): readonly FigureMark[] {
  const [first, second] = halvesOn(side);
  const outs = [outOn(below, first, body.hipDepth), outOn(below, second, body.hipDepth)] as const;
  const wide =
    (at: 0 | 1) =>
    (y: Mm): Mm =>
      outs[at](y);
  const sides = ([0, 1] as const).map((at) => {
    const out = wide(at);
    return standing(sideOf({ ...below, out }), at);
  });
  const [left = [], right = []] = sides;
  const hem = hemLine(below, wide(0)(below.length), wide(1)(below.length));
  const marks: FigureMark[] = [
    line("cloth", [...left, ...hem, ...right.toReversed(), { x: 0, y: 0 }], true),
    line("edge", left),
    line("edge", right),
    line("hem", hem),
  ];
  for (const [index, { top, gathered }] of below.tiers.entries()) {
    if (index > 0) marks.push(line("seam", levelLine(top, wide(0)(top), wide(1)(top))));
    if (gathered) marks.push(gathersBelow(below, index, wide(0), wide(1)));
  }
  if (below.folds > 0) marks.push(foldsAbove(below, wide(0), wide(1)));
  for (const { half, at } of halves) {
    const panels = below.panels(half, side);
    marks.push(
      ...fittedLines(panels, wide(at), below.length).map(({ role, spots }: FittedLine) =>
        line(role, standing(spots, at)),
      ),
    );
    const centre = panels[0];
    if (centre?.centreOnFold === false && at === 1)
      marks.push(
        line("seam", [
          { x: 0, y: 0 },
          { x: 0, y: middleOf(below.length, outs) },
        ]),
      );
    marks.push(...ventMarks(centre, below.length, at));
  }
  return marks;
}

/** Where the hem lies on the centre line. */
const middleOf = (length: Mm, outs: readonly [(y: Mm) => Mm, (y: Mm) => Mm]): Mm =>
  levelLine(length, outs[0](length), outs[1](length)).find(({ x }) => x >= 0)?.y ?? length;

/** A vent in the centre back: its slit, and the slant that holds the layer under it. */
function ventMarks(piece: Piece | undefined, length: Mm, at: 0 | 1): readonly FigureMark[] {
  const vent = piece?.points.ventTop?.at;
  if (piece === undefined || vent === undefined || at === 0 || isFrontPiece(piece.name)) return [];
  const { max } = outlineBounds(outlineOf(piece));
  const high = max.y - vent.y;
  return [
    line("edge", [
      { x: 0, y: length - high },
      { x: 3, y: length + 6 },
    ]),
    line("seam", [
      { x: 0, y: length - high },
      { x: 34, y: length - high + 22 },
    ]),
  ];
}

/** Between two strokes of gathers, mm as drawn. */
const STROKES_APART: Mm = 13;
/** How deep strokes go, as shares of a tier, by turns: no two neighbours alike. */
const STROKES = [0.16, 0.34, 0.1, 0.24, 0.42, 0.13, 0.29, 0.2] as const;
const LONGEST_STROKE: Mm = 130;

function gathersBelow(below: Below, index: number, left: (y: Mm) => Mm, right: (y: Mm) => Mm): FigureMark {
  const tier = below.tiers[index] ?? { top: 0, foot: below.length, gathered: true };
  const [a, b] = [left(tier.top), right(tier.top)];
  const seam = levelLine(tier.top, a, b);
  const count = Math.max(6, Math.round((a + b) / STROKES_APART));
  const path = Array.from({ length: count - 1 }, (_, i) => {
    const share = (i + 1) / count;
    const start = seam[Math.round(share * (seam.length - 1))] ?? { x: 0, y: tier.top };
    const deep = Math.min(LONGEST_STROKE, (STROKES[(i * 3 + index) % STROKES.length] ?? 0.2) * (tier.foot - tier.top));
    const wider = start.x < 0 ? left(tier.top + deep) / a : right(tier.top + deep) / b;
    return line("gather", [start, { x: start.x * wider, y: start.y + deep }]).path;
  }).join("");
  return { kind: "line", role: "gather", path };
}

/** How far up from the hem folds are seen, as shares of what hangs free, by turns. */
const FOLDS = [0.62, 0.4, 0.78, 0.5] as const;

function foldsAbove(below: Below, left: (y: Mm) => Mm, right: (y: Mm) => Mm): FigureMark {
  const last = below.tiers.at(-1) ?? { top: 0, foot: below.length, gathered: false };
  const [a, b] = [left(below.length), right(below.length)];
  const hem = levelLine(below.length, a, b);
  const path = foldShares(below)
    .map((share, i) => {
      const foot = hem[Math.round(share * (hem.length - 1))] ?? { x: 0, y: below.length };
      const high = (FOLDS[i % FOLDS.length] ?? 0.5) * (last.foot - last.top) * (last.gathered ? 0.8 : 1);
      const y = foot.y - high;
      const narrower = foot.x < 0 ? left(y) / a : right(y) / b;
      return line("drape", [foot, { x: foot.x * narrower, y }]).path;
    })
    .join("");
  return { kind: "line", role: "drape", path };
}

function liningMarks({ lining }: DressPlan, below: Below | null): readonly FigureMark[] {
  const figures = lining?.ok === true ? lining.value.skirtFigures : null;
  if (figures === null || below === null) return [];
  const y = Math.min(figures.lengths.side, below.length - 4);
  const wide = Math.min(SEEN * figures.hem, below.out(y) - 4);
  return [line("lining", levelLine(y, wide, wide))];
}

const BUTTON: Mm = 5;

interface Closed {
  readonly marks: readonly FigureMark[];
  readonly zip: ZipSaid | null;
}

function closureMarks(
  side: Side,
  halves: readonly HalfOn[],
  below: Below | null,
  { closure: reading, body }: DressPlan,
  { closure, dress, unit }: DressDecidedOf,
): Closed {
  const reach = below === null ? 0 : Math.min(Math.max(0, closure.belowWaist), below.length);
  // One that wants the opening ended higher is not the zip of this opening.
  const zip = reading?.endsAt[unit] === null ? zipToBuy(reading.zip, unit) : null;
  const text = zipMarkWords(zip, reading?.opening ?? null, dress.zip, unit);
  const said = (at: Spot): ZipSaid | null => (text === null ? null : { text, at });
  if (closure.place === "centreBack") {
    const top = halves[0]?.own.neck[0];
    if (side !== "back" || top === undefined) return { marks: [], zip: null };
    const end = { x: 0, y: reach };
    const isButtoned = closure.buttons !== undefined;
    return {
      marks: isButtoned
        ? [line("seam", [top, end]), ...buttonsDown(top.y, reach, closure.buttons ?? 0)]
        : [
            line("zip", [top, end]),
            line("edge", [
              { x: -5, y: reach },
              { x: 5, y: reach },
            ]),
          ],
      zip: isButtoned ? null : said(end),
    };
  }
  const left = halves.find(({ half }) => half === "left");
  if (left === undefined) return { marks: [], zip: null };
  const out = below === null ? null : outOn(below, "left", body.hipDepth);
  const spots = [
    ...left.own.side,
    ...(out === null ? [] : Array.from({ length: 17 }, (_, i) => ({ x: out((reach * i) / 16), y: (reach * i) / 16 }))),
  ].map(({ x, y }) => ({ x: x - 4, y }));
  return {
    marks: [line("zip", standing(spots, left.at))],
    zip: side === "back" ? null : said({ x: left.own.waist.side.x, y: -20 }),
  };
}

/** The first and the last stand so far from the ends of the opening, mm. */
const FROM_END: Mm = 12;

function buttonsDown(top: Mm, foot: Mm, count: number): readonly FigureMark[] {
  const way = foot - top - 2 * FROM_END;
  return Array.from({ length: count }, (_, i) => {
    const y = top + FROM_END + (count === 1 ? 0 : (way * i) / (count - 1));
    return line("button", arcSpots({ x: 0, y }, BUTTON, 0, 2 * Math.PI), true);
  });
}
