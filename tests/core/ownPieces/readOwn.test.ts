/** A pattern of two pieces drawn by hand, read: what each is taken for, what is still missing, and what comes of it. */
import { describe, expect, it } from "vitest";
import type { FileDrawing } from "../../../src/core/decisions/fileDrawing";
import type { OwnPattern, OwnPieceSaid } from "../../../src/core/decisions/ownPattern";
import type { Pattern } from "../../../src/core/decisions/pattern";
import type { OwnReading } from "../../../src/core/ownPieces/ownReading";
import { shapeOf } from "../../../src/core/ownPieces/pieceShapes";
import { piecesNeeded, readOwn } from "../../../src/core/ownPieces/readOwn";
import type { At } from "../../support/outlineGroups";
import { sampleWork } from "../../support/sampleWork";
import { drawnNest, ownOf, type DrawnPiece, type Line, type XY } from "./drawnNest";
import { FRONT, rounded } from "./tracedByHand";

/** As long at the side and the shoulder as the front. */
const BACK: readonly At[] = [
  [0, 20],
  [60, 0],
  [150, 40],
  [206, 188],
  [202, 400],
  [0, 400],
];
const place = ([x, y]: At): XY => ({ x, y });
const closed = (places: readonly At[]): Line[] =>
  places.map((a, index) => ({ a: place(a), b: place(places[(index + 1) % places.length] ?? a) }));
const wider = (by: number, places: readonly At[]): At[] => places.map(([x, y]) => [x * by, y]);
const GROWN = { "8": 1, "10": 1.05 } as const;
type Size = keyof typeof GROWN;
const piece = (
  title: string,
  places: readonly At[],
  marks: readonly At[] = [],
  inner: readonly (readonly At[])[] = [],
  sizes: readonly Size[] = ["8", "10"],
): DrawnPiece => ({
  title,
  sizes: sizes.map((label) => ({
    label,
    outline: closed(wider(GROWN[label], places)),
    inner: inner.map((line) => closed(wider(GROWN[label], line)).slice(0, -1)),
    marks: wider(GROWN[label], marks).map(place),
  })),
});
const FRONT_DRAWN = piece("front", FRONT, [[95, 260]]);
const BACK_DRAWN = piece("back", BACK);
const PATTERN: Pattern = { ...sampleWork.pattern, style: "sideDart", length: "waist" };
const read = (
  pieces: readonly DrawnPiece[],
  {
    said = [],
    pattern = {},
    drawing = {},
    ...more
  }: {
    readonly said?: readonly OwnPieceSaid[];
    readonly pattern?: Partial<Pattern>;
    readonly drawing?: Partial<FileDrawing>;
  } & Omit<Partial<OwnPattern>, "drawing" | "pieces"> = {},
): OwnReading => {
  // Both lie as they stand: that is quickly read.
  const standing = ["1:0 10", "1:1 10"].map(
    (id) =>
      ({
        turns: 0,
        turnedOver: false,
        ...said.find((one) => one.id === id),
        id,
        name: said.find((one) => one.id === id)?.name ?? null,
      }) as const,
  );
  const own = ownOf(
    { ...drawnNest(pieces), ...drawing },
    { ...more, pieces: [...standing, ...said.filter(({ id }) => standing.every((one) => one.id !== id))] },
  );
  const reading = readOwn({ own, pattern: { ...PATTERN, ...pattern } });
  // In the order that they are drawn in: an id tells which line of its layer the largest outline is.
  const drawnAt = ({ id }: { readonly id: string }): number => Number(/:(\d+)/.exec(id)?.[1]);
  return { ...reading, pieces: reading.pieces.toSorted((p, q) => drawnAt(p) - drawnAt(q)) };
};
const idOf = ({ pieces }: OwnReading, name: string): string => pieces.find(({ said }) => said.name === name)?.id ?? "";
const names = ({ pieces }: OwnReading) => pieces.map(({ said }) => said.name);
const near = ({ x, y }: XY) => ({ x: expect.closeTo(x, 4) as number, y: expect.closeTo(y, 4) as number });
const BOTH = read([FRONT_DRAWN, BACK_DRAWN]);
const [FRONT_ID, BACK_ID] = [idOf(BOTH, "front"), idOf(BOTH, "back")];

describe("two pieces", () => {
  it("are read in every size, with each corner where it is in the file", () => {
    expect(BOTH.missing).toEqual([]);
    expect(names(BOTH)).toEqual(["front", "back"]);
    const [front, back] = BOTH.pieces;
    const said = { extent: "half", turns: 0, turnedOver: false, line: "stitch" };
    expect(front?.said).toEqual({ ...said, id: FRONT_ID, name: "front", centreOnFold: true });
    expect(back?.said).toEqual({ ...said, id: BACK_ID, name: "back", centreOnFold: false });
    expect([front?.problems, back?.problems]).toEqual([[], []]);
    const corner = (name: string, at: At, by = "form") => ({ name, at: near(place(at)), by });
    // 0.45 and 0.56 down the armhole; the bust line from the mark; the whole 900 further right is the back's place.
    const armhole = (share: number): At => [150 + 44 * share, 40 + 148 * share];
    expect(front?.sizes[0]).toEqual({
      size: "8",
      corners: [
        ...(["centreNeck", "sideNeck", "shoulderTip", "underarm", "sideWaist", "centreWaist"] as const).map((name, k) =>
          corner(name, FRONT[k] ?? [NaN, NaN]),
        ),
        corner("armholeTouch", armhole(0.45), "level"),
        corner("armholeHinge", armhole(0.56), "level"),
        corner("sideBust", [194 - (4 * 72) / 212, 260], "level"),
        corner("centreBust", [0, 260], "level"),
      ],
      darts: [],
      bustPoint: near({ x: 95, y: 260 }),
      deviation: 0,
    });
    expect(front?.sizes.map(({ size }) => size)).toEqual(["8", "10"]);
    // The back's bust line lies as far down its side as the front's, whichever is drawn first.
    const down = (72 / 212) * Math.hypot(4, 212);
    const side = Math.hypot(4, 212);
    const sideBust = (reading: OwnReading, x: number) =>
      reading.pieces
        .find(({ said: { name } }) => name === "back")
        ?.sizes[0]?.corners.find(({ name }) => name === "sideBust")?.at.x ?? NaN - x;
    expect(sideBust(BOTH, 900)).toBeCloseTo(900 + 206 - (4 * down) / side, 4);
    const turned = read([BACK_DRAWN, FRONT_DRAWN]);
    expect(names(turned)).toEqual(["back", "front"]);
    expect(sideBust(turned, 0)).toBeCloseTo(206 - (4 * down) / side, 4);
  });

  it("are a nest of the sizes that all have, in the order of the plan", () => {
    expect(BOTH.nest?.sizes.map(({ label, pieces }) => [label, ...pieces.map(({ name }) => name)])).toEqual([
      ["8", "front", "back"],
      ["10", "front", "back"],
    ]);
    expect([BOTH.nest?.cup, BOTH.nest?.labels]).toEqual(["B", {}]);
    expect(read([FRONT_DRAWN, BACK_DRAWN], { cup: "D" }).nest?.cup).toBe("D");
    const { chart } = PATTERN;
    expect(read([FRONT_DRAWN, BACK_DRAWN], { pattern: { chart: { ...chart, draftedDifference: 75 } } }).nest?.cup).toBe(
      "C",
    );
    expect(read([FRONT_DRAWN, BACK_DRAWN], { pattern: { chart: { ...chart, cups: [] } } }).nest?.cup).toBeNull();
    // A row that is typed twice, and one without a name, are no sizes more.
    const row = chart.sizes[1];
    if (row === undefined) throw new Error("chart");
    const twice = {
      ...chart,
      sizes: [...chart.sizes.slice(0, 2), row, { ...row, label: " " }, ...chart.sizes.slice(2)],
    };
    expect(
      read([FRONT_DRAWN, BACK_DRAWN], { pattern: { chart: twice } }).nest?.sizes.map(({ label }) => label),
    ).toEqual(["8", "10"]);
    // Larger rows first, as the chart has them.
    const back = { ...chart, sizes: chart.sizes.toReversed() };
    expect(read([FRONT_DRAWN, BACK_DRAWN], { pattern: { chart: back } }).nest?.sizes.map(({ label }) => label)).toEqual(
      ["10", "8"],
    );
  });

  it("in other units are told in those", () => {
    const half = (drawn: DrawnPiece): DrawnPiece => ({
      ...drawn,
      sizes: drawn.sizes.map((size) => ({
        ...size,
        outline: size.outline.map(({ a, b }) => ({ a: { x: a.x / 2, y: a.y / 2 }, b: { x: b.x / 2, y: b.y / 2 } })),
        marks: size.marks.map(({ x, y }) => ({ x: x / 2, y: y / 2 })),
      })),
    });
    const inTwos = read([half(FRONT_DRAWN), half(BACK_DRAWN)], { drawing: { unit: { mm: 2, saidBy: "size" } } });
    const size = inTwos.pieces[0]?.sizes[0];
    expect(size?.bustPoint).toEqual(near({ x: 47.5, y: 130 }));
    expect(size?.corners.find(({ name }) => name === "underarm")?.at).toEqual(near({ x: 97, y: 94 }));
    const bustPoint = { size: "8", at: { x: 45, y: 120 } };
    const said = read([half(FRONT_DRAWN), half(BACK_DRAWN)], {
      drawing: { unit: { mm: 2, saidBy: "size" } },
      said: [{ id: FRONT_ID, name: "front", bustPoint }],
    });
    expect(said.pieces[0]?.sizes[0]?.bustPoint).toEqual(near({ x: 45, y: 120 }));
    // In the other size at the same shares of its width and height.
    expect(said.pieces[0]?.sizes[1]?.bustPoint).toEqual(near({ x: 45 * 1.05, y: 120 }));
  });

  it("on their cutting line tell what is taken off of each seam", () => {
    const said = (more: Partial<OwnPieceSaid>): OwnPieceSaid[] => [
      { id: FRONT_ID, name: "front", line: "cutting", ...more },
    ];
    const all = { neck: 15, shoulder: 15, armhole: 15, side: 15, waist: 15 };
    const allowances = (more: Partial<OwnPieceSaid>) =>
      read([FRONT_DRAWN, BACK_DRAWN], { said: said(more) }).pieces[0]?.said;
    expect(allowances({})).toMatchObject({ line: "cutting", allowances: { ...all, centre: 0 } });
    expect(allowances({ centreOnFold: false })?.allowances).toEqual({ ...all, centre: 15 });
    expect(allowances({ allowances: { side: 25, neck: 6 } })?.allowances).toEqual({
      ...all,
      centre: 0,
      side: 25,
      neck: 6,
    });
    expect(BOTH.pieces[0]?.said.allowances).toBeUndefined();
  });

  it("have their darts where they are in the file", () => {
    const inner = [
      [
        [80, 400],
        [95, 280],
        [110, 400],
      ],
    ] as const;
    const reading = read([piece("front", FRONT, [[95, 260]], inner), BACK_DRAWN]);
    expect(reading.pieces[0]?.sizes[0]?.darts).toEqual([
      {
        name: "waistDart",
        inner: near({ x: 80, y: 400 }),
        outer: near({ x: 110, y: 400 }),
        apex: near({ x: 95, y: 280 }),
        by: "inner lines",
      },
    ]);
    const side = [
      [
        [193, 240],
        [100, 255],
        [192.6, 262],
      ],
    ] as const;
    const [dart] = read([piece("front", FRONT, [[95, 260]], side), BACK_DRAWN]).pieces[0]?.sizes[0]?.darts ?? [];
    expect([dart?.name, (dart?.inner.y ?? 0) < (dart?.outer.y ?? 0)]).toEqual(["sideDart", true]);
  });
});

describe("pieces with straps", () => {
  const shaped = (name: "cup" | "back" | "frontBand" | "backBand", wide: number, high: number): DrawnPiece =>
    piece(
      name === "frontBand" ? "front band" : name === "backBand" ? "back band" : name,
      (shapeOf(name, "midriff")?.corners ?? []).map(({ x, y }): At => [x * wide, y * high]),
      name === "cup" ? [[100, 210]] : [],
    );
  const strap = piece("strap", [
    [0, 0],
    [40, 0],
    [40, 290],
    [0, 290],
  ]);

  it("aim where the strap's length says, whichever is drawn first; the back's bust line is the cup's", () => {
    const bands = [shaped("frontBand", 210, 110), shaped("backBand", 210, 110)];
    const reading = read([shaped("back", 210, 200), ...bands, shaped("cup", 210, 300), strap], {
      pattern: { style: "midriff" },
    });
    expect(names(reading)).toEqual(["back", "frontBand", "backBand", "cup", "strap"]);
    expect(reading.missing).toEqual([]);
    // 0.43 and 0.57 of 290 and 15 (common practice, no source), from the middle of each seam.
    const aim = (name: string): number => {
      const points = reading.nest?.sizes[0]?.pieces.find((one) => one.name === name)?.points;
      const [inner, outer, to] = [points?.strapInner?.at, points?.strapOuter?.at, points?.strapAim?.at];
      if (inner === undefined || outer === undefined || to === undefined) throw new Error(name);
      return Math.hypot(to.x - (inner.x + outer.x) / 2, to.y - (inner.y + outer.y) / 2);
    };
    expect(aim("cup")).toBeCloseTo(0.43 * 305, 6);
    expect(aim("back")).toBeCloseTo(0.57 * 305, 6);
    expect(reading.nest?.sizes[0]?.pieces.map(({ name }) => name)).toEqual([
      "cup",
      "frontBand",
      "back",
      "backBand",
      "strap",
    ]);
    const sideBust = (name: string) => {
      const corners = reading.pieces.find(({ said }) => said.name === name)?.sizes[0]?.corners ?? [];
      const at = (corner: string): At => {
        const found = corners.find((one) => one.name === corner)?.at;
        return [found?.x ?? NaN, found?.y ?? NaN];
      };
      const [top, bust] = [at("underarm"), at("sideBust")];
      return Math.hypot(bust[0] - top[0], bust[1] - top[1]);
    };
    expect(sideBust("back")).toBeCloseTo(sideBust("cup"), 4);
  });
});

describe("what a group is taken for", () => {
  const plain = (drawn: DrawnPiece): DrawnPiece => ({ ...drawn, title: "" });
  const collar = piece("collar", [
    [0, 0],
    [240, 0],
    [240, 60],
    [0, 60],
  ]);

  it("is what she says, then what stands on it, then what it looks like", () => {
    expect(names(read([plain(FRONT_DRAWN), plain(BACK_DRAWN)]))).toEqual(["front", "back"]);
    expect(names(read([plain(BACK_DRAWN), plain(FRONT_DRAWN)]))).toEqual(["back", "front"]);
    // Written the wrong way round, that is believed; said, that is.
    expect(
      names(
        read([
          { ...FRONT_DRAWN, title: "back" },
          { ...BACK_DRAWN, title: "front" },
        ]),
      ),
    ).toEqual(["back", "front"]);
    const said = [
      { id: FRONT_ID, name: "back" },
      { id: BACK_ID, name: "front" },
    ] as const;
    expect(names(read([FRONT_DRAWN, BACK_DRAWN], { said }))).toEqual(["back", "front"]);
    // One name twice: the first has it, the other none but by its form.
    expect(names(read([FRONT_DRAWN, { ...FRONT_DRAWN, title: "front" }, BACK_DRAWN]))).toEqual(["front", null, "back"]);
    expect(names(read([FRONT_DRAWN, BACK_DRAWN], { said: [{ id: BACK_ID, name: "front" }] }))).toEqual([
      "back",
      "front",
    ]);
  });

  it("is nothing where it looks like no piece, or like two as well", () => {
    const box = piece("", [
      [0, 0],
      [300, 0],
      [300, 40],
      [0, 40],
    ]);
    expect(names(read([FRONT_DRAWN, BACK_DRAWN, box]))).toEqual(["front", "back", null]);
    expect(names(read([FRONT_DRAWN, box]))).toEqual(["front", null]);
    // Two that are alike: the surer is the back, and the other is left to her.
    const both = names(read([FRONT_DRAWN, plain(BACK_DRAWN), plain(BACK_DRAWN)]));
    expect(both.filter((name) => name === "back")).toHaveLength(1);
    expect(both.filter((name) => name === null)).toHaveLength(1);
  });

  it("is a piece without a name of ours, with the word that stands on it, or hers", () => {
    const three = read([FRONT_DRAWN, BACK_DRAWN, collar, { ...collar, title: "cuff" }]);
    expect(names(three)).toEqual(["front", "back", "other1", "other2"]);
    expect(three.pieces.map(({ said }) => said.label)).toEqual([undefined, undefined, "collar", "cuff"]);
    expect(three.nest?.labels).toEqual({ other1: "collar", other2: "cuff" });
    expect(three.nest?.sizes[0]?.pieces.map(({ name }) => name)).toEqual(["front", "back", "other1", "other2"]);
    const id = idOf(three, "other1");
    const hers = read([FRONT_DRAWN, BACK_DRAWN, collar, { ...collar, title: "cuff" }], {
      said: [{ id, name: "other2", label: "tie" }],
    });
    expect(names(hers)).toEqual(["front", "back", "other2", "other1"]);
    expect(hers.nest?.labels).toEqual({ other2: "tie", other1: "cuff" });
    const nameless = read([FRONT_DRAWN, BACK_DRAWN, collar], { said: [{ id, name: "other3" }] });
    expect(nameless.nest?.labels).toEqual({});
    expect(nameless.pieces[2]?.said.label).toBeUndefined();
  });

  it("is nothing of the pattern where she leaves it out, or it is a square", () => {
    const square = piece(
      "",
      [
        [0, 0],
        [100, 0],
        [100, 100],
        [0, 100],
      ],
      [],
      [],
      ["8"],
    );
    const with100 = read([FRONT_DRAWN, BACK_DRAWN, square]);
    expect(with100.pieces.map(({ said }) => [said.name, said.leftOut])).toEqual([
      ["front", undefined],
      ["back", undefined],
      [null, true],
    ]);
    expect(with100.pieces[2]).toEqual({
      id: expect.any(String) as string,
      said: {
        id: with100.pieces[2]?.id,
        name: null,
        leftOut: true,
        extent: "half",
        turns: 0,
        turnedOver: false,
        line: "stitch",
        centreOnFold: false,
      },
      sizes: [],
      problems: [],
    });
    expect(with100.missing).toEqual([]);
    const id = with100.pieces[2]?.id ?? "";
    const used = read([FRONT_DRAWN, BACK_DRAWN, square], { said: [{ id, name: "other1" }] });
    // It is drawn for no size in particular.
    expect([used.pieces[2]?.said, used.pieces[2]?.sizes]).toMatchObject([{ name: "other1" }, []]);
    expect(used.pieces[2]?.said.leftOut).toBeUndefined();
    expect(used.missing).toEqual([{ code: "missing/sizes" }]);
    const left = read([FRONT_DRAWN, BACK_DRAWN], { said: [{ id: BACK_ID, name: "back", leftOut: true }] });
    expect(left.missing).toEqual([{ code: "missing/piece", piece: "back" }]);
    expect(left.pieces[1]).toMatchObject({ said: { leftOut: true }, sizes: [] });
    const kept = {
      id: FRONT_ID,
      name: null,
      leftOut: true,
      turns: 3,
      turnedOver: true,
      extent: "whole",
      centreOnFold: true,
    } as const;
    expect(read([FRONT_DRAWN, BACK_DRAWN], { said: [kept] }).pieces[0]?.said).toEqual({ ...kept, line: "stitch" });
  });
});

describe("what is missing", () => {
  const missing = (...given: Parameters<typeof read>) => read(...given).missing;

  it("is a scale before all", () => {
    const none = read([FRONT_DRAWN, BACK_DRAWN], { drawing: { unit: null } });
    expect([none.missing, none.pieces, none.nest]).toEqual([[{ code: "missing/scale" }], [], null]);
  });

  it("are outlines, with the widest gap that is left open", () => {
    expect(missing([])).toEqual([{ code: "missing/outlines", widest: null }]);
    const all = [FRONT_ID, BACK_ID].map((id) => ({ id, name: null, leftOut: true as const }));
    expect(missing([FRONT_DRAWN, BACK_DRAWN], { said: all })).toEqual([{ code: "missing/outlines", widest: null }]);
    /** Paths that are left open by so much. */
    const open = (...gaps: number[]): FileDrawing["lines"] => [
      {
        look: { layer: "8", group: "", colour: "#000000", dash: "", width: 1 },
        paths: gaps.map(
          (gap, k) => `M${k * 900} 0L${k * 900 + 300} 0L${k * 900 + 300} 400L${k * 900} 400L${k * 900} ${gap}`,
        ),
      },
    ];
    expect(missing([], { drawing: { lines: open(5, 9, 7) } })).toEqual([{ code: "missing/outlines", widest: 9 }]);
    const { lines } = drawnNest([FRONT_DRAWN]);
    expect(
      missing([FRONT_DRAWN], {
        drawing: {
          lines: [
            ...lines,
            ...open(5).map((line) => ({ ...line, paths: ["M2000 0L2300 0L2300 400L2000 400L2000 5"] })),
          ],
        },
      }),
    ).toEqual([
      { code: "missing/outlines", widest: 5 },
      { code: "missing/piece", piece: "back" },
    ]);
  });

  it("are pieces, in the order of the plan, or one of two of a name", () => {
    expect(piecesNeeded({ style: "midriff", length: "waist" })).toEqual([
      "cup",
      "frontBand",
      "back",
      "backBand",
      "strap",
    ]);
    expect(piecesNeeded({ style: "princessShoulder", length: "hip" })).toEqual([
      "centreFront",
      "sideFront",
      "back",
      "frontBasque",
      "backBasque",
    ]);
    expect(missing([FRONT_DRAWN], { pattern: { length: "hip" } })).toEqual([
      { code: "missing/piece", piece: "back" },
      { code: "missing/piece", piece: "frontBasque" },
      { code: "missing/piece", piece: "backBasque" },
    ]);
    const said = [
      { id: FRONT_ID, name: "front" },
      { id: BACK_ID, name: "front" },
    ] as const;
    expect(missing([FRONT_DRAWN, BACK_DRAWN], { said })).toEqual([
      { code: "missing/piece-twice", piece: "front" },
      { code: "missing/piece", piece: "back" },
    ]);
  });

  it("are sizes: lines that are none of the chart's, and a second one", () => {
    const one = [piece("front", FRONT, [[95, 260]], [], ["8"]), piece("back", BACK, [], [], ["8"])];
    expect(missing(one)).toEqual([{ code: "missing/second-size" }]);
    const far = { "8": { of: "size", size: "38" }, "10": { of: "size", size: "40" } } as const;
    const none = read([FRONT_DRAWN, BACK_DRAWN], { lines: far });
    expect(none.missing).toEqual([{ code: "missing/sizes" }]);
    expect(none.pieces.every(({ sizes }) => sizes.length === 0)).toBe(true);
    // Without a chart nothing is of a size.
    const uncharted = read([FRONT_DRAWN, BACK_DRAWN], { pattern: { chart: { ...PATTERN.chart, sizes: [] } } });
    expect(uncharted.missing).toEqual([{ code: "missing/sizes" }]);
    expect(uncharted.pieces.every(({ sizes }) => sizes.length === 0)).toBe(true);
    // A piece in one size alone: no other size is whole.
    const single = read([FRONT_DRAWN, piece("back", BACK, [], [], ["8"])]);
    expect(single.missing).toEqual([{ code: "missing/second-size" }]);
  });

  it("are corners, each once, in every size that lacks them", () => {
    const triangle = piece("front", [
      [0, 0],
      [200, 0],
      [0, 300],
    ]);
    const found = read([triangle, BACK_DRAWN]);
    expect(found.missing).toEqual(
      ["centreNeck", "sideNeck", "shoulderTip", "underarm", "sideWaist", "centreWaist"].map((corner) => ({
        code: "missing/corner",
        piece: "front",
        corner,
      })),
    );
    expect([found.nest, found.pieces[0]?.sizes]).toEqual([null, []]);
  });

  it("is a bust point, where there is neither a mark nor a dart", () => {
    const bare = read([piece("front", FRONT), BACK_DRAWN]);
    expect(bare.missing).toEqual([{ code: "missing/bust-point", piece: "front" }]);
    expect(bare.pieces[0]?.problems).toEqual([
      { code: "own/no-bust-point", size: "8" },
      { code: "own/no-bust-point", size: "10" },
    ]);
    expect(bare.pieces[0]?.sizes.map(({ bustPoint }) => bustPoint)).toEqual([null, null]);
    // Where a dart leads is told, and is enough.
    const inner = [
      [
        [80, 400],
        [95, 280],
        [110, 400],
      ],
    ] as const;
    const led = read([piece("front", FRONT, [], inner), BACK_DRAWN]);
    expect(led.missing).toEqual([]);
    expect(led.pieces[0]?.problems).toHaveLength(2);
  });

  it("is what stands in the way of a piece: the first of it", () => {
    const said = { id: FRONT_ID, name: "front", line: "cutting", allowances: { side: 300, waist: 300 } } as const;
    const wide = read([FRONT_DRAWN, BACK_DRAWN], { said: [said] });
    const [problem] = wide.pieces[0]?.problems ?? [];
    expect(problem?.code).toBe("own/allowance-too-wide");
    expect(wide.missing).toEqual([{ code: "missing/problem", piece: "front", problem }]);
    // A dart that ends outside.
    const dart = {
      name: "waistDart",
      size: "8",
      inner: { x: 80, y: 400 },
      outer: { x: 110, y: 400 },
      apex: { x: 95, y: 430 },
    } as const;
    const pointed = read([FRONT_DRAWN, BACK_DRAWN], { said: [{ id: FRONT_ID, name: "front", darts: [dart] }] });
    expect(pointed.missing).toMatchObject([
      { code: "missing/problem", piece: "front", problem: { code: "own/sizes-unlike", size: "10" } },
    ]);
    expect(pointed.pieces[0]?.problems).toEqual([
      { code: "own/sizes-unlike", size: "10" },
      // It leads away from the mark.
      { code: "own/no-bust-point", size: "8" },
      { code: "own/no-bust-point", size: "10" },
      { code: "own/dart-no-end", dart: "waistDart", size: "8" },
      { code: "own/dart-no-end", dart: "waistDart", size: "10" },
    ]);
    // A line that crosses itself, below the side.
    const crossed = piece(
      "front",
      [...FRONT.slice(0, 4), [190, 400], [150, 440], [150, 380], [170, 440], [0, 400]],
      [[95, 260]],
    );
    expect(read([crossed, BACK_DRAWN]).missing).toMatchObject([
      { code: "missing/problem", piece: "front", problem: { code: "own/crosses-itself", size: "8" } },
    ]);
  });

  it("is a seam that turns too often, and a bust point by itself", () => {
    const teeth = Array.from({ length: 301 }, (_, k): At => [190 - ((k + 1) * 190) / 302, k % 2 === 0 ? 399 : 400]);
    const saw = piece("front", [...FRONT.slice(0, 5), ...teeth, [0, 400]], [], [], ["8"]);
    const said = { id: "0:0 8", name: "front", turns: 0, turnedOver: false } as const;
    expect(missing([saw], { said: [said] })).toMatchObject([
      { code: "missing/bust-point" },
      { code: "missing/problem", problem: { code: "own/seam-too-long", seam: "waist" } },
      { code: "missing/piece", piece: "back" },
    ]);
  });

  it("is what was not looked at, where more is drawn than that", () => {
    // A kilometre round a piece is more than is looked at to propose its name; what is named is read.
    const untitled = [FRONT_DRAWN, BACK_DRAWN].map((drawn) => ({ ...drawn, title: "" }));
    const large = read(untitled, { drawing: { unit: { mm: 1000, saidBy: "size" } } });
    expect(large.missing).toEqual([
      { code: "missing/too-much" },
      { code: "missing/piece", piece: "front" },
      { code: "missing/piece", piece: "back" },
    ]);
  });

  it("is a girth of the bodice, not of what is below it", () => {
    const basque = (title: string, wide: number) =>
      piece(title, [
        [0, 12],
        [wide, 0],
        [wide + 26, 194],
        [0, 200],
      ]);
    const { chart } = PATTERN;
    const slim = { ...chart, sizes: chart.sizes.map((size) => ({ ...size, waist: size.waist - 400 })) };
    const all = [FRONT_DRAWN, BACK_DRAWN, basque("front basque", 190), basque("back basque", 202)];
    expect(missing(all, { pattern: { length: "hip" } })).toEqual([]);
    const [girth, more] = missing(all, { pattern: { length: "hip", chart: slim } });
    expect([girth, more]).toMatchObject([{ code: "own/girth-unlike", level: "waist", size: "8" }, undefined]);
    expect(girth?.code === "own/girth-unlike" ? rounded(girth.by) : NaN).toBe(2 * (190 + 202) - 220);
  });

  it("is what shows that pieces were misread: a seam, a girth", () => {
    const short = BACK.map(([x, y]): At => (y === 188 ? [206, 220] : [x, y]));
    const by = Math.hypot(4, 180) - Math.hypot(4, 212);
    const [first, ...more] = missing([FRONT_DRAWN, piece("back", short)]);
    expect(more).toEqual([]);
    expect(first).toMatchObject({ code: "own/seams-unlike", seam: "side", piece: "back", other: "front" });
    expect(first?.code === "own/seams-unlike" ? Math.abs(first.by) : NaN).toBeCloseTo(-by, 1);
    const { chart } = PATTERN;
    const slim = { ...chart, sizes: chart.sizes.map((size) => ({ ...size, waist: size.waist - 400 })) };
    // Twice 190 and 202 about a waist of 220; of the sizes the worst.
    const [girth] = missing([FRONT_DRAWN, BACK_DRAWN], { pattern: { chart: slim } });
    expect(girth).toMatchObject({ code: "own/girth-unlike", piece: "front", level: "waist", size: "8" });
    expect(girth?.code === "own/girth-unlike" ? rounded(girth.by) : NaN).toBe(2 * (190 + 202) - 220);
  });
});
