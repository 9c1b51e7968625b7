/** Sizes of a piece traced: each by its own corners, by those of another size, or by what is said of one; halves; darts; allowances. */
import { describe, expect, it } from "vitest";
import type { OwnPieceSaid } from "../../../src/core/decisions/ownPattern";
import { cubicEdge } from "../../../src/core/geometry/edgeCurve";
import { sheetPoint } from "../../../src/core/geometry/point";
import { crossAt, innerLine, openLine, type At } from "../../support/outlineGroups";
import { corners, darts, FRONT, moved, lying, named, NAMES, ringOf, rounded, STANDING, traced } from "./tracedByHand";

const wider = (by: number, places: readonly At[] = FRONT): At[] => places.map(([x, y]) => [x * by, y]);
const SIZES = { "8": wider(0.95), "10": FRONT, "12": wider(1.05) };
const standing = (by: number, how = "form") => named(NAMES, wider(by, STANDING), how);
const apart = ([ax, ay]: At, [bx, by]: At): number => Math.hypot(bx - ax, by - ay);
const lengthOf = (places: readonly At[]): number =>
  places.slice(1).reduce((sum, at, k) => sum + apart(places[k] ?? at, at), 0);
/** The place so far along a line. */
function along(places: readonly At[], far: number): At {
  let left = far;
  for (const [k, b] of places.slice(1).entries()) {
    const a = places[k] ?? b;
    const long = apart(a, b);
    if (left <= long)
      return [rounded(a[0] + ((b[0] - a[0]) * left) / long), rounded(a[1] + ((b[1] - a[1]) * left) / long)];
    left -= long;
  }
  throw new Error("too far");
}
/** A line without one of its places. */
const without = (places: readonly At[], index: number): At[] => places.filter((_, k) => k !== index);

describe("sizes", () => {
  it("have each its own corners where it has them, in the order of the chart", () => {
    const found = traced("front", { "12": SIZES["12"], "8": SIZES["8"], "10": SIZES["10"] });
    expect(found.sizes.map(({ label }) => label)).toEqual(["8", "10", "12"]);
    expect([0, 1, 2].map((size) => corners(found, size))).toEqual([standing(0.95), standing(1), standing(1.05)]);
    expect(found.problems).toEqual([]);
  });

  it("laid side by side are laid in one another, and know where each was", () => {
    const found = traced(
      "front",
      { "8": SIZES["8"], "10": moved(SIZES["10"], 500, 30), "12": moved(SIZES["12"], 1000, 60) },
      { group: { shift: { "10": { x: -500, y: -30 }, "12": { x: -1000, y: -60 } } } },
    );
    expect([0, 1, 2].map((size) => corners(found, size))).toEqual([standing(0.95), standing(1), standing(1.05)]);
    expect(found.sizes.map(({ place }) => [place.dx, place.dy])).toEqual([
      [0, 20],
      [-500, -10],
      [-1000, -40],
    ]);
    // Turned half round: what was to be moved left is moved right.
    const half = (places: readonly At[]): At[] => places.map(([x, y]) => [-x, -y]);
    const turned = traced(
      "front",
      { "8": half(SIZES["8"]), "10": moved(half(SIZES["10"]), 500, 30) },
      { group: { shift: { "10": { x: -500, y: -30 } } } },
    );
    expect(turned.turns).toBe(2);
    expect([0, 1].map((size) => corners(turned, size))).toEqual([standing(0.95), standing(1)]);
    expect(turned.sizes.map(({ place: { dx, dy } }) => [rounded(dx), rounded(dy)])).toEqual([
      [0, 20],
      [500, 50],
    ]);
  });

  it("that lack a corner have it by its share of the way round of the middle one", () => {
    // Its shoulder goes over into its armhole in a bend, 40 mm to either side of where the corner would be.
    const own = SIZES["12"];
    const at = (k: number): At => own[k] ?? [NaN, NaN];
    const towards = (a: At, b: At, by: number): At => [
      a[0] + ((b[0] - a[0]) * by) / apart(a, b),
      a[1] + ((b[1] - a[1]) * by) / apart(a, b),
    ];
    const [from, to] = [towards(at(2), at(1), 40), towards(at(2), at(3), 40)];
    const [c1, c2] = [towards(from, at(2), 26), towards(to, at(2), 26)];
    const bend = Array.from({ length: 2001 }, (_, i): At => {
      const [t, r] = [i / 2000, 1 - i / 2000];
      const of = (k: 0 | 1): number =>
        r ** 3 * from[k] + 3 * r ** 2 * t * c1[k] + 3 * r * t ** 2 * c2[k] + t ** 3 * to[k];
      return [of(0), of(1)];
    });
    const drawn = [
      ...openLine([at(0), at(1), from]),
      cubicEdge({ a: sheetPoint(...from), c1: sheetPoint(...c1), c2: sheetPoint(...c2), b: sheetPoint(...to) }),
      ...openLine([to, at(3), at(4), at(5), at(0)]),
    ];
    const found = traced("front", { ...SIZES, "12": drawn });
    const share = lengthOf(FRONT.slice(0, 3)) / lengthOf([...FRONT, [0, 72]]);
    const round = [at(0), at(1), ...bend, at(3), at(4), at(5), at(0)];
    const [x, y] = along(round, share * lengthOf(round));
    expect(corners(found, 2)).toEqual({
      ...standing(1.05),
      shoulderTip: [expect.closeTo(x, 2), expect.closeTo(y + 20, 2), "other size"],
    });
    expect(corners(found, 1)).toEqual(standing(1));
    expect(found.problems).toEqual([]);
  });

  it("follow the one that most is said of, else the middle one: without its corners there are none", () => {
    const lacking = { ...SIZES, "12": without(SIZES["12"], 2) };
    const at = { x: 60, y: 0 };
    const said = (...sizes: string[]) => {
      const of = (size: string, name: "sideNeck" | "centreNeck" | "underarm") => ({ name, size, at });
      return sizes.map((size, k) => of(size, k === 0 ? "sideNeck" : k === 1 ? "centreNeck" : "underarm"));
    };
    expect(traced("front", lacking, { said: { corners: said("12") } }).problems).toEqual(
      NAMES.map((corner) => ({ code: "own/corner-missing", corner, size: "12" })),
    );
    const code = (found: ReturnType<typeof traced>) => found.problems.map((problem) => problem.code);
    expect(code(traced("front", { ...SIZES, "10": without(FRONT, 2) }))).toHaveLength(6);
    expect(code(traced("front", lacking))).toEqual([]);
    // One each: the first of them.
    const right = [
      { name: "sideNeck", size: "12", at: { x: 63, y: 0 } },
      { name: "sideNeck", size: "8", at: { x: 57, y: 0 } },
    ] as const;
    expect(code(traced("front", lacking, { said: { corners: right } }))).toEqual([]);
    const more = [...right, { name: "centreNeck", size: "12", at: { x: 0, y: 72 } }] as const;
    expect(code(traced("front", lacking, { said: { corners: more } }))).toHaveLength(6);
  });

  it("have not what she says they lack", () => {
    const lacks = (...names: ("shoulderTip" | "sideNeck" | "underarm" | "sideWaist")[]): Partial<OwnPieceSaid> => ({
      corners: names.map((name) => ({ name, size: "10", at: null })),
    });
    const found = traced("front", { "10": without(FRONT, 2) }, { said: lacks("shoulderTip") });
    expect(found.corners.map(({ name }) => name)).toEqual(
      without(
        [0, 1, 2, 3, 4, 5].map((k): At => [k, 0]),
        2,
      ).map(([k]) => NAMES[k]),
    );
    expect(corners(found)).toEqual(
      named(
        NAMES.filter((name) => name !== "shoulderTip"),
        without(STANDING, 2),
      ),
    );
    const few = traced("front", { "10": FRONT }, { said: lacks("shoulderTip", "sideNeck", "underarm", "sideWaist") });
    expect(few.problems).toEqual([
      { code: "own/corner-missing", corner: "centreNeck", size: "10" },
      { code: "own/corner-missing", corner: "centreWaist", size: "10" },
    ]);
    expect(few.sizes).toEqual([]);
    // Without an end of its centre it stays as it lies.
    const unplaced = traced(
      "front",
      { "10": moved(FRONT, 7, 9) },
      {
        said: {
          turns: 0,
          turnedOver: false,
          corners: [
            { name: "centreWaist", size: "10", at: null },
            { name: "centreNeck", size: "10", at: { x: 7, y: 81 } },
          ],
        },
      },
    );
    expect(corners(unplaced).centreNeck).toEqual([7, 81, "her"]);
    expect(unplaced.sizes[0]?.place).toMatchObject({ dx: 0, dy: 0, tilt: 0 });
  });
});

describe("a corner that is pointed at", () => {
  const half: At = [105, 20];
  const said = (x: number, y: number, size = "10") => ({
    corners: [{ name: "sideNeck", size, at: { x, y } } as const],
  });

  it("is where she points, on the line, in units of the file", () => {
    const found = lying("front", { "10": FRONT }, { said: said(52.5, 10), scale: 2 });
    expect(corners(found)).toEqual({ ...standing(1), sideNeck: [105, 40, "her"] });
    // Beside the line: the nearest place of it.
    const beside = lying("front", { "10": FRONT }, { said: said(105 - 4, 20 + 9) });
    expect(corners(beside).sideNeck).toEqual([105, 40, "her"]);
  });

  it("is the line's own corner within 4 mm, but no place where it goes straight on", () => {
    expect(corners(lying("front", { "10": FRONT }, { said: said(62, 3.4) })).sideNeck).toEqual([60, 20, "her"]);
    // 4.1 off: the foot of the perpendicular, by its share of the shoulder.
    const [dx, dy] = [3.5, 2.14];
    const t = (dx * 90 + dy * 40) / (90 ** 2 + 40 ** 2);
    expect(corners(lying("front", { "10": FRONT }, { said: said(60 + dx, dy) })).sideNeck).toEqual([
      rounded(60 + 90 * t),
      rounded(20 + 40 * t),
      "her",
    ]);
    const parted = [...FRONT.slice(0, 2), half, ...FRONT.slice(2)];
    const near = lying("front", { "10": parted }, { said: said(105 + 1.8, 20 + 0.8) });
    expect(corners(near).sideNeck).toEqual([106.8, 40.8, "her"]);
  });

  it("is followed by other sizes, at the same share of the way between its neighbours", () => {
    const found = lying("front", SIZES, { said: said(...half) });
    const share = lengthOf([...FRONT.slice(0, 2), half]) / lengthOf(FRONT.slice(0, 3));
    for (const [size, by] of [
      [0, 0.95],
      [2, 1.05],
    ] as const) {
      const own = wider(by).slice(0, 3);
      const [x, y] = along(own, share * lengthOf(own));
      expect(corners(found, size)).toEqual({ ...standing(by), sideNeck: [x, rounded(y + 20), "other size"] });
    }
    expect(corners(found, 1)).toEqual({ ...standing(1), sideNeck: [105, 40, "her"] });
  });

  it("is the other size's own corner within a twentieth of that way", () => {
    // A neck and shoulder of 192 mm: 9.6 mm.
    const beyond = (by: number): At => {
      const far = lengthOf(FRONT.slice(0, 2)) + by;
      return along(FRONT.slice(0, 3), far);
    };
    expect(corners(lying("front", SIZES, { said: said(...beyond(8)) }), 2).sideNeck).toEqual([63, 20, "other size"]);
    const own = wider(1.05).slice(0, 3);
    const share = (lengthOf(FRONT.slice(0, 2)) + 14) / lengthOf(FRONT.slice(0, 3));
    const [x, y] = along(own, share * lengthOf(own));
    expect(corners(lying("front", SIZES, { said: said(...beyond(14)) }), 2).sideNeck).toEqual([
      x,
      rounded(y + 20),
      "other size",
    ]);
    // Each keeps what is said of itself.
    const both = { corners: [...said(...half).corners, ...said(73.5, 50 / 9, "12").corners] };
    const found = lying("front", SIZES, { said: both });
    expect([corners(found, 1).sideNeck, corners(found, 2).sideNeck?.[2]]).toEqual([[105, 40, "her"], "her"]);
    expect(corners(found, 0).sideNeck?.[2]).toBe("other size");
  });

  it("is followed over the start of the ring too", () => {
    const at = { x: 95, y: 400 };
    const found = lying("front", SIZES, { said: { corners: [{ name: "centreWaist", size: "10", at }] } });
    // From the side of the waist round to the neck: 190 + 328, half of the waist on.
    const share = 95 / (190 + 328 + 0);
    const whole = apart([0, 72], [0, 400]) + 190 * 1.05;
    // The centre is no straight line then: each is laid by its neck at 0.
    const low = corners(found, 2).centreWaist;
    const side = corners(found, 2).sideWaist;
    expect(Number(side?.[0]) - Number(low?.[0])).toBeCloseTo(share * whole, 3);
    expect([low?.[1], low?.[2], side?.[1]]).toEqual([420, "other size", 420]);
  });
});

describe("a piece drawn whole", () => {
  const other = FRONT.slice(1, -1).map(([x, y]): At => [-x, y]);
  const WHOLE = moved([...FRONT, ...other.toReversed()], 500, 100);
  const mirrored = (x: number, way: number) => ({
    x: expect.closeTo(x, 3) as number,
    y: expect.any(Number) as number,
    way,
  });

  it("is one half of it, and knows the line that it is mirrored in", () => {
    const found = traced("front", { "10": WHOLE });
    expect([found.extent, found.turns, found.turnedOver, found.problems]).toEqual(["whole", 0, true, []]);
    expect(corners(found)).toEqual(standing(1));
    expect(found.sizes[0]?.mirror).toEqual(mirrored(500, Math.PI / 2));
  });

  it("is the half that more is drawn on: ends of lines, and marks", () => {
    const line = innerLine(
      [
        [600, 300],
        [620, 350],
      ],
      "10",
    );
    const on = (inner: readonly ReturnType<typeof innerLine>[], ...marks: number[]) => {
      const at = marks.map((x) => crossAt([x, 300]));
      const found = traced("front", { "10": WHOLE }, { group: { inner, marks: at } });
      return [found.turnedOver, found.sizes[0]?.mirror];
    };
    const [left, right] = [
      [true, mirrored(500, Math.PI / 2)],
      [false, mirrored(500, (Math.PI * 3) / 2)],
    ];
    expect(on([line])).toEqual(right);
    expect(on([], 600)).toEqual(right);
    expect(on([], 400)).toEqual(left);
    expect(on([line], 400)).toEqual(left);
    expect(on([line], 400, 600)).toEqual(right);
    expect(on([], 400, 600, 380)).toEqual(left);
    expect(on([{ ...line, size: "12" }])).toEqual(left);
    const loose = traced("front", { "10": WHOLE }, { loose: [line] });
    expect(loose.turnedOver).toBe(false);
  });

  it("is whole where she says so, or half, if it is its own mirror image; straps and unnamed pieces never", () => {
    expect(traced("front", { "10": WHOLE }, { said: { extent: "half" } })).toMatchObject({
      extent: "half",
      sizes: [{ mirror: null }],
    });
    const one = traced("front", { "10": FRONT }, { said: { extent: "whole" } });
    expect([one.extent, one.sizes[0]?.mirror, corners(one)]).toEqual(["whole", null, standing(1)]);
    const strap: At[] = [
      [0, 0],
      [40, 0],
      [40, 300],
      [0, 300],
    ];
    expect(traced("strap", { "10": strap }, { style: "midriff" })).toMatchObject({
      extent: "half",
      sizes: [{ mirror: null, ring: { length: 680 } }],
    });
    expect(traced("strap", { "10": strap }, { style: "midriff", said: { extent: "whole" } })).toMatchObject({
      extent: "whole",
      sizes: [{ mirror: null, ring: { length: 680 } }],
    });
    expect(traced("other1", { "10": strap }).extent).toBe("half");
  });

  it("has what is said of the other half as in a mirror, where each size was drawn", () => {
    const group = { shift: { "12": { x: -1000, y: -60 } } };
    const sizes = { "10": WHOLE, "12": moved(WHOLE, 1000, 60) };
    // On the right half of size 12; the left is kept.
    const at = { x: 1500 + 105, y: 160 + 20 };
    const found = traced("front", sizes, { group, said: { corners: [{ name: "sideNeck", size: "12", at }] } });
    expect(corners(found, 1).sideNeck).toEqual([105, 40, "her"]);
    const [own, far] = [found.sizes[0]?.mirror, found.sizes[1]?.mirror];
    expect([(far?.x ?? 0) - (own?.x ?? 0), (far?.y ?? 0) - (own?.y ?? 0)].map(rounded)).toEqual([1000, 60]);
    const apex = { x: 1500 + 95, y: 160 + 280 };
    const pointed = traced("front", sizes, {
      group,
      said: {
        darts: [{ name: "waistDart", size: "12", inner: { x: 1580, y: 560 }, outer: { x: 1610, y: 560 }, apex }],
      },
    });
    expect(darts(pointed, 1)).toEqual([
      {
        name: "waistDart",
        seam: "waist",
        first: [110, 420],
        second: [80, 420],
        apex: [95, 300],
        by: "her",
        innerFirst: false,
      },
    ]);
  });
});

describe("darts", () => {
  const vee = (a: At, apex: At, b: At, size: string | null = null) => innerLine([a, apex, b], size);
  const WAIST = vee([80, 400], [95, 280], [110, 400]);
  const waist = (name: string, first: number, second: number, apexX: number, apexY = 300, by = "inner lines") => ({
    name,
    seam: "waist",
    first: [first, 420],
    second: [second, 420],
    apex: [apexX, apexY],
    by,
    innerFirst: false,
  });
  const inFront = (...inner: ReturnType<typeof vee>[]) => lying("front", { "10": FRONT }, { group: { inner } });

  it("have their name by their seam, the end nearer the centre first where the ring goes outwards", () => {
    expect(darts(inFront(WAIST))).toEqual([waist("waistDart", 110, 80, 95)]);
    const side = vee([193.8, 200], [100, 220], [193.4, 220]);
    const [dart] = darts(inFront(side));
    expect(dart).toMatchObject({ name: "sideDart", seam: "side", apex: [100, 240], innerFirst: true });
    expect(Number(dart?.first[1])).toBeCloseTo(220, 1);
    expect(Number(dart?.second[1])).toBeCloseTo(240, 1);
    const shoulder = vee([90, 40 / 3], [95, 200], [105, 20]);
    expect(darts(inFront(shoulder))[0]).toMatchObject({ name: "shoulderDart", seam: "shoulder", innerFirst: true });
    const armhole = vee([166, 96], [100, 180], [172, 114]);
    expect(darts(inFront(armhole))[0]).toMatchObject({ name: "armholeDart", seam: "armhole", innerFirst: true });
    const neck = vee([20, 48], [90, 180], [30, 36]);
    expect(darts(inFront(neck))[0]).toMatchObject({ name: "neckDart", seam: "neck", innerFirst: true });
    const centre = vee([0, 230], [90, 240], [0, 250]);
    expect(darts(inFront(centre))[0]).toMatchObject({
      name: "centreDart",
      seam: "centre",
      first: [0, 270],
      second: [0, 250],
      innerFirst: false,
    });
    // In the lower seam of a cup, and the upper one of a band, which goes outwards.
    const band: At[] = [
      [0, 3],
      [220, 30],
      [190, 120],
      [0, 90],
    ];
    const [upper] = darts(
      lying(
        "frontBand",
        { "10": band },
        { style: "midriff", group: { inner: [vee([100, 15.27], [112, 80], [120, 17.73])] } },
      ),
    );
    expect(upper).toMatchObject({ name: "underBustDart", seam: "underBust", innerFirst: true });
    const [lower] = darts(
      lying(
        "frontBand",
        { "10": band },
        { style: "midriff", group: { inner: [vee([100, 105.8], [108, 50], [116, 108.3])] } },
      ),
    );
    expect(lower).toMatchObject({ name: "waistDart", innerFirst: false });
  });

  it("in the side are French where they open low and rise by nearly half of their length", () => {
    // The side from (194, 188) to (190, 400): at half its way (192, 294).
    const rising = (share: number, rise: number) => {
      const [x, y] = [194 - 4 * share, 188 + 212 * share];
      const ends = [-10, 10].map((by): At => [194 - (4 * (y + by - 188)) / 212, y + by]);
      return darts(inFront(vee(ends[0] ?? [0, 0], [x - 80, y - rise], ends[1] ?? [0, 0])))[0]?.name;
    };
    // Of 80 across a rise of 40.3 is 0.45 of the whole.
    expect(rising(0.6, 42)).toBe("frenchDart");
    expect(rising(0.6, 39)).toBe("sideDart");
    expect(rising(0.56, 60)).toBe("frenchDart");
    expect(rising(0.54, 60)).toBe("sideDart");
    expect(rising(0.6, -42)).toBe("sideDart");
    // In another seam none is.
    expect(darts(inFront(vee([30, 400], [90, 300], [60, 400])))[0]?.name).toBe("waistDart");
  });

  it("of one seam are numbered, the widest first, three at the most; straps have none, nor hems", () => {
    const narrow = vee([30, 400], [40, 280], [50, 400]);
    expect(darts(inFront(narrow, WAIST))).toEqual([waist("waistDart", 110, 80, 95), waist("waistDart2", 50, 30, 40)]);
    const four = [10, 55, 100, 145].map((x, k) => vee([x, 400], [x + 10, 300], [x + 20 + k, 400]));
    expect(darts(inFront(...four)).map(({ name, second }) => [name, second[0]])).toEqual([
      ["waistDart", 145],
      ["waistDart2", 100],
      ["waistDart3", 55],
    ]);
    const strap: At[] = [
      [0, 0],
      [60, 0],
      [60, 300],
      [0, 300],
    ];
    const cut = vee([20, 300], [30, 200], [40, 300]);
    expect(darts(lying("strap", { "10": strap }, { style: "midriff", group: { inner: [cut] } }))).toEqual([]);
    const basque: At[] = [
      [0, 12],
      [174, 0],
      [200, 194],
      [0, 200],
    ];
    const inBasque = (dart: ReturnType<typeof vee>) =>
      darts(lying("frontBasque", { "10": basque }, { group: { inner: [dart] } })).map(({ name }) => name);
    expect(inBasque(vee([100, 197], [110, 100], [120, 196.4]))).toEqual([]);
    expect(inBasque(vee([80, 6.48], [90, 100], [100, 5.1]))).toEqual(["waistDart"]);
    expect(darts(lying("other1", { "10": strap }, { group: { inner: [cut] } }))).toEqual([]);
  });

  it("cut out of the line have a straight mouth, and are let go where she says so", () => {
    const notched: At[] = [...FRONT.slice(0, 5), [110, 400], [95, 280], [80, 400], [0, 400]];
    const found = lying("front", { "10": notched });
    expect(darts(found)).toEqual([waist("waistDart", 110, 80, 95, 300, "outline")]);
    expect(ringOf(found).map(([x]) => x)).toEqual([110, 80, 0, 0, 60, 150, 194, 190]);
    expect(corners(found)).toEqual(standing(1));
    const gone = lying("front", { "10": notched }, { said: { notDarts: ["waistDart"] } });
    expect(darts(gone)).toEqual([]);
    expect(ringOf(gone)).toEqual(moved(notched, 0, 20));
    expect(corners(gone)).toEqual(standing(1));
    const drawn = lying("front", { "10": FRONT }, { group: { inner: [WAIST] }, said: { notDarts: ["waistDart"] } });
    expect([darts(drawn), ringOf(drawn), corners(drawn)]).toEqual([[], STANDING, standing(1)]);
    const kept = lying("front", { "10": FRONT }, { group: { inner: [WAIST] }, said: { notDarts: ["sideDart"] } });
    expect(darts(kept)).toHaveLength(1);
    expect(ringOf(kept)).toHaveLength(8);
  });

  const of = (size: string, by: number) => vee([80 * by, 400], [95 * by, 280], [110 * by, 400], size);

  it("of a size are those drawn on it, or on all", () => {
    const each = lying("front", SIZES, { group: { inner: [of("8", 0.95), of("10", 1), of("12", 1.05)] } });
    expect([0, 1, 2].map((size) => darts(each, size))).toEqual(
      [0.95, 1, 1.05].map((by) => [waist("waistDart", rounded(110 * by), 80 * by, rounded(95 * by))]),
    );
    expect(each.problems).toEqual([]);
    const all = lying("front", SIZES, { group: { inner: [WAIST] } });
    expect([0, 1, 2].map((size) => darts(all, size))).toEqual([0, 1, 2].map(() => [waist("waistDart", 110, 80, 95)]));
  });

  it("that half of the sizes have are of all: at the same shares of the seam, the end moved with them", () => {
    const two = lying("front", SIZES, { group: { inner: [of("8", 0.95), of("10", 1)] } });
    expect(two.problems).toEqual([{ code: "own/sizes-unlike", size: "12" }]);
    // Of size 8, the first that shows most: the shares of its waist are those of the others; 95 × 1.05 − 95 × 0.95 further out.
    expect(darts(two, 2)).toEqual([waist("waistDart", 115.5, 84, rounded(95 * 1.05))]);
    expect(corners(two, 2)).toEqual(standing(1.05));
    expect(lying("front", SIZES, { group: { inner: [of("10", 1)] } })).toMatchObject({ problems: [] });
    expect(darts(lying("front", SIZES, { group: { inner: [of("10", 1)] } }), 1)).toEqual([]);
    const pair = lying("front", { "8": SIZES["8"], "10": FRONT }, { group: { inner: [of("10", 1)] } });
    expect(pair.problems).toEqual([{ code: "own/sizes-unlike", size: "8" }]);
    expect(darts(pair, 0)).toEqual([waist("waistDart", 104.5, 76, 90.25)]);
  });

  it("are one where they lie in the same seam, less than a fifth of it apart", () => {
    const apartBy = (by: number) =>
      lying(
        "front",
        { "8": FRONT, "10": FRONT },
        {
          group: {
            inner: [
              vee([80, 400], [95, 280], [110, 400], "8"),
              vee([80 - by, 400], [95 - by, 280], [110 - by, 400], "10"),
            ],
          },
        },
      );
    // A fifth of 190.
    expect([0, 1].map((size) => darts(apartBy(37), size))).toEqual([
      [waist("waistDart", 110, 80, 95)],
      [waist("waistDart", 73, 43, 58)],
    ]);
    expect(apartBy(37).problems).toEqual([]);
    expect([0, 1].map((size) => darts(apartBy(39), size))).toEqual([
      [waist("waistDart", 110, 80, 95)],
      [waist("waistDart", 110, 80, 95)],
    ]);
    expect(apartBy(39).problems).toEqual([{ code: "own/sizes-unlike", size: "10" }]);
    // Of two near it the nearest.
    const two = lying(
      "front",
      { "8": FRONT, "10": FRONT, "12": FRONT },
      {
        group: {
          inner: [
            vee([80, 400], [95, 280], [110, 400], "8"),
            vee([55, 400], [65, 280], [75, 400], "10"),
            vee([90, 400], [105, 280], [120, 400], "10"),
            vee([80, 400], [95, 280], [110, 400], "12"),
          ],
        },
      },
    );
    expect(darts(two, 1).map(({ name, second }) => [name, second[0]])).toContainEqual(["waistDart", 90]);
    const other = lying(
      "front",
      { "8": FRONT, "10": FRONT, "12": FRONT },
      {
        group: {
          inner: [
            vee([80, 400], [95, 280], [110, 400], "8"),
            vee([70, 400], [85, 280], [100, 400], "10"),
            vee([115, 400], [125, 280], [135, 400], "10"),
            vee([80, 400], [95, 280], [110, 400], "12"),
          ],
        },
      },
    );
    expect(darts(other, 1).map(({ name, second }) => [name, second[0]])).toContainEqual(["waistDart", 70]);
  });

  it("that she points at are of all sizes, by the name she gives, its mouth snapped to corners", () => {
    const said = (inner: At, outer: At, apex: At) => ({
      darts: [
        {
          name: "waistDart2" as const,
          size: "10",
          inner: { x: inner[0], y: inner[1] },
          outer: { x: outer[0], y: outer[1] },
          apex: { x: apex[0], y: apex[1] },
        },
      ],
    });
    const found = lying("front", SIZES, { said: said([40, 200], [55, 200], [47.5, 140]), scale: 2 });
    expect(darts(found, 1)).toEqual([waist("waistDart2", 110, 80, 95, 300, "her")]);
    expect(darts(found, 0)).toEqual([waist("waistDart2", 104.5, 76, 90.25, 300, "her")]);
    expect(found.problems.map(({ code }) => code)).toEqual(["own/sizes-unlike", "own/sizes-unlike"]);
    // Whichever end is said to be which.
    expect(darts(lying("front", SIZES, { said: said([110, 400], [80, 400], [95, 280]) }), 1)).toEqual([
      waist("waistDart2", 110, 80, 95, 300, "her"),
    ]);
    // Both on one corner: no dart. One near the side of the waist: to its corner.
    expect(darts(lying("front", SIZES, { said: said([189, 400], [190, 399], [95, 280]) }), 1)).toEqual([]);
    expect(darts(lying("front", { "10": FRONT }, { said: said([160, 400], [188, 401], [175, 280]) }))).toEqual([
      waist("waistDart2", 190, 160, 175, 300, "her"),
    ]);
    // Beside one that is drawn it has the name she gives, and the drawn one the next that is free.
    const both = lying(
      "front",
      { "10": FRONT },
      { group: { inner: [WAIST] }, said: said([30, 400], [45, 400], [37, 300]) },
    );
    expect(darts(both)).toEqual([waist("waistDart", 110, 80, 95), waist("waistDart2", 45, 30, 37, 320, "her")]);
    // Hers goes before a drawn one that lies there.
    const over = lying(
      "front",
      { "10": FRONT },
      { group: { inner: [WAIST] }, said: said([82, 400], [112, 400], [97, 260]) },
    );
    expect(darts(over)).toEqual([waist("waistDart2", 112, 82, 97, 280, "her")]);
  });
});

describe("a cutting line", () => {
  const STRAP: At[] = [
    [0, 0],
    [80, 0],
    [80, 350],
    [0, 350],
  ];
  const cut = (allowances?: OwnPieceSaid["allowances"]) =>
    lying(
      "strap",
      { "10": moved(STRAP, 9, 9) },
      { style: "midriff", said: { line: "cutting", ...(allowances === undefined ? {} : { allowances }) } },
    );

  it("has its seams 15 mm inside, or as far as is said (common practice)", () => {
    // Its corner between the ends of two seams is laid at (0, 0).
    const strap = (wide: number, high: number): At[] => [
      [0, 0],
      [wide, 0],
      [wide, high],
      [0, high],
    ];
    const names = ["strapBackInner", "strapBackOuter", "strapFrontOuter", "strapFrontInner"] as const;
    expect(corners(cut())).toEqual(named(names, strap(50, 320)));
    expect(ringOf(cut())).toEqual(strap(50, 320));
    expect(cut().sizes[0]?.place).toMatchObject({ dx: -24, dy: -24 });
    expect(corners(cut({ strap: 10 }))).toEqual(named(names, strap(50, 330)));
    expect(corners(cut({ neck: 5, armhole: 20 }))).toEqual(named(names, strap(55, 320)));
    expect([cut().line, cut().problems]).toEqual(["cutting", []]);
    // A sewing line that is drawn inside goes unread then, and is read else.
    const sewing = { group: { sewing: { "10": "outline 12" } } };
    const both = { "10": STRAP, "12": moved(strap(46, 316), 17, 17) };
    const line = (said: Partial<OwnPieceSaid>) => lying("strap", both, { ...sewing, style: "midriff", said });
    expect(line({ line: "cutting" }).sizes[0]?.ring.length).toBeCloseTo(2 * (50 + 320), 6);
    expect(line({}).sizes[0]?.ring.length).toBeCloseTo(2 * (46 + 316), 6);
  });

  it("has none taken off at a centre on the fold, and its darts go on to it", () => {
    // Straight sides: 15 off the top, the side and the waist, nothing off the centre.
    const inner = [
      innerLine([
        [80, 400],
        [95, 280],
        [110, 400],
      ]),
    ];
    const found = lying("front", { "10": FRONT }, { group: { inner }, said: { line: "cutting" } });
    expect(found.problems).toEqual([]);
    const mouth = 15 * (105 / 120);
    expect(darts(found)).toEqual([
      {
        name: "waistDart",
        seam: "waist",
        first: [rounded(95 + mouth), 420],
        second: [rounded(95 - mouth), 420],
        apex: [95, 315],
        by: "inner lines",
        innerFirst: false,
      },
    ]);
    /** Where two lines meet that lie so far to the right of the ways between places. */
    const meet = (k: number, one: number, other: number): At => {
      const at = (i: number): At => FRONT[(i + 6) % 6] ?? [0, 0];
      const shifted = (i: number, by: number): { p: At; u: At } => {
        const [[ax, ay], [bx, by2]] = [at(i), at(i + 1)];
        const long = apart([ax, ay], [bx, by2]);
        const u: At = [(bx - ax) / long, (by2 - ay) / long];
        return { p: [ax - u[1] * by, ay + u[0] * by], u };
      };
      const [a, b] = [shifted(k - 1, one), shifted(k, other)];
      const t = ((b.p[0] - a.p[0]) * b.u[1] - (b.p[1] - a.p[1]) * b.u[0]) / (a.u[0] * b.u[1] - a.u[1] * b.u[0]);
      // The waist lies 15 higher, and is laid at 420.
      return [rounded(a.p[0] + a.u[0] * t), rounded(a.p[1] + a.u[1] * t + 35)];
    };
    expect(corners(found)).toEqual(
      named(NAMES, [
        meet(0, 0, 15),
        meet(1, 15, 15),
        meet(2, 15, 15),
        meet(3, 15, 15),
        meet(4, 15, 15),
        meet(5, 15, 0),
      ]),
    );
    const apartFrom = lying("front", { "10": FRONT }, { said: { line: "cutting", centreOnFold: false } });
    expect(Number(corners(apartFrom).sideWaist?.[0])).toBeCloseTo((meet(4, 15, 15)[0] ?? 0) - 15, 3);
    const given = lying("front", { "10": FRONT }, { said: { line: "cutting", allowances: { centre: 6 } } });
    expect(Number(corners(given).sideWaist?.[0])).toBeCloseTo((meet(4, 15, 15)[0] ?? 0) - 6, 3);
  });

  it("has darts whose legs end on the stitch line: as far inside as the widest allowance, and 3 mm", () => {
    const legs = (short: number) => {
      const across = (15 * (120 - short)) / 120;
      return innerLine([
        [95 - across, 400 - short],
        [95, 280],
        [95 + across, 400 - short],
      ]);
    };
    const count = (short: number, allowances: NonNullable<OwnPieceSaid["allowances"]>) =>
      darts(lying("front", { "10": FRONT }, { group: { inner: [legs(short)] }, said: { line: "cutting", allowances } }))
        .length;
    expect([count(17.9, {}), count(18.1, {})]).toEqual([1, 0]);
    expect([count(27.9, { waist: 25 }), count(28.1, { waist: 25 })]).toEqual([1, 0]);
    expect([count(17.9, { waist: 5 }), count(18.1, { waist: 5 })]).toEqual([1, 0]);
    // On the stitch line itself they end there.
    const stitch = (short: number) =>
      darts(lying("front", { "10": FRONT }, { group: { inner: [legs(short)] } })).length;
    expect([stitch(2.9), stitch(3.1)]).toEqual([1, 0]);
  });

  it("that is too narrow for its allowances stays as it is, and that is told", () => {
    const narrow = cut({ strap: 200 });
    expect(narrow.problems).toHaveLength(1);
    expect(narrow.problems[0]).toMatchObject({ code: "own/allowance-too-wide", size: "10" });
    expect(ringOf(narrow)).toEqual(STRAP);
  });
});
