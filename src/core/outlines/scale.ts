/** How long a unit of the file is, and what proves it. */
import type { FileDrawing, FilePlace } from "../decisions/fileDrawing";
import type { OwnPattern } from "../decisions/ownPattern";
import { distance, type SheetPoint } from "../geometry/point";
import { SCALES_AGREE, SQUARE_CORNER, SQUARE_ENDS, SQUARE_SIDES } from "../tolerance";
import { MM_PER_CM, MM_PER_INCH, type Mm } from "../units";
import { groupedBy } from "./groupedBy";
import type { Scale, TestSquare } from "./outlineReading";
import { strokesOf, type Stroke } from "./strokes";

/** Sides of squares that are printed to test a scale (common practice, no source). */
const USUAL_SIDES: readonly Mm[] = [20, 30, 40, 50, 100, MM_PER_INCH, 2 * MM_PER_INCH, 4 * MM_PER_INCH];

/** A square as the file has it: everything in the file's units. */
interface FoundSquare {
  /** Keys of the lines that it is drawn of. */
  readonly keys: readonly string[];
  readonly middle: FilePlace;
  readonly width: number;
  readonly height: number;
  /** Lengths that stand written in it or beside it, the nearest first: of squares drawn one in the other, those of both. */
  readonly written: readonly Written[];
}

interface Written {
  readonly width: Mm;
  readonly height: Mm;
}

/** Four corners, in order round, where that is what points come to; corners on a straight side are passed over. */
export function fourCorners(points: readonly SheetPoint[]): readonly SheetPoint[] | null {
  const corners = points.filter((point, at) => {
    const before = points.at(at - 1) ?? point;
    const after = points[(at + 1) % points.length] ?? point;
    const cross = (point.x - before.x) * (after.y - point.y) - (point.y - before.y) * (after.x - point.x);
    return Math.abs(cross) > SQUARE_CORNER * distance(before, point) * distance(point, after);
  });
  if (corners.length !== 4) return null;
  const isRight = corners.every((point, at) => {
    const before = corners.at(at - 1) ?? point;
    const after = corners[(at + 1) % 4] ?? point;
    const along = (point.x - before.x) * (after.x - point.x) + (point.y - before.y) * (after.y - point.y);
    return Math.abs(along) <= SQUARE_CORNER * distance(before, point) * distance(point, after);
  });
  return isRight ? corners : null;
}

/** Lines of four straight stretches at most that may be sides of a square. */
const isStraight = ({ edges }: Stroke): boolean => edges.length <= 8 && edges.every(({ curve }) => curve === null);

/** Rings of separate straight lines, each end met by one other end alone. */
function ringsOfLines(lines: readonly Stroke[], within: number): readonly (readonly Stroke[])[] {
  const cellOf = (p: SheetPoint): string => `${Math.round(p.x / within)} ${Math.round(p.y / within)}`;
  const near = (p: SheetPoint): readonly string[] =>
    [-1, 0, 1].flatMap((dx) =>
      [-1, 0, 1].map((dy) => `${Math.round(p.x / within) + dx} ${Math.round(p.y / within) + dy}`),
    );
  const ends = new Map<string, Stroke[]>();
  for (const line of lines)
    for (const end of [line.a, line.b]) {
      const cell = ends.get(cellOf(end));
      if (cell === undefined) ends.set(cellOf(end), [line]);
      else cell.push(line);
    }
  const others = (line: Stroke, end: SheetPoint): readonly Stroke[] =>
    near(end)
      .flatMap((cell) => (ends.get(cell) ?? []).slice(0, 4))
      .filter((other) => other !== line && Math.min(distance(other.a, end), distance(other.b, end)) <= within);
  const used = new Set<Stroke>();
  const rings: Stroke[][] = [];
  for (const line of lines) {
    if (used.has(line)) continue;
    const ring = [line];
    let end = line.b;
    for (let side = 0; side < 4; side += 1) {
      const [next, more] = others(ring.at(-1) ?? line, end);
      if (next === undefined || more !== undefined || used.has(next)) break;
      if (next === line) {
        for (const one of ring) used.add(one);
        rings.push(ring);
        break;
      }
      if (ring.includes(next)) break;
      ring.push(next);
      end = distance(next.a, end) <= within ? next.b : next.a;
    }
  }
  return rings;
}

function cornersOfRing(ring: readonly Stroke[], within: number): readonly SheetPoint[] {
  const points: SheetPoint[] = [];
  for (const line of ring) {
    const all = [line.a, ...line.edges.map(({ b }) => b)];
    const last = points.at(-1);
    const second = ring[1];
    const isTurned =
      last === undefined
        ? second !== undefined && Math.min(distance(line.a, second.a), distance(line.a, second.b)) <= within
        : distance(line.a, last) > within;
    points.push(...(isTurned ? all.toReversed() : all).slice(last === undefined ? 0 : 1));
  }
  return points.slice(0, -1);
}

const LENGTH = String.raw`(\d+(?:[.,]\d+)?)`;
const UNIT = String.raw`(mm|cm|in(?:ch(?:es)?)?|["″”])`;
const WRITTEN = new RegExp(String.raw`${LENGTH}\s*${UNIT}?(?:\s*[x×*]\s*${LENGTH}\s*${UNIT}?)?(?![\w%])`, "giu");

function mmOf(unit: string): Mm {
  const said = unit.toLowerCase();
  return said === "mm" ? 1 : said === "cm" ? MM_PER_CM : MM_PER_INCH;
}

/** A length as it stands beside a square: "5 cm", "2 in x 2 in"; null where there is none, or more than one. */
function writtenSquare(text: string): { readonly width: Mm; readonly height: Mm } | null {
  const found = [...text.matchAll(WRITTEN)].flatMap(([, one = "", oneUnit, other, otherUnit]) => {
    const unit = oneUnit ?? otherUnit;
    if (unit === undefined) return [];
    const width = Number(one.replace(",", ".")) * mmOf(oneUnit ?? unit);
    const height = other === undefined ? width : Number(other.replace(",", ".")) * mmOf(otherUnit ?? unit);
    return width > 0 && height > 0 ? [{ width, height }] : [];
  });
  const [first] = found;
  if (first === undefined) return null;
  // In two units at once: one of them is rounded, and which is not said, but both say the same square.
  const alike = found.every(({ width }) => Math.abs(width / first.width - 1) <= 4 * SQUARE_SIDES);
  return alike ? first : null;
}

/** Near-squares of the drawing. */
function findSquares(drawing: FileDrawing): readonly FoundSquare[] {
  const strokes = strokesOf(drawing, 1);
  const whole = Math.max(1, ...strokes.map(({ box }) => Math.max(box.max.x - box.min.x, box.max.y - box.min.y)));
  const within = whole * SQUARE_ENDS;
  const straight = strokes.filter((stroke) => isStraight(stroke));
  const closed = straight.filter((stroke) => stroke.closed);
  const byLook = groupedBy(
    straight.filter((stroke) => !stroke.closed),
    ({ key }) => key.split(":")[0] ?? "",
  );
  const rings: readonly { readonly keys: readonly string[]; readonly points: readonly SheetPoint[] }[] = [
    ...closed.map(({ key, edges }) => ({ keys: [key], points: edges.map(({ a }) => a) })),
    ...[...byLook.values()].flatMap((lines) =>
      ringsOfLines(lines, within).map((ring) => ({
        keys: ring.map(({ key }) => key),
        points: cornersOfRing(ring, within),
      })),
    ),
  ];
  return rings.flatMap(({ keys, points }) => {
    const corners = fourCorners(points);
    const [p, q, r] = corners ?? [];
    if (p === undefined || q === undefined || r === undefined) return [];
    const [width, height] = [distance(p, q), distance(q, r)];
    if (Math.abs(width / height - 1) > SQUARE_SIDES) return [];
    const middle = { x: (p.x + r.x) / 2, y: (p.y + r.y) / 2 };
    return [{ keys, middle, width, height, written: writtenAt(drawing, middle, width) }];
  });
}

/** What is written inside a square or just beside it and is the length of a square; the nearest first. */
function writtenAt(drawing: FileDrawing, middle: FilePlace, side: number): FoundSquare["written"] {
  const near = drawing.writings
    .map(({ x, y, text }) => ({ text, off: Math.max(Math.abs(x - middle.x), Math.abs(y - middle.y)) }))
    .filter(({ off }) => off <= 1.5 * side)
    .toSorted((one, other) => one.off - other.off);
  return near.flatMap(({ text }) => {
    const written = writtenSquare(text);
    return written !== null && Math.abs(written.width / written.height - 1) <= 2 * SQUARE_SIDES ? [written] : [];
  });
}

/** mm in a unit, if a square is what is written. */
const provenBy = (is: Written, { width, height }: Pick<FoundSquare, "width" | "height">): Mm =>
  (is.width + is.height) / (width + height);

/** Of what is written at a square, what agrees with a scale; else the nearest. */
const meantBy = (square: FoundSquare, mm: Mm | null): Written | null =>
  square.written.find((is) => mm !== null && agree(provenBy(is, square), mm)) ?? square.written[0] ?? null;

const nearUsual = (side: Mm): Mm | null =>
  USUAL_SIDES.find((usual) => Math.abs(side / usual - 1) <= SCALES_AGREE) ?? null;

const agree = (one: Mm, other: Mm): boolean => Math.abs(one / other - 1) <= SCALES_AGREE;

/** The scale, and which of the squares test it. */
export interface ReadScale {
  readonly scale: Omit<Scale, "squares">;
  /** mm in a unit, so that something can be shown: 1 where it has to be asked for. */
  readonly mm: Mm;
  readonly squares: readonly (Omit<FoundSquare, "written"> & { readonly usual: TestSquare["usual"] })[];
}

/**
 * Her own length goes before a square, a square before the file's word. Without any of them `scale.mm` is null.
 */
export function readScale(own: Pick<OwnPattern, "drawing" | "known">): ReadScale {
  const { drawing } = own;
  const found = findSquares(drawing);
  const said = drawing.unit !== null && drawing.unit.mm > 0 ? drawing.unit : null;
  const known = knownScale(own.known);
  // Without another word, the scale that something written at every square agrees with.
  const withWords = found.filter((square) => square.written.length > 0);
  const word =
    withWords[0]?.written
      .map((is) => provenBy(is, withWords[0] ?? { width: 1, height: 1 }))
      .find((mm) => withWords.every((square) => square.written.some((is) => agree(provenBy(is, square), mm)))) ?? null;
  const base = known ?? said?.mm ?? word;
  const read = found.map((square) => ({ ...square, written: meantBy(square, base) }));
  const written = read.flatMap(({ written: is, ...square }) => (is === null ? [] : [provenBy(is, square)]));
  const [byWriting] = written;
  const isOneWriting = byWriting !== undefined && written.every((mm) => agree(mm, byWriting));
  const proofs = [known, said?.mm ?? null, ...written].filter((mm) => mm !== null);
  const disagree = proofs.some((one) => proofs.some((other) => !agree(one, other)));
  const trusted = known ?? said?.mm ?? (isOneWriting ? byWriting : null);
  const fits =
    trusted !== null &&
    read.some(({ written: is, width, height }) => {
      const side = ((width + height) / 2) * trusted;
      return is === null ? nearUsual(side) !== null : agree(is.width, side);
    });
  const by = known !== null ? "known" : trusted === null ? null : fits || said === null ? "square" : "file";
  const mm = trusted ?? 1;
  const squares = read.flatMap((square) => {
    const side = nearUsual(((square.width + square.height) / 2) * mm);
    const usual = square.written ?? (trusted === null || side === null ? null : { width: side, height: side });
    // Where the scale is known a square of no usual size tests nothing; where it is not, any may.
    return usual === null && trusted !== null ? [] : [{ ...square, usual }];
  });
  return { scale: { mm: trusted, by, said: drawing.unit, known, disagree }, mm, squares };
}

function knownScale(known: OwnPattern["known"]): Mm | null {
  if (known === undefined) return null;
  const apart = Math.hypot(known.to.x - known.from.x, known.to.y - known.from.y);
  return apart > 0 && known.length > 0 ? known.length / apart : null;
}
