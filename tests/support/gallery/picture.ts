/** A scene as one plain picture: white ground, true proportions, a bar of 100 mm. What was before lies in grey under what is. */
import { dartCap } from "../../../src/core/dart/dartCap";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { curveOf } from "../../../src/core/pattern/ring";
import { pointOf, type Piece } from "../../../src/core/pattern/piece";
import { PIECE_ORDER } from "../../../src/core/pattern/pieceSet";
import { chainPath } from "../../../src/core/geometry/svgPath";
import type { Part, RectanglePart, SectorPart } from "../../../src/core/parts/part";
import type { SurgeryTrace } from "../../../src/core/surgery/cutAndMove";
import { around, boundsOf, type Box } from "../../../src/drawing/layout";
import { pieceMarks, polyline } from "../../../src/drawing/pieceMarks";
import { clothName, partMeasures, partName } from "../../../src/words/dressParts";
import { capital, pieceWords } from "../../../src/words/terms/names";
import type { Shown } from "./scene";

/** One thing that is drawn: its marks in its own frame, the box round them, and its name beneath. */
interface Cell {
  readonly name: string;
  readonly box: Box;
  readonly marks: string;
}

const MARGIN = 22;
const BETWEEN = 28;
const TITLE = 11;
const NAME = 9;
const BAR = 100;

export function picture(title: string, shown: Shown): string {
  const cells = [...pieceCells(shown), ...shown.parts.map(partCell)];
  const width = cells.reduce((sum, { box }) => sum + box.width + BETWEEN, 0) - BETWEEN + 2 * MARGIN;
  const lines = wrapped([title, ...shown.notes].join(" "), Math.max(width, LEAST_WIDTH) - 2 * MARGIN);
  const top = MARGIN + lines.length * TITLE * 1.3;
  const height = top + Math.max(0, ...cells.map(({ box }) => box.height)) + 3 * NAME + MARGIN;
  let x = MARGIN;
  const drawn = cells.map(({ name, box, marks }) => {
    const left = x;
    x += box.width + BETWEEN;
    return `<g transform="translate(${hundredth(left - box.x)} ${hundredth(top - box.y)})">${marks}</g>${text(name, left, top + box.height + 1.4 * NAME, NAME)}`;
  });
  const whole = Math.max(width, LEAST_WIDTH);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${hundredth(whole)} ${hundredth(height)}" width="${hundredth(whole)}" height="${hundredth(height)}" font-family="sans-serif">`,
    `<style>${STYLE}</style>`,
    `<rect width="100%" height="100%" fill="#fff"/>`,
    ...lines.map((line, at) => text(line, MARGIN, MARGIN + at * TITLE * 1.3, TITLE)),
    ...drawn,
    bar(whole - MARGIN - BAR, height - MARGIN / 2),
    "</svg>\n",
  ].join("\n");
}

const LEAST_WIDTH = 420;

const STYLE = [
  "path,line{fill:none;stroke-linejoin:round;vector-effect:non-scaling-stroke}",
  ".is{stroke:#111;stroke-width:1.4px}",
  ".was{stroke:#a8a8a8;stroke-width:1.4px}",
  ".dart{stroke:#111;stroke-width:.9px}",
  ".was.dart{stroke:#a8a8a8}",
  ".fold{stroke:#111;stroke-width:.6px;stroke-dasharray:5 3}",
  ".level{stroke:#3b6ea5;stroke-width:.8px;stroke-dasharray:6 3}",
  ".grain{stroke:#777;stroke-width:.8px}",
  ".cut{stroke:#c22;stroke-width:1px;stroke-dasharray:4 2}",
  "circle{fill:#111}.hinge{fill:none;stroke:#c22;stroke-width:1px}.bust{fill:none;stroke:#111;stroke-width:.8px}",
].join("");

function pieceCells({ before, pieces, surgery }: Shown): readonly Cell[] {
  return PIECE_ORDER.flatMap((name): Cell[] => {
    const [was, is] = [before[name], pieces[name]];
    const both = [was, is].filter((piece) => piece !== undefined);
    const box = both.reduce<Box | undefined>((found, piece) => around(found, boxOfPiece(piece)), undefined);
    if (box === undefined) return [];
    const said = is === undefined ? " (before)" : was === undefined && Object.keys(before).length > 0 ? " (new)" : "";
    return [
      {
        name: `${capital(pieceWords(name))}${said}`,
        box,
        marks: `${was === undefined ? "" : greyPiece(was)}${is === undefined ? "" : inkPiece(is)}${cutsOn(surgery, name)}`,
      },
    ];
  });
}

/** With the caps of its darts, which stand out. */
function boxOfPiece(piece: Piece): Box {
  const at = (p: PiecePoint): Box => ({ x: p.x, y: p.y, width: 0, height: 0 });
  return piece.darts
    .flatMap(({ name }) => dartCap(piece, name))
    .reduce((box, p) => around(box, at(p)), boundsOf(piece));
}

const path = (kind: string, d: string): string => (d === "" ? "" : `<path class="${kind}" d="${d}"/>`);
const dot = ({ x, y }: PiecePoint, radius: number, kind = ""): string =>
  `<circle${kind === "" ? "" : ` class="${kind}"`} cx="${hundredth(x)}" cy="${hundredth(y)}" r="${radius}"/>`;

function greyPiece(piece: Piece): string {
  const marks = pieceMarks(piece);
  return `${path("was", outlineOfPiece(piece))}${marks.darts.map(({ legs }) => path("was dart", legs)).join("")}`;
}

function inkPiece(piece: Piece): string {
  const marks = pieceMarks(piece);
  const { from, to } = marks.grain;
  const bust = piece.points.bustPoint?.at;
  return [
    path("is", outlineOfPiece(piece)),
    ...marks.darts.flatMap(({ legs, cap, fold, apex }) => [
      path("dart", legs),
      path("dart", cap),
      path("fold", fold),
      dot(apex, 1.4),
    ]),
    ...marks.levels.map((d) => path("level", d)),
    path("grain", polyline([from, to])),
    ...piece.edges.map((edge) => dot(pointOf(piece, edge.from), 1)),
    bust === undefined ? "" : dot(bust, 3, "bust"),
    piece.centreOnFold ? path("fold", foldMark(piece)) : "",
  ].join("");
}

/** The outline without the mouths of darts: there the cap is drawn. */
const outlineOfPiece = (piece: Piece): string =>
  piece.edges.map((edge) => (edge.mouthOf === null ? chainPath([curveOf(piece, edge)]) : "")).join("");

/** Beside a centre that lies on the fold, a broken line. */
const FOLD_BESIDE = 3;
function foldMark(piece: Piece): string {
  const places = piece.edges
    .filter(({ seam }) => seam === "centre")
    .flatMap(({ from, to }) => [pointOf(piece, from), pointOf(piece, to)]);
  const [first] = places;
  if (first === undefined) return "";
  const ys = places.map(({ y }) => y);
  return `M${first.x - FOLD_BESIDE} ${hundredth(Math.min(...ys))}V${hundredth(Math.max(...ys))}`;
}

const cutsOn = (surgery: readonly SurgeryTrace[], name: Piece["name"]): string =>
  surgery
    .filter(({ piece }) => piece === name)
    .flatMap(({ cuts, hinges }) => [
      ...cuts.map((cut) => path("cut", polyline(cut))),
      ...hinges.map((hinge) => dot(hinge, 3, "hinge")),
    ])
    .join("");

// Parts of a dress.

function partCell(part: Part): Cell {
  const measures = partMeasures(part, "cm");
  const cloth = part.cloth === "main" ? "" : `, ${clothName(part.cloth)}`;
  const name = `${partName(part, undefined)}${cloth} × ${part.cut.count}${part.cut.onFold ? " on fold" : ""}${measures === null ? "" : `, ${measures}`}`;
  switch (part.kind) {
    case "piece":
      return { name, box: boxOfPiece(part.piece), marks: inkPiece(part.piece) };
    case "rectangle":
      return { name, ...rectangleMarks(part) };
    case "sector":
      return { name, ...sectorMarks(part) };
  }
}

function rectangleMarks({ width, depth, upperEdge }: RectanglePart): Pick<Cell, "box" | "marks"> {
  const { front, side, back } = upperEdge ?? { front: 0, side: 0, back: 0 };
  const upper = upperEdge === undefined ? "" : path("level", `M0 ${front}L${width / 2} ${side}L${width} ${back}`);
  return {
    box: { x: 0, y: 0, width, height: depth },
    marks: `${path("is", `M0 0H${hundredth(width)}V${hundredth(depth)}H0Z`)}${upper}`,
  };
}

function sectorMarks(part: SectorPart): Pick<Cell, "box" | "marks"> {
  const [waist, hem] = sectorLines(part);
  const all = [...waist, ...hem];
  const xs = all.map(({ x }) => x);
  const ys = all.map(({ y }) => y);
  const box = { x: Math.min(...xs), y: Math.min(...ys), width: 0, height: 0 };
  return {
    box: { ...box, width: Math.max(...xs) - box.x, height: Math.max(...ys) - box.y },
    marks: path("is", `${polyline([...waist, ...hem.toReversed()])}Z`),
  };
}

const STEPS = 48;

/** The line at the waist and the line at the hem, from the first side on; the pin is at the origin. */
export function sectorLines({
  inner,
  outer,
  angle,
  waistRadii,
}: SectorPart): readonly [readonly PiecePoint[], readonly PiecePoint[]] {
  const at = (radius: number, turn: number): PiecePoint => piecePoint(radius * Math.sin(turn), radius * Math.cos(turn));
  const turns = Array.from({ length: STEPS + 1 }, (_, i) => (angle * i) / STEPS);
  const waist =
    waistRadii === undefined
      ? turns.map((turn) => at(inner, turn))
      : waistRadii.map(({ at: turn, radius }) => at(radius, turn));
  return [waist, turns.map((turn) => at(outer, turn))];
}

// Writing.

function text(said: string, x: number, y: number, size: number): string {
  const safe = said.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
  return `<text x="${hundredth(x)}" y="${hundredth(y)}" font-size="${size}">${safe}</text>`;
}

/** About as many letters as go on a line. */
function wrapped(said: string, width: number): readonly string[] {
  const most = Math.floor(width / (TITLE * 0.5));
  const lines: string[] = [];
  for (const word of said.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

const bar = (x: number, y: number): string =>
  `${path("is", `M${hundredth(x)} ${hundredth(y - 2)}v4m0 -2h${BAR}m0 -2v4`)}${text("100 mm", x + 30, y - 4, 8)}`;

const hundredth = (value: number): number => Math.round(value * 100) / 100;
