import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FORMATS } from "../../../src/core/sheets/formats";
import { layPieces } from "../../../src/core/sheets/layPieces";
import type { SheetLayout, Tile, ToLay } from "../../../src/core/sheets/layout";
import { CoreBug } from "../../../src/core/result";
import { along, anyPieces, distances, inside, isOnTile, laidRings, rectangle, toLay, type Spot } from "./laid";

const usual = { format: FORMATS.A4, margin: 10, overlap: 10, gap: 5 };
/** A4 within its margins, and from page to page: 210 - 20 by 297 - 20, less 10. */
const WINDOW = { width: 190, height: 277 };
const STEP = { x: 180, y: 267 };
/** mm. What rounding may do to points that are turned and moved. */
const NOISE = 1e-6;
/** Many layouts in one test: slow on a busy machine. */
const PATIENCE = 240_000;

function laid(pieces: readonly ToLay[], options: Parameters<typeof layPieces>[1] = usual): SheetLayout {
  const layout = layPieces(pieces, options);
  if (!layout.ok) throw new Error(JSON.stringify(layout.failure));
  return layout.value;
}

const pages = (...pieces: readonly ToLay[]): number => laid(pieces).tiles.length;

describe("pages of one rectangle", () => {
  it("a window exactly: one page, be it upright or lying", () => {
    expect(pages(rectangle("a", 190, 277))).toBe(1);
    expect(pages(rectangle("a", 277, 190))).toBe(1);
  });

  it("10 mm wider or longer than a window: two", () => {
    expect(pages(rectangle("a", 200, 277))).toBe(2);
    expect(pages(rectangle("a", 190, 287))).toBe(2);
  });

  it("a hair wider than a window is long, both ways: four", () => {
    expect(pages(rectangle("a", 277.1, 277.1))).toBe(4);
  });

  it("as wide as two windows with their overlap, 180 + 190: two; 1 mm wider: three", () => {
    expect(pages(rectangle("a", 370, 277))).toBe(2);
    expect(pages(rectangle("a", 371, 277))).toBe(3);
  });

  it("a strip of 1000 mm: four pages along their long side (3 · 267 + 277 = 1078)", () => {
    expect(pages(rectangle("a", 1000, 60))).toBe(4);
    expect(pages(rectangle("a", 60, 1000))).toBe(4);
  });

  it("a strip longer than six pages one way: 4 · 267 + 277 = 1345, so 2000 mm needs eight", () => {
    expect(pages(rectangle("a", 2000, 60))).toBe(8);
  });

  it("is laid at the sheet's corner, with the windows where they belong", () => {
    const { tiles, width, height, columns, rows, joins } = laid([rectangle("a", 370, 277)]);
    expect(tiles).toEqual([
      { column: 0, row: 0, name: "A1", x: 0, y: 0, ...WINDOW },
      { column: 1, row: 0, name: "B1", x: STEP.x, y: 0, ...WINDOW },
    ]);
    expect({ width, height, columns, rows }).toEqual({ width: 370, height: 277, columns: 2, rows: 1 });
    expect(joins).toEqual([
      { at: { x: 185, y: 69.25 }, pages: ["A1", "B1"] },
      { at: { x: 185, y: 207.75 }, pages: ["A1", "B1"] },
    ]);
  });
});

describe("pieces of a long skirt", () => {
  // Lying, the first reaches over 1 + ceil((1250 - 190) / 180) = 7 pages in one row; upright over 2 by 5.
  it.each([
    ["A4", 230, 1250, 7],
    ["A4", 230, 2440, 14],
    // 7 by 3 lying, 5 by 5 upright.
    ["A4", 750, 1260, 21],
    // 1 + ceil((1250 - 195.9) / 185.9) = 7 by 1.
    ["Letter", 230, 1250, 7],
    // 1 + ceil((1720 - 277) / 267) = 7 by 1; upright 2 by 5.
    ["A3", 360, 1720, 7],
  ] as const)("on %s, %d by %d mm: %d pages", (format, width, height, most) => {
    const { placements, tiles } = laid([rectangle("skirt", width, height)], { ...usual, format: FORMATS[format] });
    expect(placements).toHaveLength(1);
    expect(tiles).toHaveLength(most);
  });

  const anySkirt = fc.array(fc.tuple(fc.integer({ min: 150, max: 700 }), fc.integer({ min: 400, max: 1500 })), {
    minLength: 1,
    maxLength: 3,
  });

  it.each(["A4", "Letter"] as const)(
    "any few of them on %s lie each on pages, apart",
    (format) => {
      fc.assert(
        fc.property(anySkirt, (sides) => {
          const pieces = sides.map(([width, height], index) => rectangle(`${index}`, width, height));
          const layout = laid(pieces, { ...usual, format: FORMATS[format] });
          const rings = laidRings(pieces, layout);
          const lost = rings.flatMap((ring) =>
            along(ring, 20).filter((spot) => !layout.tiles.some((tile) => isOnTile(spot, tile, 1e-3))),
          );
          expect(lost).toEqual([]);
          for (const apart of distances(rings)) expect(apart).toBeGreaterThanOrEqual(usual.gap - NOISE);
        }),
        { numRuns: 8 },
      );
    },
    PATIENCE,
  );
});

describe("pages of several pieces", () => {
  it("four rectangles with a gap between fill one page: 2 · 85 + 5 = 175, 2 · 130 + 5 = 265", () => {
    const four = ["a", "b", "c", "d"].map((key) => rectangle(key, 85, 130));
    expect(pages(...four)).toBe(1);
  });

  it("a small piece goes into the room that a large one leaves", () => {
    expect(pages(rectangle("large", 190, 400), rectangle("small", 150, 100))).toBe(2);
  });

  it("a small piece goes into the hollow of a large one", () => {
    const hollow = toLay("l", [
      [0, 0],
      [190, 0],
      [190, 60],
      [60, 60],
      [60, 277],
      [0, 277],
    ]);
    expect(pages(hollow, rectangle("small", 110, 190))).toBe(1);
  });

  it("pieces as long as five pages, each too wide to be moved down a little on its own: all are laid", () => {
    // Lying, each is 1 · 277 - 258 = 19 mm short of its window: less than the overlap, the gap and a cell.
    const pieces = [rectangle("front", 258, 855), rectangle("back", 258, 879), rectangle("facing", 265, 304)];
    const { placements } = laid(pieces, { ...usual, gap: 6 });
    expect(placements.map(({ key }) => key)).toEqual(["front", "back", "facing"]);
  });

  it("gives the placements in the order of the pieces", () => {
    const pieces = [rectangle("small", 50, 40), rectangle("large", 400, 300), rectangle("middling", 200, 90)];
    expect(laid(pieces).placements.map(({ key }) => key)).toEqual(["small", "large", "middling"]);
  });

  it("lays the same pieces the same way every time", () => {
    const pieces = [
      rectangle("a", 250, 410),
      rectangle("b", 300, 280),
      rectangle("c", 120, 80),
      rectangle("d", 260, 470),
    ];
    expect(laid(pieces)).toEqual(laid(pieces));
  });
});

describe.each([
  ["A4", 15],
  ["Letter", 6],
  ["A3", 6],
] as const)("any rings on %s", (name, numRuns) => {
  const options = { ...usual, format: FORMATS[name] };
  const runs = { numRuns };

  it(
    "keep the gap, by flatten-js",
    () => {
      fc.assert(
        fc.property(anyPieces(5), (pieces) => {
          const [least = Infinity] = distances(laidRings(pieces, laid(pieces, options))).toSorted((p, q) => p - q);
          expect(least).toBeGreaterThanOrEqual(options.gap - NOISE);
        }),
        runs,
      );
    },
    PATIENCE,
  );

  it(
    "lie wholly on pages, line and inside",
    () => {
      fc.assert(
        fc.property(anyPieces(4), (pieces) => {
          const layout = laid(pieces, options);
          const spots = laidRings(pieces, layout).flatMap((ring) => [...along(ring, 3), ...inside(ring, 9)]);
          const lost = spots.filter((spot) => !layout.tiles.some((tile) => isOnTile(spot, tile, 1e-3)));
          expect(lost).toEqual([]);
        }),
        runs,
      );
    },
    PATIENCE,
  );

  it(
    "run on from page to page: every short stretch of line lies whole on one page",
    () => {
      const STRETCH = 0.5;
      fc.assert(
        fc.property(anyPieces(4), (pieces) => {
          const layout = laid(pieces, options);
          const torn = laidRings(pieces, layout).flatMap((ring) => {
            const spots = along(ring, STRETCH);
            return spots.filter((spot, index) => {
              const next = spots[(index + 1) % spots.length] ?? spot;
              return !layout.tiles.some((tile) => isOnTile(spot, tile, STRETCH) && isOnTile(next, tile, STRETCH));
            });
          });
          expect(torn).toEqual([]);
        }),
        runs,
      );
    },
    PATIENCE,
  );

  it(
    "go on, wherever their line leaves a window, on a page that is joined to that one",
    () => {
      const STRETCH = 0.5;
      fc.assert(
        fc.property(anyPieces(4), (pieces) => {
          const layout = laid(pieces, options);
          const { tiles, joins } = layout;
          const joined = new Set(joins.flatMap(({ pages: [p, q] }) => [`${p} ${q}`, `${q} ${p}`]));
          const areJoined = (p: string, q: string): boolean =>
            joined.has(`${p} ${q}`) ||
            tiles.some(({ name: by }) => joined.has(`${p} ${by}`) && joined.has(`${by} ${q}`));
          const left = laidRings(pieces, layout).flatMap((ring) => {
            const spots = along(ring, STRETCH);
            return spots.flatMap((spot, index) => {
              const next = spots[(index + 1) % spots.length] ?? spot;
              return tiles
                .filter((tile) => isOnTile(spot, tile, -1e-3) && !isOnTile(next, tile, 1e-3))
                .map((tile) => ({ tile, next }));
            });
          });
          // Where it leaves, it is within the next page by the whole overlap, but for the stretch just gone.
          const lost = left.filter(
            ({ tile, next }) => !tiles.some((other) => areJoined(tile.name, other.name) && isOnTile(next, other, 1e-3)),
          );
          expect(lost).toEqual([]);
        }),
        runs,
      );
    },
    PATIENCE,
  );

  it(
    "need every page: for something that no other shows, or to join two that a piece goes between by their corner",
    () => {
      fc.assert(
        fc.property(anyPieces(4), (pieces) => {
          const { tiles, ...rest } = laid(pieces, options);
          const rings = laidRings(pieces, { tiles, ...rest }).map((ring) => [...along(ring, 0.5), ...inside(ring, 9)]);
          const own = (tile: Tile): boolean =>
            rings.some((spots) =>
              spots.some(
                (spot) =>
                  isOnTile(spot, tile, 0) && tiles.every((other) => other === tile || !isOnTile(spot, other, 0)),
              ),
            );
          const joinsCorner = (tile: Tile): boolean => {
            const beside = tiles.filter(({ column, row }) => row === tile.row && Math.abs(column - tile.column) === 1);
            const above = tiles.filter(({ column, row }) => column === tile.column && Math.abs(row - tile.row) === 1);
            const shows = (spots: readonly Spot[], some: readonly Tile[]): boolean =>
              spots.some((spot) => some.some((other) => isOnTile(spot, other, 0)));
            return rings.some((spots) => shows(spots, beside) && shows(spots, above));
          };
          expect(tiles.filter((tile) => !own(tile) && !joinsCorner(tile))).toEqual([]);
        }),
        runs,
      );
    },
    PATIENCE,
  );
});

describe("a roll", () => {
  const roll = { ...usual, format: FORMATS["36 in roll"] };
  /** 36 in less the margins. */
  const across = 894.4;

  it("is one tile as long as the pieces need, whichever way they lie", () => {
    const layout = laid([rectangle("a", 300, across)], roll);
    expect(layout.tiles).toHaveLength(1);
    expect(layout.tiles[0]).toMatchObject({ name: "A1", column: 0, row: 0, x: 0, y: 0 });
    expect(layout.tiles[0]?.width).toBeCloseTo(across, 9);
    expect(layout.height).toBeCloseTo(300, 6);
    expect(layout.joins).toEqual([]);
  });

  it("takes pieces side by side: 3 · 290 + 2 · 5 = 880 across", () => {
    const { height } = laid(
      ["a", "b", "c"].map((key) => rectangle(key, 290, 500)),
      roll,
    );
    expect(height).toBeCloseTo(500, 6);
  });

  it("turns pieces to lie shorter: two of 400 by 200, one of them turned, side by side and 200 long", () => {
    const { height } = laid([rectangle("a", 400, 200), rectangle("b", 200, 400)], roll);
    expect(height).toBeCloseTo(200, 6);
  });

  it(
    "keeps any rings apart and within its width, by flatten-js",
    () => {
      fc.assert(
        fc.property(anyPieces(6), (pieces) => {
          const layout = laid(pieces, roll);
          const rings = laidRings(pieces, layout);
          const [least = Infinity] = distances(rings).toSorted((p, q) => p - q);
          expect(least).toBeGreaterThanOrEqual(roll.gap - NOISE);
          const [tile] = layout.tiles;
          const outside = rings.flat().filter((spot) => tile === undefined || !isOnTile(spot, tile, 1e-3));
          expect(outside).toEqual([]);
        }),
        { numRuns: 25 },
      );
    },
    PATIENCE,
  );
});

describe("failures", () => {
  it("nothing to lay", () => {
    expect(layPieces([], usual)).toEqual({ ok: false, failure: { code: "sheet/nothing-to-lay" } });
  });

  it("a page whose margins leave less than 130 mm: 210 - 2 · 41 = 128", () => {
    expect(layPieces([rectangle("a", 50, 50)], { ...usual, margin: 41 })).toEqual({
      ok: false,
      failure: { code: "sheet/page-too-small", width: 128, height: 215, least: 130 },
    });
    expect(layPieces([rectangle("a", 50, 50)], { ...usual, margin: 40 }).ok).toBe(true);
  });

  it("a piece wider than a roll both ways", () => {
    expect(
      layPieces([rectangle("a", 50, 50), rectangle("b", 900, 1000)], { ...usual, format: FORMATS["A0 roll"] }),
    ).toMatchObject({
      ok: false,
      failure: { code: "sheet/piece-too-wide", key: "b", least: 900, width: 821 },
    });
  });

  it(
    "more than 150 pages: 17 columns by 12 rows for a square of 3000 mm",
    () => {
      const layout = layPieces([rectangle("a", 3000, 3000)], usual);
      // ceil((3000 - 190) / 180) + 1 = 17 columns, ceil((3000 - 277) / 267) + 1 = 12 rows
      expect(layout).toEqual({ ok: false, failure: { code: "sheet/too-many-pages", pages: 204, most: 150 } });
    },
    PATIENCE,
  );

  it("pieces by the dozen, at once: 200 of 180 by 260 fill 178 windows of 190 by 277", () => {
    const many = Array.from({ length: 200 }, (_, index) => rectangle(`p${index}`, 180, 260));
    const failure = { code: "sheet/too-many-pages", pages: 178, most: 150 };
    expect(layPieces(many, usual)).toEqual({ ok: false, failure });
  });

  it("a piece of a kilometre is refused at once: 1 000 000 / 267 pages and more", () => {
    const layout = layPieces([rectangle("a", 100, 1_000_000)], usual);
    expect(layout).toMatchObject({ ok: false, failure: { code: "sheet/too-many-pages", pages: 3746 } });
  });

  it("a ring that is none is our own bug", () => {
    expect(() =>
      layPieces(
        [
          toLay("a", [
            [0, 0],
            [10, 10],
          ]),
        ],
        usual,
      ),
    ).toThrow(CoreBug);
    expect(() =>
      layPieces(
        [
          toLay("a", [
            [0, 0],
            [10, Number.NaN],
            [20, 0],
          ]),
        ],
        usual,
      ),
    ).toThrow(CoreBug);
  });
});
