import Parser, { type IBlock, type IEntity } from "dxf-parser";
import { Bezier } from "bezier-js";
import { describe, expect, it } from "vitest";
import type { TruePiece } from "../../src/core/cutting/truePiece";
import { piecePoint } from "../../src/core/geometry/point";
import { invariant } from "../../src/core/result";
import { radians } from "../../src/core/units";
import { writeDxf } from "../../src/paper/dxf";
import { AWKWARD } from "../support/inkPages";
import { HAND_FRONT, HAND_STRAP } from "../support/truePieces";

interface Place {
  readonly x: number;
  readonly y: number;
}

/** Entities as dxf-parser gives them, with what each kind has of places and writing. */
interface Entity extends IEntity {
  readonly position?: Place;
  readonly vertices?: readonly Place[];
  readonly startPoint?: Place;
  readonly shape?: boolean;
  readonly thickness?: number;
  readonly text?: string;
  readonly textHeight?: number;
  readonly rotation?: number;
  readonly name?: string;
}

const OPTIONS = { style: "Side dart and waist dart", sizeName: "Mary", day: "2025-03-04" };
const PIECES = [HAND_FRONT, HAND_STRAP];
const TEXT = writeDxf(PIECES, OPTIONS);

const parsed = invariant(new Parser().parseSync(TEXT), "a drawing");
const blockOf = (piece: TruePiece): IBlock => invariant(parsed.blocks[piece.key], `block ${piece.key}`);
const entitiesOf = (piece: TruePiece, layer: number, type: string): Entity[] =>
  (blockOf(piece).entities as Entity[]).filter((entity) => entity.layer === String(layer) && entity.type === type);

/** As it is written: y upward, rounded to 0.001 mm. */
const written = ({ x, y }: Place): Place => ({
  x: Math.round(x * 1000) / 1000 + 0,
  y: Math.round(-y * 1000) / 1000 + 0,
});
const placesOf = (entities: readonly Entity[]): Place[] =>
  entities.map(({ position = { x: NaN, y: NaN } }) => ({ x: position.x, y: position.y }));
const lineOf = ({ vertices = [] }: Entity): Place[] => vertices.map(({ x, y }) => ({ x, y }));

describe("the drawing", () => {
  it("is of release 12, in mm", () => {
    expect(parsed.header).toMatchObject({ $ACADVER: "AC1009", $INSUNITS: 4, $MEASUREMENT: 1 });
  });

  it("is ASCII without control codes, in pairs of lines that end as release 12 ends them", () => {
    const awkward = writeDxf(PIECES, { ...OPTIONS, style: `${AWKWARD} 100%%d`, sizeName: "34½″ Żółć" });
    expect(awkward).toMatch(/^[\x20-\x7E\r\n]*$/);
    expect(awkward).toContain('Style Name: Lodz Zh "quotes" <&> ? 100% %d\r\n');
    expect(awkward).toContain('Size: 34 1/2" Zolc\r\n');
    const lines = awkward.split("\r\n");
    expect(lines.length % 2).toBe(1);
    expect(lines.filter((line, i) => i % 2 === 0 && i < lines.length - 1 && !/^ {0,2}\d{1,3}$/.test(line))).toEqual([]);
    expect(lines.slice(-3)).toEqual(["  0", "EOF", ""]);
  });

  it("has no number with an exponent and no negative zero", () => {
    expect(TEXT).not.toMatch(/^-?\d+(?:\.\d+)?e[-+]?\d+\r$/im);
    expect(TEXT).not.toMatch(/^-0\r$/m);
  });

  it("lists each layer that it uses", () => {
    const layers = (parsed.tables.layer.layers ?? {}) as Record<string, unknown>;
    const used = new Set(
      [...Object.values(parsed.blocks).flatMap(({ entities }) => entities), ...parsed.entities].map(
        ({ layer }) => layer,
      ),
    );
    expect([...used].filter((layer) => layers[layer] === undefined)).toEqual([]);
    expect(used.size).toBe(10);
  });

  it("has one block for each piece, and each once on the sheet", () => {
    expect(Object.keys(parsed.blocks)).toEqual(["front", "strap-left-12"]);
    const inserts = (parsed.entities as Entity[]).filter(({ type }) => type === "INSERT");
    expect(inserts.map(({ name }) => name)).toEqual(["front", "strap-left-12"]);
  });

  it("lays the pieces beside each other, 20 mm apart", () => {
    const pieces = [...PIECES, { ...HAND_FRONT, key: "front-right" }];
    const drawing = invariant(new Parser().parseSync(writeDxf(pieces, OPTIONS)), "a drawing");
    const inserts = (drawing.entities as Entity[]).filter(({ type }) => type === "INSERT");
    const spans = pieces.map(({ cutting }, i) => {
      const xs = cutting.map(({ at }) => at.x + (inserts[i]?.position?.x ?? NaN));
      return [Math.min(...xs), Math.max(...xs)];
    });
    // The front is 210 mm wide, the strap 50.
    expect(spans).toEqual([
      [0, 210],
      [230, 280],
      [300, 510],
    ]);
    expect(inserts.map(({ position }) => position?.y)).toEqual([0, 0, 0]);
  });

  it("says the style, the day and the unit under the pieces", () => {
    const texts = (parsed.entities as Entity[]).filter(({ type }) => type === "TEXT");
    expect(texts.map(({ text }) => text)).toEqual([
      "Style Name: Side dart and waist dart",
      "Creation Date: 2025-03-04",
      "Author: Bodicewright",
      "Sample Size: Mary",
      "Units: METRIC",
    ]);
    expect(Math.max(...texts.map(({ startPoint }) => startPoint?.y ?? NaN))).toBeLessThan(-650);
  });

  it("is empty of pieces where there are none", () => {
    const empty = invariant(new Parser().parseSync(writeDxf([], OPTIONS)), "a drawing");
    expect(empty.entities.map(({ type }) => type)).toEqual(["TEXT", "TEXT", "TEXT", "TEXT", "TEXT"]);
  });
});

describe.each(PIECES.map((piece) => [piece.key, piece] as const))("the block of %s", (_key, piece) => {
  it("has the cutting line as its boundary, closed", () => {
    const boundary = entitiesOf(piece, 1, "POLYLINE");
    expect(boundary).toHaveLength(1);
    expect(boundary.map(({ shape }) => shape)).toEqual([true]);
    expect(boundary.flatMap(lineOf)).toEqual(piece.cutting.map(({ at }) => written(at)));
  });

  it("has its corners as turn points and the rest as curve points", () => {
    expect(placesOf(entitiesOf(piece, 2, "POINT"))).toEqual(
      piece.cutting.filter(({ corner }) => corner).map(({ at }) => written(at)),
    );
    expect(placesOf(entitiesOf(piece, 3, "POINT"))).toEqual(
      piece.cutting.filter(({ corner }) => !corner).map(({ at }) => written(at)),
    );
  });

  it("has its notches on the boundary", () => {
    expect(placesOf(entitiesOf(piece, 4, "POINT"))).toEqual(piece.notches.map(({ cut }) => written(cut)));
  });

  it("has its grain line", () => {
    expect(entitiesOf(piece, 7, "LINE").map(lineOf)).toEqual([piece.grain.map(written)]);
  });

  it("has its fold as mirror line, and its drill holes", () => {
    // Unbroken from the upper end of the boundary on the fold to the lower one, allowances included.
    const onFold = piece.cutting.map(({ at }) => at).filter(({ x }) => piece.fold.length > 0 && x === 0);
    expect(onFold).toHaveLength(piece.fold.length === 0 ? 0 : 2);
    expect(entitiesOf(piece, 6, "LINE").map(lineOf)).toEqual(onFold.length === 0 ? [] : [onFold.map(written)]);
    expect(placesOf(entitiesOf(piece, 13, "POINT"))).toEqual(piece.drills.map(({ at }) => written(at)));
  });

  it("has a closed stitch line that goes through every corner", () => {
    const sewn = entitiesOf(piece, 14, "POLYLINE");
    expect(sewn.map(({ shape }) => shape)).toEqual([true]);
    expect(sewn.flatMap(lineOf)).toEqual(expect.arrayContaining(piece.stitch.map(({ a }) => written(a))));
  });
});

describe("the lines of the front", () => {
  it("leave their curves by no more than 0.05 mm", () => {
    const scoop = new Bezier([
      { x: 150, y: 0 },
      { x: 150, y: -40.25 },
      { x: 160, y: -80.5 },
      { x: 200, y: -80.5 },
    ]);
    const points = entitiesOf(HAND_FRONT, 14, "POLYLINE").flatMap(lineOf);
    const from = points.findIndex(({ x, y }) => x === 150 && y === 0);
    const to = points.findIndex(({ x, y }) => x === 200 && y === -80.5);
    expect(to - from).toBeGreaterThan(3);
    const middles = points.slice(from, to).map((p, i) => {
      const q = invariant(points[from + i + 1], "the next point");
      return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
    });
    // Places on the curve some 0.006 mm apart.
    const along = Array.from({ length: 20_001 }, (_, i) => scoop.get(i / 20_000));
    const away = (place: Place): number =>
      along.reduce((least, { x, y }) => Math.min(least, Math.hypot(place.x - x, place.y - y)), Infinity);
    expect(Math.max(...points.slice(from, to + 1).map(away))).toBeLessThan(0.01);
    expect(Math.max(...middles.map(away))).toBeLessThan(0.05);
  });

  it("have a straight dart leg and level as a line, bent ones as open polylines", () => {
    expect(entitiesOf(HAND_FRONT, 8, "LINE").map(lineOf)).toEqual([
      [
        { x: 80, y: -300 },
        { x: 95, y: -160 },
      ],
      [
        { x: 0, y: -140 },
        { x: 200, y: -140 },
      ],
      [
        { x: 0, y: -240 },
        { x: 200, y: -240 },
      ],
    ]);
    const bent = entitiesOf(HAND_FRONT, 8, "POLYLINE");
    expect(bent.map(({ shape }) => shape)).toEqual([false, false]);
    const ends = bent.map(lineOf).map((line) => [line[0], line.at(-1)]);
    expect(ends).toEqual([
      [
        { x: 110, y: -300 },
        { x: 95, y: -160 },
      ],
      [
        { x: 0, y: -290 },
        { x: 200, y: -295 },
      ],
    ]);
  });

  it("have the fold of a vent as an inner line, named beside it", () => {
    const vented: TruePiece = { ...HAND_FRONT, ventFold: [piecePoint(0, 150), piecePoint(0, 315)] };
    const { blocks } = invariant(new Parser().parseSync(writeDxf([vented], OPTIONS)), "a drawing");
    const entities = invariant(blocks[vented.key], "block").entities as Entity[];
    const inner = entities.filter(({ layer, type }) => layer === "8" && type === "LINE").map(lineOf);
    expect(inner).toContainEqual([
      { x: 0, y: -150 },
      { x: 0, y: -315 },
    ]);
    expect(entities.find(({ text }) => text === "vent fold")).toMatchObject({ layer: "15", rotation: 90 });
    expect(TEXT).not.toContain("vent fold");
  });

  it("have the mark of a strap as a notch that is named", () => {
    const notch = { kind: "strap", number: 0, seam: "strap", outward: radians(-Math.PI / 2) } as const;
    const strapped: TruePiece = {
      ...HAND_FRONT,
      notches: [{ ...notch, stitch: piecePoint(75, 0), cut: piecePoint(75, -10) }],
    };
    const { blocks } = invariant(new Parser().parseSync(writeDxf([strapped], OPTIONS)), "a drawing");
    const entities = invariant(blocks[strapped.key], "block").entities as Entity[];
    expect(placesOf(entities.filter(({ layer }) => layer === "4"))).toEqual([{ x: 75, y: 10 }]);
    expect(entities.find(({ text }) => text === "strap")).toMatchObject({ layer: "15" });
  });

  it("tells how deep each notch is and which way it goes", () => {
    // As deep as on paper: 5 mm of 10 and of 15 mm; of 6 mm, three fifths.
    expect(entitiesOf(HAND_FRONT, 4, "POINT").map(({ thickness }) => thickness)).toEqual([5, 5, 5]);
    const [side, ...others] = HAND_FRONT.notches;
    const narrow = { ...invariant(side, "notch"), cut: piecePoint(206, 200) };
    const shallow = writeDxf([{ ...HAND_FRONT, notches: [narrow, ...others] }], OPTIONS);
    expect([...shallow.matchAll(/ 39\r\n([\d.]+)\r\n/g)].map(([, depth]) => Number(depth))).toEqual([3.6, 5, 5]);
    // dxf-parser passes over the angle: it is read here as it stands. Inward from the right, from above and from below.
    expect([...TEXT.matchAll(/ 39\r\n[\d.]+\r\n 50\r\n([\d.]+)\r\n/g)].map(([, angle]) => Number(angle))).toEqual([
      180, 270, 90, 0,
    ]);
  });
});

describe("the writing of a block", () => {
  const textsOf = (piece: TruePiece, layer: number): (string | undefined)[] =>
    entitiesOf(piece, layer, "TEXT").map(({ text }) => text);

  it("says the piece, its size and how often it is cut", () => {
    expect(textsOf(HAND_FRONT, 1)).toEqual(["Piece Name: Front", "Size: Mary", "Quantity: 1"]);
    expect(textsOf(HAND_STRAP, 1)).toEqual(["Piece Name: Strap, left", "Size: 12", "Quantity: 2"]);
  });

  it.each(PIECES.map((piece) => [piece.key, piece] as const))(
    "stands within the title's box of %s, line under line",
    (_key, piece) => {
      const { centre, width, height } = piece.title;
      const how = entitiesOf(piece, 15, "TEXT").filter(({ text }) => text?.startsWith("Cut") === true);
      const lines = [...entitiesOf(piece, 1, "TEXT"), ...how];
      const corners = lines.map(({ startPoint }) => invariant(startPoint, "a place"));
      expect(Math.max(...corners.map(({ x }) => Math.abs(x - centre.x)))).toBeLessThanOrEqual(width / 2 + 0.001);
      expect(Math.max(...corners.map(({ y }) => Math.abs(y + centre.y)))).toBeLessThanOrEqual(height / 2 + 0.001);
      expect(new Set(corners.map(({ x, y }) => (width > height ? y : x))).size).toBe(lines.length);
      const heights = lines.map(({ textHeight }) => textHeight ?? NaN);
      expect(Math.min(...heights)).toBeGreaterThanOrEqual(2);
      expect(Math.max(...heights)).toBeLessThanOrEqual(4);
    },
  );

  it("runs upward where the box is higher than wide", () => {
    expect(entitiesOf(HAND_FRONT, 1, "TEXT").map(({ rotation = 0 }) => rotation)).toEqual([0, 0, 0]);
    expect(entitiesOf(HAND_STRAP, 1, "TEXT").map(({ rotation = 0 }) => rotation)).toEqual([90, 90, 90]);
  });

  it("says how to cut it, and where the bust point is", () => {
    expect(textsOf(HAND_FRONT, 15)).toEqual(["Cut 1 on the fold", "Cut too: [ ] lining [ ] interfacing", "Bust point"]);
    expect(textsOf(HAND_STRAP, 15)).toEqual(["Cut 2, one turned over"]);
  });

  it("says what else is cut by it where that is known, and nothing for a toile", () => {
    const tooOn = (also: TruePiece["also"], toile?: true): readonly string[] =>
      writeDxf([{ ...HAND_FRONT, ...(also === undefined ? {} : { also }) }], {
        ...OPTIONS,
        ...(toile === undefined ? {} : { toile }),
      })
        .split("\r\n")
        .filter((line) => line.startsWith("Cut too"));
    expect(tooOn(["interfacing"])).toEqual(["Cut too: [ ] interfacing"]);
    expect(tooOn(["underlining", "lining"])).toEqual(["Cut too: [ ] underlining [ ] lining"]);
    expect(tooOn([])).toEqual([]);
    expect(tooOn(["interfacing"], true)).toEqual([]);
  });
});
