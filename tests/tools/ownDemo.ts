/**
 * Draws the pattern file of the demonstration with pieces of its own: `npm run own-demo`. It is invented, drafted by the maths
 * of `tests/support/foreign`, and drawn as a pattern to download is: sizes in layers, each with its dash, darts and bust points
 * by size, grain and names for all, a test square.
 */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { OwnPattern, OwnPieceSaid } from "../../src/core/decisions/ownPattern";
import type { Pattern } from "../../src/core/decisions/pattern";
import type { Work } from "../../src/core/decisions/work";
import { readOwn } from "../../src/core/ownPieces/readOwn";
import { writeWorkFile } from "../../src/document/workFile";
import { readPatternFile } from "../../src/reading/readPatternFile";
import { foreignNest } from "../support/foreign/foreignNest";
import type { ForeignOutline, ForeignPiece } from "../support/foreign/foreignTypes";
import type { Segment, XY } from "../support/foreign/plane";

/** mm between pieces, and round all of them. */
const GAP = 25;
export const TOP = 180;
const DASHES = ["", "6 2", "2 1.5", "8 2 1 2", "0.8 1.6", "4 1 1 1 1 1"];
const COLOURS = ["#1d1d1d", "#274b8f", "#8f2740", "#2f7a3d", "#7a5a1c", "#5b2a7d"];
const NAMES: Readonly<Record<string, string>> = {
  front: "FRONT",
  back: "BACK",
  frontBasque: "FRONT BASQUE",
  backBasque: "BACK BASQUE",
  other1: "COLLAR",
};

/** An invented bodice with a square neck, a French dart, waist darts of one intake in all sizes, and a collar. */
export const linnet = () =>
  foreignNest({
    seed: 21,
    sizes: 6,
    front: "french",
    neck: "square",
    darts: "one intake",
    grading: "even",
    basque: true,
    hem: "plain",
    side: "curved",
    unlike: false,
    other: true,
    body: { bust: 820, waist: 630, hip: 890 },
  });

const written = (value: number): string => String(Math.round(value * 1000) / 1000);
const at = ({ x, y }: XY, dx: number): string => `${written(x + dx)} ${written(y + TOP)}`;
const step = ({ b, c }: Segment, dx: number): string =>
  c === undefined ? `L${at(b, dx)}` : `C${at(c[0], dx)} ${at(c[1], dx)} ${at(b, dx)}`;

function outlineData({ ring }: ForeignOutline, dx: number): string {
  const segments = ring.flatMap((stretch) => stretch.segments);
  const [first] = segments;
  return first === undefined ? "" : `M${at(first.a, dx)}${segments.map((one) => step(one, dx)).join("")}Z`;
}

function innerData(outline: ForeignOutline, dx: number): string[] {
  const corner = (name: string): XY =>
    outline.ring.find(({ from }) => from === name)?.segments[0]?.a ?? { x: Number.NaN, y: Number.NaN };
  const legs = outline.darts.map(
    ({ inner, outer, apex }) => `M${at(corner(inner), dx)}L${at(apex, dx)}L${at(corner(outer), dx)}`,
  );
  const { bustPoint } = outline.inside;
  if (bustPoint === undefined) return legs;
  const { x, y } = bustPoint;
  return [
    ...legs,
    `M${at({ x: x - 3, y }, dx)}L${at({ x: x + 3, y }, dx)}`,
    `M${at({ x, y: y - 3 }, dx)}L${at({ x, y: y + 3 }, dx)}`,
  ];
}

/** Each piece with how far it is moved to the right. */
export function sideBySide(pieces: readonly ForeignPiece[]): { readonly piece: ForeignPiece; readonly dx: number }[] {
  let free = GAP;
  return pieces.map((piece) => {
    const across = piece.sizes.flatMap(({ ring }) => ring.flatMap(({ segments }) => segments.map(({ a }) => a.x)));
    const dx = free - Math.min(...across);
    free = dx + Math.max(...across) + GAP;
    return { piece, dx };
  });
}

export function drawLinnet(): string {
  const nest = linnet();
  const placed = sideBySide(nest.pieces);
  const width = Math.max(...placed.map(({ dx }) => dx)) + 260;
  const layers = nest.chart.flatMap(({ label }, index) => [
    `<g id="size-${label}" fill="none" stroke="${COLOURS[index] ?? ""}" stroke-width="0.4" stroke-dasharray="${DASHES[index] ?? ""}">`,
    `<title>Size ${label}</title>`,
    ...placed.flatMap(({ piece, dx }) => {
      const outline = piece.sizes[index];
      return outline === undefined
        ? []
        : [outlineData(outline, dx), ...innerData(outline, dx)].map((data) => `<path d="${data}"/>`);
    }),
    `</g>`,
  ]);
  const shared = placed.flatMap(({ piece, dx }) => {
    const [smallest] = piece.sizes;
    if (smallest === undefined) return [];
    const [from, to] = smallest.grain;
    const name: XY = { x: from.x + 12, y: (from.y + to.y) / 2 };
    return [
      `<path d="M${at(from, dx)}L${at(to, dx)}" fill="none" stroke="#000000" stroke-width="0.3"/>`,
      `<text x="${written(name.x + dx)}" y="${written(name.y + TOP)}" font-size="9">${NAMES[piece.name] ?? ""}</text>`,
    ];
  });
  return `${[
    `<?xml version="1.0" encoding="UTF-8"?>`,
    `<svg xmlns="http://www.w3.org/2000/svg" width="${written(width)}mm" height="760mm" viewBox="0 0 ${written(width)} 760">`,
    `<title>Linnet bodice (invented), sizes ${nest.chart.map(({ label }) => label).join(", ")}, no seam allowance</title>`,
    ...layers,
    `<g id="marks">`,
    ...shared,
    `</g>`,
    `<g id="test-square" fill="none" stroke="#000000" stroke-width="0.3">`,
    `<rect x="${GAP}" y="30" width="100" height="100"/>`,
    `<text x="${GAP + 5}" y="84" font-size="7" fill="#000000" stroke="none">10 cm x 10 cm</text>`,
    `</g>`,
    `</svg>`,
  ].join("\n")}\n`;
}

/** Round numbers on a chart are what a pattern prints. */
const LINNET_EASE = linnet().ease;

/** The work on it: a body of one size at the bust and between two others at waist and hip. Invented. */
export function linnetWork(svg: string): Work {
  const read = readPatternFile({ name: "linnet.svg", bytes: new TextEncoder().encode(svg) });
  if (!read.ok) throw new Error(read.failure.code);
  const { chart } = linnet();
  const pattern: Pattern = {
    name: "Linnet bodice (invented)",
    chart: { sizes: chart, draftedDifference: 50, cups: [] },
    ease: LINNET_EASE,
    length: "hip",
    closure: { place: "centreBack", belowWaist: 180 },
    style: "sideDart",
    strap: "thin",
  };
  const own: OwnPattern = { file: "linnet.svg", drawing: read.value, pieces: [] };
  const found = readOwn({ own, pattern });
  // What is proposed is said, so that it stays when the reading one day proposes otherwise.
  const pieces = found.pieces.map(({ id, said }): OwnPieceSaid =>
    said.name === null
      ? { id, name: null, leftOut: true }
      : {
          id,
          name: said.name,
          ...(said.name === "other1" ? { label: "collar", centreOnFold: true } : {}),
          line: said.line,
        },
  );
  return {
    name: "Linnet bodice on its own pieces (invented)",
    invented: true,
    unit: "cm",
    paper: "A4",
    tapes: [
      {
        taken: "2026-11-02",
        readings: {
          bustGirth: [938],
          upperChestGirth: [872],
          underBustGirth: [796],
          waistGirth: [752],
          hipGirth: [1004],
          height: [1660],
          bustPointWidth: [186],
          sideNeckToBustPoint: [272],
          backWaistLength: [402],
          frontWaistLength: [436],
          neckBaseGirth: [372],
          shoulderLength: [121],
          acrossBack: [352],
          acrossFront: [332],
        },
      },
    ],
    pattern: { ...pattern, own: { ...own, pieces, inUse: true } },
    easeWanted: {},
    picks: {},
    alterations: [],
    unread: {},
  };
}

const inDemoData = (name: string): string => fileURLToPath(new URL(`../../demo-data/${name}`, import.meta.url));

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const svg = drawLinnet();
  writeFileSync(inDemoData("linnet.svg"), svg);
  writeFileSync(inDemoData("linnet.json"), writeWorkFile(linnetWork(svg)));
}
