/**
 * How a lay is sought: the first lays held against a plain try of every place, what is changed in an order by hand, and how
 * far the search says it is. The shares, numbers of tries and weights are our own choice.
 */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { changed, packCloth, type PackOptions, type Place } from "../../../src/core/cloth/packCloth";
import { SAME_POINT } from "../../../src/core/tolerance";
import { boxRing, type Copy, type Way } from "../../../src/core/cloth/rings";

/** mm: the coarsest cells. All that is laid here ends on them, so that finer ones better nothing. */
const CELL = 10;

/** A shape by its columns: from which cell down to which each is filled. */
type Columns = readonly (readonly [top: number, bottom: number])[];

interface Blocks {
  readonly columns: Columns;
  readonly rows: number;
  readonly way: Way;
}

function blocksOf(columns: Columns, turn: 0 | 180, atFold: boolean): Blocks {
  const tops = columns.flatMap(([top], x) => [x, x + 1].map((at) => ({ x: at * CELL, y: top * CELL })));
  const bottoms = columns.flatMap(([, bottom], x) => [x, x + 1].map((at) => ({ x: at * CELL, y: bottom * CELL })));
  const rows = Math.max(...columns.map(([, bottom]) => bottom));
  const ring = [...tops, ...bottoms.toReversed()];
  return {
    columns,
    rows,
    way: { ring, width: columns.length * CELL, length: rows * CELL, turn, isTurnedOver: false, atFold },
  };
}

const halfTurned = (columns: Columns): Columns => {
  const rows = Math.max(...columns.map(([, bottom]) => bottom));
  return columns.map(([top, bottom]) => [rows - bottom, rows - top] as const).toReversed();
};

/** Its first column begins at the top and the others hang together with the one before. */
const anyColumns: fc.Arbitrary<Columns> = fc
  .array(fc.tuple(fc.integer({ min: -2, max: 2 }), fc.integer({ min: 1, max: 5 })), { minLength: 1, maxLength: 8 })
  .map((steps) => {
    const spans: (readonly [number, number])[] = [];
    for (const [step, height] of steps) {
      const [top, bottom] = spans.at(-1) ?? [0, 9];
      const from = Math.min(Math.max(top + step, top - height + 1), bottom - 1);
      spans.push([from, from + height]);
    }
    const least = Math.min(...spans.map(([top]) => top));
    return spans.map(([top, bottom]) => [top - least, bottom - least] as const);
  });

interface Laid {
  readonly blocks: Blocks;
  readonly x: number;
  readonly y: number;
}

/** One after the other where its lower end comes highest, leftmost: every place tried. */
function firstFit(order: readonly (readonly Blocks[])[], across: number): readonly Laid[] {
  const full = new Uint8Array(1000 * 200);
  const cellsOf = ({ columns }: Blocks): readonly number[] =>
    columns.flatMap(([top, bottom], at) => Array.from({ length: bottom - top }, (_, row) => (top + row) * 1000 + at));
  return order.map((ways) => {
    const places = ways.map((blocks): Laid => {
      const cells = cellsOf(blocks);
      const last = blocks.way.atFold ? 0 : across - blocks.columns.length;
      for (let y = 0; ; y += 1)
        for (let x = 0; x <= last; x += 1)
          if (cells.every((cell) => full[cell + y * 1000 + x] === 0)) return { blocks, x, y };
    });
    const best = places.reduce((a, b) => (b.y + b.blocks.rows < a.y + a.blocks.rows ? b : a));
    for (const cell of cellsOf(best.blocks)) full[cell + best.y * 1000 + best.x] = 1;
    return best;
  });
}

const endOf = ({ y, blocks }: Laid): number => (y + blocks.rows) * CELL;
const areaIn = ([blocks]: readonly Blocks[]): number =>
  (blocks?.columns ?? []).reduce((sum, [top, bottom]) => sum + bottom - top, 0);

/** Of the six orders the one that is least long and has most room at its end (a fifth of the mean counts, our own choice). */
function bestFirst(items: readonly (readonly Blocks[])[], across: number): readonly Laid[] {
  const isFolded = (item: readonly Blocks[]): boolean => item[0]?.way.atFold === true;
  const sorted = [
    areaIn,
    ([one]: readonly Blocks[]) => one?.rows ?? 0,
    ([one]: readonly Blocks[]) => one?.columns.length ?? 0,
  ].map((by) => items.toSorted((p, q) => by(q) - by(p)));
  const folded = sorted.map((one) => [...one.filter(isFolded), ...one.filter((item) => !isFolded(item))]);
  let best: { readonly places: readonly Laid[]; readonly length: number; readonly cost: number } | null = null;
  for (const order of [...sorted, ...folded]) {
    const laid = firstFit(order, across);
    const ends = laid.map(endOf);
    const length = Math.max(...ends);
    const cost = length + (0.2 * ends.reduce((sum, end) => sum + end, 0)) / ends.length;
    if (best !== null && (length > best.length + 1e-9 || cost >= best.cost)) continue;
    const places = items.map((item) => laid[order.indexOf(item)]).filter((one) => one !== undefined);
    best = { places, length, cost };
  }
  return best?.places ?? [];
}

const OPTIONS: PackOptions = { usable: 240, looks: 0, goal: 0, progress: () => undefined, seed: 0 };
const copiesFrom = (items: readonly (readonly Blocks[])[]): readonly Copy[] =>
  items.map((blocks, index) => ({ key: `${index}`, copy: 1, layers: 1, ways: blocks.map(({ way }) => way) }));
const told = (places: readonly Place[]) => places.map(({ way, x, y }) => [way.turn, x, y]);

const boxCopy = (key: string, width: number, length: number, turns: readonly number[] = [0]): Copy => ({
  key,
  copy: 1,
  layers: 1,
  ways: turns.map((turn) => ({
    ring: boxRing(width, length),
    width,
    length,
    turn,
    isTurnedOver: false,
    atFold: false,
  })),
});

describe("the first lay", () => {
  it("by hand: the largest first, each where it ends highest, leftmost", () => {
    // Of 240: 150 by 100, beside it 80 by 90; 70 by 80 goes beneath the second, which ends higher, 100 by 40 beneath both.
    const copies = [boxCopy("d", 100, 40), boxCopy("b", 80, 90), boxCopy("a", 150, 100), boxCopy("c", 70, 80)];
    expect(told(packCloth(copies, OPTIONS))).toEqual([
      [0, 0, 100],
      [0, 150, 0],
      [0, 0, 0],
      [0, 150, 90],
    ]);
  });

  it("is that of every place tried, in the best of its orders", () => {
    const anyItem = fc.record({ columns: anyColumns, turns: fc.boolean(), atFold: fc.nat({ max: 4 }) });
    const anyItems = fc.array(fc.tuple(anyItem, fc.integer({ min: 1, max: 3 })), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(anyItems, fc.constantFrom(120, 240), (some, usable) => {
        const items = some.flatMap(([{ columns, turns, atFold }, count]) => {
          const folded = atFold === 0;
          const ways = [blocksOf(columns, 0, folded), ...(turns ? [blocksOf(halfTurned(columns), 180, folded)] : [])];
          // Copies that are alike have the very same ways.
          return Array.from({ length: count }, () => [...ways]);
        });
        const wanted = bestFirst(items, usable / CELL);
        expect(told(packCloth(copiesFrom(items), { ...OPTIONS, usable }))).toEqual(
          wanted.map(({ blocks, x, y }) => [blocks.way.turn, x * CELL, y * CELL]),
        );
      }),
      { numRuns: 40 },
    );
  });

  it("is bettered by what finer cells leave room for: three of 78 in 240 do, where cells of 10 mm take 80 each", () => {
    // Of 47 mm each: five rows of cells, of the finest 18.8: 47.5.
    const copies = [1, 2, 3, 4].map((key) => boxCopy(`${key}`, 78, 47));
    const lengths = packCloth(copies, OPTIONS).map(({ y }) => y);
    expect(lengths).toEqual([0, 0, 0, 47.5]);
  });
});

it("a lay in finer cells is taken only where it is shorter", () => {
  const anyBox = fc.record({ width: fc.integer({ min: 21, max: 139 }), length: fc.integer({ min: 21, max: 139 }) });
  fc.assert(
    fc.property(fc.array(anyBox, { minLength: 3, maxLength: 9 }), (boxes) => {
      const lay = packCloth(
        boxes.map(({ width, length }, at) => boxCopy(`${at}`, width, length)),
        OPTIONS,
      );
      // In the coarse cells, the largest first: one of the orders that are tried.
      const cells = (mm: number): number => Math.ceil(mm / CELL);
      const largest = boxes.toSorted((p, q) => q.width * q.length - p.width * p.length);
      const coarse = firstFit(
        largest.map(({ width, length }) => [
          blocksOf(
            Array.from({ length: cells(width) }, () => [0, cells(length)] as const),
            0,
            false,
          ),
        ]),
        24,
      ).map(({ y }, at) => y * CELL + (largest[at]?.length ?? 0));
      expect(Math.max(...lay.map(({ way, y }) => y + way.length))).toBeLessThanOrEqual(Math.max(...coarse) + 1e-9);
    }),
    { numRuns: 12 },
  );
});

describe("an order changed", () => {
  /** Choices as they are written here, and the bounds that they were asked with. */
  function scripted(...script: readonly number[]) {
    const asked: number[] = [];
    const left = [...script];
    const choose = (below: number): number => {
      asked.push(below);
      return left.shift() ?? 0;
    };
    return { asked, choose };
  }
  const shape = { way: { ring: [], width: 0, length: 0, turn: 0, isTurnedOver: false, atFold: false } };
  const cells = { columns: 1, rows: 1, row: new Int16Array(), from: new Int16Array(), to: new Int16Array() };
  const orderOf = (ways: number) =>
    [0, 1, 2, 3].map((index) => ({
      item: { index, area: 1, shapes: Array.from({ length: ways }, () => ({ ...shape, ...cells })) },
      only: null,
    }));
  const after = (ways: number, lowest: number, ...script: readonly number[]) => {
    const { asked, choose } = scripted(...script);
    const next = changed({ order: orderOf(ways), best: { lying: [], length: 1, lowest, cost: 1 } }, choose);
    return { order: next.map(({ item, only }) => (only === null ? item.index : [item.index, only])), asked };
  };

  it.each([
    ["what ends lowest is put earlier", 3, [0, 1], [0, 3, 1, 2], [6, 3]],
    ["and where it is the first it stays", 0, [0, 0], [0, 1, 2, 3], [6, 1]],
    ["two are exchanged, a later one and an earlier", 3, [1, 0, 2], [3, 1, 2, 0], [6, 4, 4]],
    ["or an earlier one and a later", 3, [1, 2, 0], [2, 1, 0, 3], [6, 4, 4]],
    ["none being beyond the end, it goes there", 3, [1, 0, 3], [1, 2, 3, 0], [6, 4, 4]],
    ["any goes anywhere", 3, [2, 1, 3], [0, 2, 3, 1], [6, 4, 4]],
    ["as often as not", 3, [3, 3, 0], [3, 0, 1, 2], [6, 4, 4]],
    ["any goes three places at the most: forward", 3, [4, 2, 0], [2, 0, 1, 3], [6, 4, 7]],
    ["nowhere", 3, [4, 2, 3], [0, 1, 2, 3], [6, 4, 7]],
    ["one back", 3, [5, 1, 4], [0, 2, 1, 3], [6, 4, 7]],
    ["one forward", 3, [5, 2, 2], [0, 2, 1, 3], [6, 4, 7]],
    ["never beyond the end", 3, [5, 2, 6], [0, 1, 3, 2], [6, 4, 7]],
  ] as const)("%s", (_, lowest, script, order, asked) => {
    expect(after(1, lowest, ...script)).toEqual({ order, asked });
  });

  it("has how it may lie chosen anew every second time", () => {
    expect(after(3, 3, 2, 1, 3, 0)).toEqual({ order: [0, 2, 3, 1], asked: [6, 4, 4, 2] });
    expect(after(3, 3, 2, 1, 3, 1, 2)).toEqual({ order: [0, 2, 3, [1, 2]], asked: [6, 4, 4, 2, 3] });
    expect(after(2, 3, 1, 0, 2, 1, 1)).toEqual({ order: [3, 1, 2, [0, 1]], asked: [6, 4, 4, 2, 2] });
  });
});

describe("the search", () => {
  const some = Array.from({ length: 9 }, (_, at) => boxCopy(`${at}`, 50 + 7 * at, 40 + ((at * 37) % 60), [0, 180]));
  const sought = (copies: readonly Copy[], more: Partial<PackOptions> = {}) => {
    const shares: number[] = [];
    const places = packCloth(copies, { ...OPTIONS, ...more, progress: (share) => shares.push(share) });
    return { shares, places, length: Math.max(...places.map(({ way, y }) => y + way.length)) };
  };

  it("tells how far it is at every twentieth of what coarse, finer and fine cells are given", () => {
    const { shares } = sought(some, { looks: 300_000 });
    const stages = Array.from({ length: 20 }, (_, at) => at + 1);
    // Each level ends with a last word of its own, and all with one.
    expect(shares).toHaveLength(3 * 21 + 1);
    for (const [level, [from, share]] of (
      [
        [0, 0.45],
        [0.45, 0.35],
        [0.8, 0.2],
      ] as const
    ).entries()) {
      const own = shares.slice(level * 21, level * 21 + 21).map((told_) => (told_ - from) / share);
      expect(own.map((part) => Math.floor(part * 20 + 1e-6))).toEqual([...stages, 20]);
      expect(Math.max(...own)).toBeCloseTo(1, 9);
    }
    expect(shares.at(-1)).toBe(1);
  });

  it("seeks nothing where there is but one part that lies one way, and something where two ways or two parts", () => {
    const one = sought([boxCopy("one", 100, 100)], { looks: 100_000 });
    expect(one.shares.map((share) => Math.round(share * 100))).toEqual([45, 80, 100, 100]);
    const two = [boxCopy("one", 100, 100), boxCopy("two", 100, 100)];
    expect(sought(two, { looks: 100_000 }).shares.length).toBeGreaterThan(20);
    expect(sought([boxCopy("one", 100, 100, [0, 180])], { looks: 100_000 }).shares.length).toBeGreaterThan(20);
  });

  it("stops at a length that is short enough, within what counts as one point", () => {
    const all = sought(some, { looks: 300_000 });
    const first = sought(some);
    expect(all.length).toBeLessThan(first.length);
    const wordsFor = (goal: number): number => sought(some, { looks: 300_000, goal }).shares.length;
    expect(wordsFor(first.length)).toBe(2);
    expect(wordsFor(first.length - SAME_POINT / 2)).toBe(2);
    expect(wordsFor(all.length)).toBeLessThan(60);
    // Never reached: told all the way.
    expect(wordsFor(all.length - 10)).toBe(64);
  });

  it("finds what fills the cloth, which its first lay does not", () => {
    // 240 by 200 cut up by guillotine.
    const sizes = [
      [150, 120],
      [90, 70],
      [90, 50],
      [100, 80],
      [50, 80],
      [90, 80],
    ] as const;
    const puzzle = sizes.map(([width, length], at) => boxCopy(`${at}`, width, length));
    expect(sought(puzzle, { looks: 400_000 }).length).toBe(200);
  });

  it("has another row of choices with another seed, the same with the same", () => {
    const [none, one, again] = [0, 1, 1].map((seed) => sought(some, { looks: 30_000, seed }).places);
    expect(one).toEqual(again);
    expect(one).not.toEqual(none);
  });
});
