/**
 * The printed tissue: every size of a piece, with what can be seen on it. Points carry the trade's words; seams are lines of
 * many short stretches. Darts, the bust point and the ends of level lines are printed; handles of curves are not there.
 */
import type { Nest, Piece, PieceName } from "../../src/core/pattern/piece";

export interface Place {
  readonly x: number;
  readonly y: number;
}

export interface Line {
  readonly seam: string;
  readonly from: string;
  readonly to: string;
  /** From one end to the other, both included. */
  readonly along: readonly Place[];
  /** The mouth of a dart: not sewn. */
  readonly isMouth: boolean;
}

export interface Paper {
  readonly places: ReadonlyMap<string, Place>;
  /** All the way round. */
  readonly lines: readonly Line[];
  readonly darts: readonly {
    readonly name: string;
    readonly inner: string;
    readonly outer: string;
    readonly apex: string;
  }[];
}

/** Points that are on no tissue: corners of our own making inside a line that runs on, and bends that no word names. */
const UNSEEN = /^(?:armholeHinge|bandTopMiddle|waistMiddle|cut\d|bend\d+)$/;
const STEPS = 48;

function curved(piece: Piece, index: number): readonly Place[] {
  const edge = piece.edges[index];
  const [a, b] = [piece.points[edge?.from ?? "cut1"]?.at, piece.points[edge?.to ?? "cut1"]?.at];
  if (edge === undefined || a === undefined || b === undefined) throw new Error("an edge without ends");
  const { curve } = edge;
  if (curve === null) return [a, b];
  return Array.from({ length: STEPS + 1 }, (_, i) => {
    const t = i / STEPS;
    const [p, q, r, s] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
    return {
      x: p * a.x + q * curve.c1.x + r * curve.c2.x + s * b.x,
      y: p * a.y + q * curve.c1.y + r * curve.c2.y + s * b.y,
    };
  });
}

/** One piece as it lies: seams run from one point that can be seen to the next. */
export function paperOf(piece: Piece): Paper {
  const lines: Line[] = [];
  piece.edges.forEach((edge, index) => {
    const along = curved(piece, index);
    const last = lines.at(-1);
    if (last !== undefined && UNSEEN.test(last.to) && last.seam === edge.seam)
      lines[lines.length - 1] = { ...last, to: edge.to, along: [...last.along, ...along.slice(1)] };
    else lines.push({ seam: edge.seam, from: edge.from, to: edge.to, along, isMouth: edge.mouthOf !== null });
  });
  return {
    places: new Map(Object.entries(piece.points).flatMap(([name, { at }]) => (UNSEEN.test(name) ? [] : [[name, at]]))),
    lines,
    darts: piece.darts,
  };
}

/** The tissue of a pattern: a piece in a size, of a cup version where the sheet names one. */
export interface Tissue {
  readonly paper: (piece: PieceName, size: string, cup: string | null) => Paper | null;
}

/** What is printed of a cup version; null: the pattern has none. */
export interface PrintedCup {
  readonly cup: string | null;
  readonly nest: Nest;
}

/** Pieces that no cup is named of are the same in all. */
export function tissueOf(versions: readonly PrintedCup[]): Tissue {
  return {
    paper: (name, size, cup) => {
      const nest = (cup === null ? versions[0] : versions.find((one) => one.cup === cup))?.nest;
      const piece = nest?.sizes[nest.labels.indexOf(size)]?.find((one) => one.name === name);
      return piece === undefined ? null : paperOf(piece);
    },
  };
}
