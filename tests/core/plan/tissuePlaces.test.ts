/** Where points of a finished piece lie on its tissue, on a rectangle of 100 by 200 with one dart: every figure by hand. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Piece, PointName, SeamName } from "../../../src/core/pattern/piece";
import {
  dartPlaces,
  drawnLengths,
  movedOnTissue,
  printedOf,
  stayedOnTissue,
  tissuePlace,
} from "../../../src/core/plan/tissuePlaces";

type Places = Readonly<Partial<Record<PointName, readonly [number, number]>>>;

const AT: Places = {
  centreNeck: [0, 0],
  sideNeck: [100, 0],
  underarm: [100, 50],
  sideWaist: [100, 200],
  waistDartOuter: [60, 200],
  waistDartInner: [40, 200],
  centreWaist: [0, 200],
  waistDartApex: [50, 120],
  bustPoint: [50, 100],
};
const RING: readonly (readonly [PointName, SeamName])[] = [
  ["centreNeck", "neck"],
  ["sideNeck", "armhole"],
  ["underarm", "side"],
  ["sideWaist", "waist"],
  ["waistDartOuter", "waist"],
  ["waistDartInner", "waist"],
  ["centreWaist", "centre"],
];

/** The rectangle with some of its points elsewhere, on its ring or another one. */
function piece(moved: Places = {}, ring = RING, more: Partial<Piece> = {}): Piece {
  const entries = Object.entries({ ...AT, ...moved }).map(
    ([name, [x, y]]) => [name, { at: piecePoint(x, y), level: "waist" }] as const,
  );
  const points: Piece["points"] = Object.fromEntries(entries);
  return {
    name: "front",
    points,
    edges: ring.map(([from, seam], at) => {
      const to = (ring[at + 1] ?? ring[0] ?? ["centreNeck"])[0];
      const isMouth = from === "waistDartOuter" && to === "waistDartInner";
      return { from, to, seam, curve: null, mouthOf: isMouth ? "waistDart" : null };
    }),
    darts: [
      {
        name: "waistDart",
        seam: "waist",
        inner: "waistDartInner",
        outer: "waistDartOuter",
        apex: "waistDartApex",
        aimsAt: "bustPoint",
      },
    ],
    levelLines: [],
    centreOnFold: true,
    ...more,
  };
}

const tissue = piece();
const withIn = (after: PointName, ...put: readonly (readonly [PointName, SeamName])[]) =>
  RING.flatMap((one) => (one[0] === after ? [one, ...put] : [one]));

describe("the tissue of a piece", () => {
  it("is its own, or the front's of what a style seam made of the front", () => {
    const back = piece({}, RING, { name: "back" });
    expect(printedOf([back, tissue], "front")).toBe(tissue);
    expect(printedOf([back, tissue], "centreFront")).toBe(tissue);
    expect(printedOf([back, tissue], "sideFront")).toBe(tissue);
    const own = piece({}, RING, { name: "sideFront" });
    expect(printedOf([tissue, own], "sideFront")).toBe(own);
    expect(printedOf([tissue], "back")).toBeUndefined();
    expect(printedOf([back], "centreFront")).toBeUndefined();
  });
});

describe("a place", () => {
  it("is told from its own printed place, out and down", () => {
    expect(tissuePlace(tissue, piece({ sideWaist: [97, 204] }), "sideWaist")).toEqual({
      point: "sideWaist",
      from: "sideWaist",
      out: -3,
      down: 4,
    });
  });

  it("is told from the nearest corner where the tissue has no such point, the bust point being one too", () => {
    const at = (x: number, y: number) => tissuePlace(tissue, piece({ princessTop: [x, y] }), "princessTop");
    expect(at(90, 10)).toEqual({ point: "princessTop", from: "sideNeck", out: -10, down: 10 });
    expect(at(55, 90)).toEqual({ point: "princessTop", from: "bustPoint", out: 5, down: -10 });
    // As near to both ends of the neck: the first that is told.
    expect(at(50, 0)).toMatchObject({ from: "centreNeck" });
    // What only lies on the piece, and is no corner, is not found with a tape.
    const marked = piece({ centreBust: [0, 100] });
    const onMark = tissuePlace(marked, piece({ princessTop: [1, 101] }), "princessTop");
    expect(onMark).toMatchObject({ from: "bustPoint" });
  });

  it("is none of a point that is not there, or on a tissue without any corner", () => {
    expect(tissuePlace(tissue, tissue, "shoulderTip")).toBeNull();
    const bare = piece({}, [], { points: {} });
    expect(tissuePlace(bare, tissue, "underarm")).toBeNull();
  });
});

describe("points that moved", () => {
  // Half a millimetre reads as nothing.
  it("are those that lie further off than is read, in the order told: centre, top, side, then the mouth", () => {
    expect(movedOnTissue(tissue, tissue, [])).toEqual([]);
    expect(movedOnTissue(tissue, piece({ sideWaist: [100.3, 200.39] }), [])).toEqual([]);
    const moved = piece({
      waistDartInner: [38, 200],
      centreWaist: [0, 201],
      sideWaist: [100.4, 200.4],
      bustPoint: [52, 100],
      centreNeck: [0, 3],
    });
    expect(movedOnTissue(tissue, moved, [])).toEqual([
      { point: "centreNeck", from: "centreNeck", out: 0, down: 3 },
      { point: "sideWaist", from: "sideWaist", out: expect.closeTo(0.4, 9), down: expect.closeTo(0.4, 9) },
      { point: "centreWaist", from: "centreWaist", out: 0, down: 1 },
      { point: "bustPoint", from: "bustPoint", out: 2, down: 0 },
      { point: "waistDartInner", from: "waistDartInner", out: -2, down: 0 },
    ]);
    // A dart that is drawn by a job of its own has its mouth told there.
    expect(movedOnTissue(tissue, moved, ["waistDart"]).map(({ point }) => point)).not.toContain("waistDartInner");
  });

  it("are none that lie just so far off, and none that the outline has no corner at", () => {
    expect(movedOnTissue(tissue, piece({ centreNeck: [0, 0.5], sideWaist: [99.5, 200] }), [])).toEqual([]);
    const marked = piece({ centreBust: [0, 100] });
    expect(movedOnTissue(marked, piece({ centreBust: [0, 110] }), [])).toEqual([]);
    // A mouth that was joined up is none of the ring any more.
    const shut = RING.filter(([name]) => !name.startsWith("waistDart"));
    expect(movedOnTissue(tissue, piece({ waistDartInner: [20, 200] }, shut), [])).toEqual([]);
  });

  it("are also new corners, however near they lie, and corners without a name of ours", () => {
    const ring = withIn("underarm", ["sideBust", "side"]);
    expect(movedOnTissue(tissue, piece({ sideBust: [100, 50.2] }, ring), [])).toEqual([
      { point: "sideBust", from: "underarm", out: 0, down: expect.closeTo(0.2, 9) },
    ]);
    const numbered = withIn("underarm", ["corner01", "side"]);
    const other = piece({ corner01: [100, 90] }, numbered);
    expect(movedOnTissue(other, piece({ corner01: [104, 90] }, numbered), [])).toEqual([
      { point: "corner01", from: "corner01", out: 4, down: 0 },
    ]);
  });

  it("leave those that stayed to lay the piece by: the first and the last of them, one alone, or none", () => {
    expect(stayedOnTissue(tissue, tissue)).toEqual(["centreNeck", "centreWaist"]);
    expect(stayedOnTissue(tissue, piece({ centreNeck: [0, 9], centreWaist: [0, 209] }))).toEqual([
      "sideNeck",
      "sideWaist",
    ]);
    // Where the armhole only turns nobody lays a piece by.
    const ring = withIn("sideNeck", ["armholeTouch", "armhole"]);
    const touched: Places = { centreNeck: [0, 9], sideNeck: [100, 9], armholeTouch: [98, 30] };
    const still = piece({ armholeTouch: [98, 30] }, ring);
    expect(stayedOnTissue(still, piece({ ...touched }, ring))).toEqual(["underarm", "centreWaist"]);
    const all: Places = { centreNeck: [0, 9], sideNeck: [100, 9], underarm: [100, 59], centreWaist: [0, 209] };
    expect(stayedOnTissue(tissue, piece(all))).toEqual(["sideWaist"]);
    expect(stayedOnTissue(tissue, piece({ ...all, sideWaist: [100, 209] }))).toEqual([]);
  });
});

describe("a dart's places", () => {
  it("are those of its mouth and its end, or none where there is no such dart or no end", () => {
    expect(dartPlaces(tissue, piece({ waistDartApex: [51, 125] }), "waistDart")).toEqual({
      inner: { point: "waistDartInner", from: "waistDartInner", out: 0, down: 0 },
      outer: { point: "waistDartOuter", from: "waistDartOuter", out: 0, down: 0 },
      apex: { point: "waistDartApex", from: "waistDartApex", out: 1, down: 5 },
    });
    for (const gone of ["waistDartInner", "waistDartOuter", "waistDartApex"] as const) {
      const { [gone]: _gone, ...points } = tissue.points;
      expect(dartPlaces(tissue, { ...tissue, points }, "waistDart")).toBeNull();
    }
    expect(dartPlaces(tissue, tissue, "sideDart")).toBeNull();
    expect(dartPlaces(piece({}, [], { points: {} }), tissue, "waistDart")).toBeNull();
  });
});

describe("lines drawn to a length", () => {
  const side = withIn("underarm", ["bend000", "side"]);
  /** The side with its middle so far out. */
  const bent = (out: number, moved: Places = {}): Piece => piece({ bend000: [100 + out, 125], ...moved }, side);

  it("are none where all is as traced, also where a line went along with its ends", () => {
    expect(drawnLengths(tissue, tissue)).toEqual([]);
    expect(drawnLengths(tissue, piece({ sideWaist: [100, 230], centreWaist: [0, 230] }))).toEqual([]);
    // Turned a quarter and made twice as long as it was, the bend with it.
    const twice = piece({ underarm: [100, 50], sideWaist: [400, 50], bend000: [250, 30] }, side);
    expect(drawnLengths(bent(10), twice).filter(({ seam }) => seam === "side")).toEqual([]);
  });

  // A quarter of a millimetre, since a seam is made of several such lines on both of its pieces.
  it("are those that come out of another length than the traced one laid between their ends", () => {
    const length = (out: number): number => 2 * Math.hypot(75, out);
    expect(drawnLengths(tissue, bent(10))).toEqual([
      { seam: "side", from: "underarm", to: "sideWaist", length: expect.closeTo(length(10), 6) },
    ]);
    expect(drawnLengths(bent(10), tissue)).toEqual([
      { seam: "side", from: "underarm", to: "sideWaist", length: expect.closeTo(150, 6) },
    ]);
    // 0.213 and 0.333 longer than 150.
    expect(drawnLengths(tissue, bent(4))).toEqual([]);
    expect(drawnLengths(tissue, bent(5))).toHaveLength(1);
  });

  it("are also lines between points of which the tissue has no line, but never a dart's mouth", () => {
    const parted = piece({ sideBust: [100, 100] }, withIn("underarm", ["sideBust", "side"]));
    expect(drawnLengths(tissue, parted)).toEqual([
      { seam: "side", from: "underarm", to: "sideBust", length: expect.closeTo(50, 6) },
      { seam: "side", from: "sideBust", to: "sideWaist", length: expect.closeTo(100, 6) },
    ]);
    // The waist runs on either side of the mouth.
    const wider = piece({}, RING, { darts: [] });
    const waist = drawnLengths(wider, tissue).filter(({ seam }) => seam === "waist");
    expect(waist.map(({ from, to }) => [from, to])).not.toContainEqual(["waistDartOuter", "waistDartInner"]);
  });

  it("run on either side of a dart's mouth by themselves", () => {
    const ring = withIn("sideWaist", ["bend000", "waist"]);
    const bowed = piece({ bend000: [80, 210] }, ring);
    // Twice from 20 aside to 10 below: 2 √500.
    expect(drawnLengths(tissue, bowed)).toEqual([
      { seam: "waist", from: "sideWaist", to: "waistDartOuter", length: expect.closeTo(2 * Math.sqrt(500), 6) },
    ]);
  });

  it("end where one seam ends and the next begins, though no corner is seen there", () => {
    const ring = RING.map(([name, seam]) => [name === "underarm" ? ("bend000" as const) : name, seam] as const);
    const smooth = piece({ bend000: [100, 50] }, ring);
    const longer = piece({ bend000: [100, 50], sideWaist: [100, 230], bend001: [110, 140] }, [
      ...ring.slice(0, 3),
      ["bend001", "side"],
      ...ring.slice(3),
    ]);
    expect(drawnLengths(smooth, longer)).toEqual([
      { seam: "side", from: "bend000", to: "sideWaist", length: expect.closeTo(2 * Math.hypot(10, 90), 6) },
    ]);
  });

  it("are other lines where the seam is another between the same ends", () => {
    const ring = RING.map(([name, seam]) => [name, name === "underarm" ? ("princess" as const) : seam] as const);
    expect(drawnLengths(tissue, piece({}, ring))).toEqual([
      { seam: "princess", from: "underarm", to: "sideWaist", length: expect.closeTo(150, 6) },
    ]);
  });

  it("are none of a line that goes all round without a corner", () => {
    const ring: typeof RING = [
      ["bend000", "edge"],
      ["bend001", "edge"],
      ["bend002", "edge"],
    ];
    const places: Places = { bend000: [0, 0], bend001: [90, 0], bend002: [0, 90] };
    const round = piece(places, ring, { darts: [] });
    expect(drawnLengths(round, piece({ ...places, bend002: [0, 120] }, ring, { darts: [] }))).toEqual([]);
  });
});
