/** Where a bust point lies: said, marked, or where darts lead, on a box of 200 by 300 and darts that aim at (100, 150). */
import { describe, expect, it } from "vitest";
import { lineEdge } from "../../../src/core/geometry/edgeCurve";
import { piecePoint, sheetPoint } from "../../../src/core/geometry/point";
import type { Mark } from "../../../src/core/outlines/outlineReading";
import { bustPointsOf } from "../../../src/core/ownPieces/bustPoints";
import type { TracedSize } from "../../../src/core/ownPieces/tracePiece";
import { tracedRing } from "../../../src/core/ownPieces/tracedRing";

const p = piecePoint;
const near = (x: number, y: number) => ({ x: expect.closeTo(x, 6) as number, y: expect.closeTo(y, 6) as number });
const box = (width: number, height: number) => {
  const places = [p(0, 0), p(width, 0), p(width, height), p(0, height)];
  return tracedRing(places.map((a, i) => lineEdge(a, places[(i + 1) % 4] ?? a)));
};
type PlacedDart = TracedSize["darts"][number];
const dart = (first: number, second: number, x: number, y: number, seam: PlacedDart["seam"]): PlacedDart => ({
  first,
  second,
  apex: p(x, y),
  by: "outline",
  seam,
  innerFirst: false,
  name: seam === "waist" ? "waistDart" : seam === "neck" ? "neckDart" : "sideDart",
});
/** In the lower edge, straight below (100, 150), and in the right one straight beside it. */
const BELOW = dart(580, 620, 100, 180, "waist");
const BESIDE = dart(330, 370, 130, 150, "side");
const size = (label: string, darts: readonly PlacedDart[], width = 200, height = 300): TracedSize => ({
  label,
  place: { turns: 0, turnedOver: false, tilt: 0, dx: 0, dy: 0 },
  mirror: null,
  ring: box(width, height),
  corners: [],
  darts,
});
const mark = (x: number, y: number, form: Mark["form"] = "cross", of: string | null = null): Mark => ({
  at: sheetPoint(x, y),
  size: of,
  layer: "",
  form,
});
const found = (
  sizes: readonly TracedSize[],
  marks: readonly Mark[] = [],
  said: readonly (readonly [string, number, number])[] = [],
  isPrincess = false,
) => bustPointsOf(sizes, marks, new Map(said.map(([label, x, y]) => [label, p(x, y)])), isPrincess);
const one = (darts: readonly PlacedDart[], ...marks: Mark[]) => found([size("10", darts)], marks)[0];

describe("where darts lead", () => {
  it("is where their axes meet", () => {
    expect(one([BELOW, BESIDE])).toEqual({ at: near(100, 150), by: "darts" });
    expect(one([BESIDE, BELOW])).toEqual({ at: near(100, 150), by: "darts" });
  });

  it("is 22 mm on from the end of the one there is (common practice)", () => {
    expect(one([BELOW])).toEqual({ at: near(100, 158), by: "darts" });
    expect(one([BESIDE])).toEqual({ at: near(108, 150), by: "darts" });
    // One in the neck or the centre leads nowhere.
    expect(one([dart(90, 110, 100, 60, "neck"), BELOW])).toEqual({ at: near(100, 158), by: "darts" });
    expect(one([dart(840, 860, 60, 150, "centre")])).toBeNull();
    expect(one([])).toBeNull();
  });

  it("is between where each of two leads that do not meet near their ends", () => {
    // They meet at (100, 150): 81 mm on from an end at 231, and 79 from one at 229.
    const low = (y: number) => one([dart(580, 620, 100, y, "waist"), BESIDE]);
    expect(low(229)).toEqual({ at: near(100, 150), by: "darts" });
    expect(low(231)).toEqual({ at: near((100 + 108) / 2, (231 - 22 + 150) / 2), by: "darts" });
    // Of two side by side the first.
    expect(one([BELOW, dart(530, 550, 160, 200, "waist")])).toEqual({ at: near(100, 158), by: "darts" });
  });
});

describe("a mark", () => {
  it("is the bust point within 45 mm of where darts lead (our own choice), and not at their ends", () => {
    expect(one([BELOW, BESIDE], mark(100, 194))).toEqual({ at: p(100, 194), by: "mark" });
    expect(one([BELOW, BESIDE], mark(100, 196))).toEqual({ at: near(100, 150), by: "darts" });
    expect(one([BELOW, BESIDE], mark(100, 181.9))).toEqual({ at: near(100, 150), by: "darts" });
    expect(one([BELOW, BESIDE], mark(100, 182.1))).toMatchObject({ by: "mark" });
  });

  it("of the very size goes first, then a cross or a circle, then the nearest", () => {
    const [exact, cross, point, nearer] = [
      mark(120, 160, "point", "10"),
      mark(110, 160, "circle"),
      mark(100, 152, "point"),
      mark(105, 150, "cross"),
    ];
    expect(one([BELOW, BESIDE], point, cross, exact)?.at).toEqual(p(120, 160));
    expect(one([BELOW, BESIDE], point, cross)?.at).toEqual(p(110, 160));
    expect(one([BELOW, BESIDE], cross, nearer, point)?.at).toEqual(p(105, 150));
    expect(one([BELOW, BESIDE], mark(100, 152, "cross", "12"))?.by).toBe("darts");
  });

  it("without darts is the only one where a bust point may lie", () => {
    // Between 0.2 and 0.75 of the width, 0.3 and 0.85 of the height.
    for (const [x, y] of [
      [41, 150],
      [149, 150],
      [100, 91],
      [100, 254],
    ] as const)
      expect(one([], mark(x, y))).toEqual({ at: p(x, y), by: "mark" });
    for (const [x, y] of [
      [39, 150],
      [151, 150],
      [100, 89],
      [100, 256],
    ] as const)
      expect(one([], mark(x, y))).toBeNull();
    expect(one([], mark(100, 150), mark(110, 150))).toBeNull();
    expect(one([], mark(100, 150), mark(20, 150))?.at).toEqual(p(100, 150));
  });

  it("that is named goes before all, or the one that its name stands beside, within 15 mm", () => {
    expect(one([BELOW, BESIDE], mark(60, 120, "writing"), mark(100, 152))).toEqual({ at: p(60, 120), by: "mark" });
    expect(one([BELOW, BESIDE], mark(60, 120, "writing"), mark(60, 134))?.at).toEqual(p(60, 134));
    expect(one([BELOW, BESIDE], mark(60, 120, "writing"), mark(60, 136))?.at).toEqual(p(60, 120));
    expect(one([], mark(60, 120, "writing"), mark(60, 130), mark(64, 120))?.at).toEqual(p(64, 120));
    // Of two names the one of the very size, then the nearest.
    expect(one([BELOW, BESIDE], mark(60, 120, "writing"), mark(20, 20, "writing", "10"))?.at).toEqual(p(20, 20));
    expect(one([BELOW, BESIDE], mark(20, 20, "writing"), mark(60, 120, "writing"))?.at).toEqual(p(60, 120));
  });

  it("lies in the piece, or within 3 mm of it", () => {
    expect(one([], mark(202.9, 20, "writing"))?.at).toEqual(p(202.9, 20));
    expect(one([], mark(203.1, 20, "writing"))).toBeNull();
  });
});

describe("a piece that lay another way", () => {
  /** A quarter turned by the clock, turned over, then 500 across and 20 down; its right half on the sheet is the one drawn. */
  const turned = (darts: readonly PlacedDart[] = []): TracedSize => ({
    ...size("10", darts),
    place: { turns: 1, turnedOver: true, tilt: 0, dx: 500, dy: 20 },
  });
  // A quarter turn makes (x, y) (-y, x), turned over (y, x).
  const sheet = (x: number, y: number): readonly [number, number] => [y - 20, x - 500];

  it("has what is said and marked on the sheet in its own frame", () => {
    expect(found([turned()], [], [["10", ...sheet(90, 140)]])).toEqual([{ at: near(90, 140), by: "her" }]);
    expect(found([turned()], [mark(...sheet(90, 140))])).toEqual([{ at: near(90, 140), by: "mark" }]);
    expect(found([turned([BELOW, BESIDE])], [mark(...sheet(104, 151))])).toEqual([{ at: near(104, 151), by: "mark" }]);
    // On the other half of one drawn whole, mirrored in an upright line at 300 of the sheet.
    const [x, y] = sheet(90, 140);
    const whole = { ...turned(), mirror: { x: 300, y: 0, way: Math.PI / 2 } };
    expect(x).toBeLessThan(300);
    expect(found([whole], [], [["10", 600 - x, y]])).toEqual([{ at: near(90, 140), by: "her" }]);
    expect(found([whole], [mark(600 - x, y)])).toEqual([{ at: near(90, 140), by: "mark" }]);
  });
});

describe("several sizes", () => {
  const [small, large] = [size("10", [BELOW, BESIDE]), size("12", [BELOW, dart(350, 390, 130, 170, "side")])];

  it("have what is said of one, as far from where their darts lead as there; marks count no more", () => {
    // The second leads to (100, 170).
    expect(found([small, large], [mark(101, 151)], [["10", 104, 147]])).toEqual([
      { at: p(104, 147), by: "her" },
      { at: near(104, 167), by: "other size" },
    ]);
  });

  it("have a mark of one by that", () => {
    expect(found([small, large], [mark(97, 152, "cross", "10")])).toEqual([
      { at: p(97, 152), by: "mark" },
      { at: near(97, 172), by: "other size" },
    ]);
  });

  it("without darts have the same shares of their height and width, from the nearest that is known", () => {
    const plain = [
      size("8", [], 200, 300),
      size("10", [], 220, 330),
      size("12", [], 240, 360),
      size("14", [], 260, 390),
    ];
    expect(
      found(
        plain,
        [],
        [
          ["8", 100, 150],
          ["14", 104, 195],
        ],
      ),
    ).toEqual([
      { at: p(100, 150), by: "her" },
      { at: near(110, 165), by: "other size" },
      { at: near(104 * (240 / 260), 180), by: "other size" },
      { at: p(104, 195), by: "her" },
    ]);
  });
});

describe("a princess seam", () => {
  /** From (100, 0) down to (100, 400), bulging out by so much at its middle. */
  const seam = (out: number, at: number, tip: boolean): TracedSize => {
    const places = [p(0, 0), p(100, 0), p(100 + out, at), p(100, 400), p(0, 400)];
    const ring = tracedRing(places.map((a, i) => lineEdge(a, places[(i + 1) % 5] ?? a)));
    const end = 100 + Math.hypot(out, at) + Math.hypot(out, 400 - at);
    return {
      ...size("10", []),
      ring,
      corners: [
        { name: "princessTop", s: 100, by: "form" },
        { name: "princessWaist", s: end, by: "form" },
        ...(tip ? [{ name: "shoulderTip", s: 50, by: "form" } as const] : []),
      ],
    };
  };
  const at = (out: number, height: number, tip = true) => found([seam(out, height, tip)], [], [], true)[0]?.at;

  it("has it where it is fullest, beyond 8 mm, near where one usually lies on it (common practice)", () => {
    // Half way down a seam from the armhole, to a sixtieth of what is looked over.
    expect(Math.abs((at(20, 205)?.y ?? 0) - 205)).toBeLessThan(2);
    expect(Math.abs((at(7, 205)?.y ?? 0) - 200)).toBeLessThan(0.5);
    // Six tenths down one from the shoulder.
    expect(Math.abs((at(20, 245, false)?.y ?? 0) - 245)).toBeLessThan(2);
    expect(Math.abs((at(7, 245, false)?.y ?? 0) - 240)).toBeLessThan(0.5);
    expect(Math.abs((at(20, 300)?.y ?? 0) - 200)).toBeLessThan(2);
    // Fuller far above it is the bend of something else.
    expect(Math.abs((at(20, 100)?.y ?? 0) - 200)).toBeLessThan(2);
  });

  it("without its corners says nothing", () => {
    expect(found([size("10", [BELOW])], [], [], true)).toEqual([null]);
  });
});
