/**
 * Outlines as text, one point a line, so that a change reads in review as "the front's underarm moved": each corner by its
 * name, two points of each curve after the corner that it starts at (with its ends they are the whole of a cubic), then what
 * lies within; millimetres. Of a piece that was there before, only what moved.
 */
import { edgePointAt } from "../../../src/core/geometry/edgeCurve";
import { pointNames, pointOf, type Piece } from "../../../src/core/pattern/piece";
import { piecesOf } from "../../../src/core/pattern/pieceSet";
import { curveOf } from "../../../src/core/pattern/ring";
import type { SurgeryTrace } from "../../../src/core/surgery/cutAndMove";
import type { Part } from "../../../src/core/parts/part";
import { sectorLines } from "./picture";
import type { Shown } from "./scene";

/** Numbers under a name: of a place two. */
interface Line {
  readonly name: string;
  readonly at: readonly number[];
  /** Where it was before what the scene shows was done; absent: it is new. */
  readonly was?: readonly number[];
}

/** A piece of a scene. What is no length but said, as a centre on the fold, is part of its name. */
interface Drawn {
  readonly name: string;
  readonly lines: readonly Line[];
}

interface Outline {
  readonly key: string;
  readonly pieces: readonly Drawn[];
}

/** Where on a curve a point is kept. */
const ALONG = [
  { name: "+1/3", t: 1 / 3 },
  { name: "+2/3", t: 2 / 3 },
] as const;
const FOLD = "on the fold";
const GATHERED = "gathered";
/** Said, and no place. */
const WITHOUT_NUMBERS = new RegExp(`${FOLD}$|${GATHERED}$`, "u");

function outlineOfPiece(piece: Piece, before?: Piece): Drawn {
  const drawn = linesOf(piece);
  if (before === undefined) return { name: piece.name, lines: drawn };
  const was = new Map(linesOf(before).map(({ name, at }) => [name, at]));
  const lines = drawn.map((line): Line => {
    const old = was.get(line.name);
    return old === undefined ? line : { ...line, was: old };
  });
  return { name: piece.name, lines };
}

function linesOf(piece: Piece): readonly Line[] {
  const corners = new Set<string>();
  const ring = piece.edges.flatMap((edge): Line[] => {
    corners.add(edge.from);
    const { x, y } = pointOf(piece, edge.from);
    const curve = curveOf(piece, edge);
    const along = edge.curve === null ? [] : ALONG;
    return [
      { name: edge.from, at: [x, y] },
      ...along.map(({ name, t }): Line => {
        const p = edgePointAt(curve, t);
        return { name: `${edge.from} ${name}`, at: [p.x, p.y] };
      }),
    ];
  });
  const within = pointNames(piece)
    .filter((name) => !corners.has(name))
    .toSorted()
    .map((name): Line => {
      const { x, y } = pointOf(piece, name);
      return { name, at: [x, y] };
    });
  const darts = piece.darts.flatMap(({ name, bow, gathered }): Line[] => [
    ...(bow === undefined ? [] : [{ name: `${name} bow`, at: [bow] }]),
    ...(gathered === true ? [{ name: `${name} ${GATHERED}`, at: [] }] : []),
  ]);
  const fold = piece.centreOnFold ? [{ name: FOLD, at: [] }] : [];
  return [...ring, ...within, ...darts, ...fold];
}

function outlineOfPart(part: Part): Drawn {
  const { count, onFold } = part.cut;
  const name = `${part.key} x${count}${onFold ? " on fold" : ""}`;
  switch (part.kind) {
    case "piece":
      return { name, lines: linesOf(part.piece) };
    case "rectangle": {
      const { width, depth, upperEdge } = part;
      const upper = upperEdge === undefined ? [] : [{ name: "upper edge", at: Object.values(upperEdge) }];
      return { name, lines: [{ name: "width and depth", at: [width, depth] }, ...upper] };
    }
    case "sector": {
      const [waist, hem] = sectorLines(part);
      const few = (line: typeof hem): typeof hem =>
        [0, 0.25, 0.5, 0.75, 1].flatMap((share) => line[Math.round(share * (line.length - 1))] ?? []);
      return {
        name,
        lines: [
          ...few(waist).map(({ x, y }, i): Line => ({ name: `waist ${i + 1}`, at: [x, y] })),
          ...few(hem).map(({ x, y }, i): Line => ({ name: `hem ${i + 1}`, at: [x, y] })),
        ],
      };
    }
  }
}

/** Where a piece was cut, and what its parts turned about. */
function outlineOfCuts({ piece, cuts, hinges }: SurgeryTrace, index: number): Drawn {
  return {
    name: `cuts ${index + 1} on ${piece}`,
    lines: [
      ...cuts.flatMap((cut, at) => cut.map(({ x, y }, i): Line => ({ name: `cut ${at + 1}.${i + 1}`, at: [x, y] }))),
      ...hinges.map(({ x, y }, i): Line => ({ name: `hinge ${i + 1}`, at: [x, y] })),
    ],
  };
}

export const outlineOf = (key: string, { before, pieces, parts, surgery }: Shown): Outline => ({
  key,
  pieces: [
    ...piecesOf(pieces).map((piece) => outlineOfPiece(piece, before[piece.name])),
    ...surgery.map(outlineOfCuts),
    ...parts.map(outlineOfPart),
  ],
});

// Written and read.

const SCENE = "= ";
const PIECE = "- ";
const AS = " as in ";

const hundredth = (value: number): number => Math.round(value * 100) / 100 + 0;
const written = ({ name, at }: Line): string => [`${name.replace(/^.* \+/u, "+")}:`, ...at.map(hundredth)].join(" ");

/** mm. So little is nothing that was done. */
const STAYED = 0.005;
const stays = ({ at, was }: Line): boolean => was !== undefined && apart(at, was) < STAYED;
const apart = (a: readonly number[], b: readonly number[]): number =>
  a.length === b.length ? Math.hypot(...a.map((value, i) => value - (b[i] ?? Number.NaN))) : Infinity;

/** A piece that comes out just as in a scene before is named and not written again. */
export function outlinesText(outlines: readonly Outline[]): string {
  const known = new Map<string, string>();
  const lines = outlines.flatMap(({ key, pieces }) => [
    `${SCENE}${key}`,
    ...pieces.flatMap(({ name, lines: own }): string[] => {
      const text = linesWritten(own);
      const id = [name, ...text].join("\n");
      const first = known.get(id);
      if (first !== undefined) return [`${PIECE}${name}${AS}${first}`];
      known.set(id, key);
      return [`${PIECE}${name}`, ...text];
    }),
  ]);
  return `${lines.join("\n")}\n`;
}

/** What did not stay; a corner that did stands without numbers before the points of its curve. */
function linesWritten(lines: readonly Line[]): readonly string[] {
  let corner = "";
  return lines.flatMap((line): string[] => {
    if (stays(line)) return [];
    const [own = "", along] = line.name.split(" +");
    const missing = along !== undefined && corner !== own ? [`${own}:`] : [];
    corner = own;
    return [...missing, written(line)];
  });
}

/** By scene, in the order of the file. */
export function readOutlines(text: string): ReadonlyMap<string, Outline> {
  const found = new Map<string, Outline>();
  let corner = "";
  let scene: { readonly key: string; readonly pieces: { name: string; lines: Line[] }[] } | undefined;
  for (const row of text.split("\n").filter((one) => one !== "")) {
    if (row.startsWith(SCENE)) {
      scene = { key: row.slice(SCENE.length), pieces: [] };
      found.set(scene.key, scene);
    } else if (row.startsWith(PIECE)) {
      const [name = "", first] = row.slice(PIECE.length).split(AS);
      const same = first === undefined ? undefined : found.get(first)?.pieces.find((piece) => piece.name === name);
      scene?.pieces.push({ name, lines: [...(same?.lines ?? [])] });
    } else {
      const [name = "", numbers = ""] = row.split(":");
      const at = numbers
        .split(" ")
        .filter((one) => one !== "")
        .map(Number);
      if (!name.startsWith("+")) corner = name;
      const isCornerAlone = at.length === 0 && !WITHOUT_NUMBERS.test(name);
      if (!isCornerAlone) scene?.pieces.at(-1)?.lines.push({ name: name === corner ? name : `${corner} ${name}`, at });
    }
  }
  return found;
}

// Held against each other.

interface Difference {
  readonly scene: string;
  readonly piece: string;
  /** In words. */
  readonly what: string;
  /** mm; not finite where something came or went. */
  readonly by: number;
}

/** What is other than it was kept, the furthest moved of each piece first; `most`: what counts as nothing, mm. */
export function differences(kept: Outline | undefined, now: Outline, most: number): readonly Difference[] {
  if (kept === undefined) return [{ scene: now.key, piece: "", what: "is new: nothing is kept of it", by: Infinity }];
  const before = new Map(kept.pieces.map((piece) => [piece.name, piece]));
  const after = new Set(now.pieces.map(({ name }) => name));
  return [
    ...kept.pieces.flatMap(({ name }): Difference[] =>
      after.has(name) ? [] : [{ scene: now.key, piece: name, what: "is gone", by: Infinity }],
    ),
    ...now.pieces.flatMap((piece): readonly Difference[] => {
      const was = before.get(piece.name);
      return was === undefined
        ? [{ scene: now.key, piece: piece.name, what: "is new", by: Infinity }]
        : differencesOf(now.key, was, piece, most);
    }),
  ];
}

function differencesOf(scene: string, kept: Drawn, is: Drawn, most: number): readonly Difference[] {
  const before = new Map(kept.lines.map(({ name, at }) => [name, at]));
  const after = new Set(is.lines.map(({ name }) => name));
  const piece = is.name;
  return [
    ...kept.lines
      .filter(({ name }) => !after.has(name))
      .map(({ name }): Difference => ({ scene, piece, what: `${said(name)} is gone`, by: Infinity })),
    ...is.lines.flatMap((line): Difference[] => {
      const { name, at, was } = line;
      // What is not kept stayed where it was.
      const old = before.get(name) ?? was;
      if (old === undefined) return [{ scene, piece, what: `${said(name)} is new`, by: Infinity }];
      const by = apart(at, old);
      return by <= most ? [] : [{ scene, piece, what: `${said(name)} moved ${mm(by)}${ways(at, old)}`, by }];
    }),
  ];
}

const said = (name: string): string => {
  const [corner = "", share] = name.split(" +");
  return share === undefined ? corner : `the line ${share} of the way after ${corner}`;
};

const mm = (value: number): string => `${value.toFixed(2)} mm`;

function ways(at: readonly number[], old: readonly number[]): string {
  const [x = 0, y = 0] = at.map((value, i) => value - (old[i] ?? 0));
  return at.length === 2
    ? ` (${mm(Math.abs(x))} ${x < 0 ? "in" : "out"}, ${mm(Math.abs(y))} ${y < 0 ? "up" : "down"})`
    : "";
}

/** The furthest first, then how many more, how to look and how to accept. */
export function told(found: readonly Difference[], scenes: number): string {
  const first = found.toSorted((a, b) => (a.by === b.by ? 0 : b.by - a.by))[0];
  if (first === undefined) return "";
  const others = new Set(found.map(({ scene }) => scene)).size - 1;
  return [
    `${first.scene}: ${[first.piece, first.what].filter((one) => one !== "").join(" ")};`,
    `${found.length - 1} other differences, ${others} other scenes of ${scenes}.`,
    `To look: npm run gallery -- --only "${first.scene}".`,
    "Where it is meant: npm run outlines, and the change of the files is looked at in review.",
  ].join(" ");
}
