/** Places and lengths of a toile on pieces of straight lines, every place of them by hand; and what each part of a line does. */
import { describe, expect, it } from "vitest";
import type { Closure } from "../../../src/core/decisions/pattern";
import { TRIAL_SIGNS, type Observation, type TrialPlace } from "../../../src/core/decisions/trial";
import { piecePoint } from "../../../src/core/geometry/point";
import { mouth, named, straight } from "../../../src/core/pattern/namedEdges";
import type { Dart, Piece, PieceName, PointName } from "../../../src/core/pattern/piece";
import {
  isBustMark,
  lineChanged,
  lineMarked,
  lineOfAmount,
  lineOfDart,
  lineOfSign,
  lineOnHalf,
  linePlaced,
  lineTold,
  lineTowards,
  numberedLines,
  signsFor,
} from "../../../src/core/toile/recordLine";
import { isMark, waysAt } from "../../../src/core/toile/signsAt";
import { toileLengths } from "../../../src/core/toile/toileLengths";
import { toilePlaces, type ToileHalf } from "../../../src/core/toile/toilePlaces";

const points = (of: Readonly<Partial<Record<PointName, readonly [number, number]>>>): Piece["points"] =>
  Object.fromEntries(Object.entries(of).map(([name, [x, y]]) => [name, named(x, y, "bust")]));

const dartOn = (seam: Dart["seam"], more: Partial<Dart> = {}): Dart => ({
  name: seam === "underBust" ? "underBustDart" : "waistDart",
  seam,
  inner: seam === "underBust" ? "underBustDartInner" : "waistDartInner",
  outer: seam === "underBust" ? "underBustDartOuter" : "waistDartOuter",
  apex: seam === "underBust" ? "underBustDartApex" : "waistDartApex",
  aimsAt: null,
  ...more,
});

/** A bodice half with a shoulder, all straight; `out` is how much wider the back is. */
const bodice = (name: "front" | "back", out: number): Piece => ({
  name,
  points: points({
    centreNeck: [0, 60],
    sideNeck: [60, 0],
    shoulderTip: [180, 40],
    armholeTouch: [160 + out, 130],
    underarm: [200 + out, 200],
    sideBust: [200 + out, 230],
    sideWaist: [190 + out, 430],
    waistDartOuter: [110 + out, 400],
    waistDartInner: [80 + out, 400],
    waistDartApex: [95 + out, 280],
    centreWaist: [0, 400],
    centreBust: [0, 230],
  }),
  edges: [
    straight("centreNeck", "sideNeck", "neck"),
    straight("sideNeck", "shoulderTip", "shoulder"),
    straight("shoulderTip", "armholeTouch", "armhole"),
    straight("armholeTouch", "underarm", "armhole"),
    straight("underarm", "sideBust", "side"),
    straight("sideBust", "sideWaist", "side"),
    straight("sideWaist", "waistDartOuter", "waist"),
    mouth("waistDartOuter", "waistDartInner", "waist", "waistDart"),
    straight("waistDartInner", "centreWaist", "waist"),
    straight("centreWaist", "centreBust", "centre"),
    straight("centreBust", "centreNeck", "centre"),
  ],
  darts: [dartOn("waist")],
  levelLines: [],
  centreOnFold: false,
});

const basque = (name: "frontBasque" | "backBasque", out: number): Piece => ({
  name,
  points: points({
    centreWaist: [0, 0],
    sideWaist: [190 + out, 0],
    sideHip: [240 + out, 200],
    sideHem: [240 + out, 230],
    centreHem: [0, 230],
    centreHip: [0, 200],
    // Darts below the waist are no places.
    waistDartApex: [90, 100],
    waistDartInner: [80, 0],
    waistDartOuter: [100, 0],
  }),
  edges: [
    straight("centreWaist", "sideWaist", "waist"),
    straight("sideWaist", "sideHip", "side"),
    straight("sideHip", "sideHem", "side"),
    straight("sideHem", "centreHem", "hem"),
    straight("centreHem", "centreHip", "centre"),
    straight("centreHip", "centreWaist", "centre"),
  ],
  darts: [dartOn("waist")],
  levelLines: [],
  centreOnFold: false,
});

const dressed: ToileHalf = {
  pieces: [bodice("front", 0), bodice("back", 10), basque("frontBasque", 0), basque("backBasque", 20)],
  bustPiece: "front",
  bustPoint: { printed: piecePoint(90, 225), own: null },
};

const atBack: Closure = { place: "centreBack", belowWaist: 180 };
const atSide: Closure = { place: "side", belowWaist: 180 };

type Spot = readonly ["front" | "side" | "back", PieceName, number, number];
const told = (half: ToileHalf, closure: Closure) =>
  toilePlaces(half, closure).map(({ place, isCentre, spots }) => [
    place,
    isCentre,
    spots.map(({ view, piece, at, dart }) => [view, piece, at.x, at.y, ...(dart === undefined ? [] : [dart])]),
  ]);
const near = (place: TrialPlace, isCentre: boolean, ...spots: readonly Spot[]) => [
  place,
  isCentre,
  spots.map(([view, piece, x, y]) => [view, piece, expect.closeTo(x, 6), expect.closeTo(y, 6)]),
];

const DRESSED: readonly (readonly [TrialPlace, ...(readonly Spot[])])[] = [
  ["neckPoint", ["front", "front", 60, 0], ["back", "back", 60, 0]],
  ["frontNeck", ["front", "front", 30, 30]],
  ["shoulder", ["front", "front", 180, 40], ["back", "back", 180, 40]],
  ["frontArmhole", ["front", "front", 160, 130]],
  // Six tenths out to the bust point, half-way down to it from the neck: (60 + 225) / 2.
  ["chest", ["front", "front", 54, 142.5]],
  ["bust", ["front", "front", 90, 225]],
  ["betweenBusts", ["front", "front", 0, 230]],
  // 75 below the bust point, three quarters out.
  ["underBust", ["front", "front", 67.5, 300]],
  // 45 above the waist.
  ["frontAboveWaist", ["front", "front", 40.5, 355]],
  // Half-way from the centre to the dart.
  ["frontWaist", ["front", "front", 40, 400]],
  ["frontHip", ["front", "frontBasque", 120, 200]],
  ["frontHem", ["front", "frontBasque", 120, 230]],
  ["underarm", ["side", "front", 200, 200], ["front", "front", 200, 200], ["back", "back", 210, 200]],
  // 55 of 100 down the straight from (200, 230) to (190, 430).
  ["sideSeam", ["side", "front", 194.5, 340], ["front", "front", 194.5, 340], ["back", "back", 204.5, 340]],
  ["sideHip", ["side", "frontBasque", 240, 200], ["front", "frontBasque", 240, 200], ["back", "backBasque", 260, 200]],
  ["backNeck", ["back", "back", 30, 30]],
  ["backArmhole", ["back", "back", 170, 130]],
  // 55 of 100 out to where the armhole comes in furthest.
  ["blades", ["back", "back", 93.5, 130]],
  ["backAboveWaist", ["back", "back", 40.5, 355]],
  ["backWaist", ["back", "back", 45, 400]],
  ["backHip", ["back", "backBasque", 130, 200]],
  ["backHem", ["back", "backBasque", 130, 230]],
];

/** The dart's ends come after the bust. */
const withDartEnds = (places: readonly unknown[]): readonly unknown[] => [
  ...places.slice(0, 6),
  [
    "dartEnd",
    false,
    [
      ["front", "front", 95, 280, { piece: "front", dart: "waistDart" }],
      ["back", "back", 105, 280, { piece: "back", dart: "waistDart" }],
    ],
  ],
  ...places.slice(6),
];
const placesOf = (): readonly unknown[] =>
  withDartEnds(DRESSED.map(([place, ...spots]) => near(place, place === "betweenBusts", ...spots)));

describe("places on a bodice with a basque", () => {
  it("are all where they were worked out, with a centre back opening of no half", () => {
    expect(told(dressed, atBack)).toEqual([
      ...placesOf(),
      near("closureBust", true, ["back", "back", 0, 230]),
      near("closureWaist", true, ["back", "back", 0, 400]),
      near("closureHip", true, ["back", "backBasque", 0, 200]),
    ]);
  });

  it("and with one at the side, on the front's side seam", () => {
    expect(told(dressed, atSide)).toEqual([
      ...placesOf(),
      near("closureBust", false, ["side", "front", 200, 230]),
      near("closureWaist", false, ["side", "front", 190, 430]),
      near("closureHip", false, ["side", "frontBasque", 240, 200]),
    ]);
  });

  it("go by her own bust point where she has one", () => {
    const own = { ...dressed, bustPoint: { printed: piecePoint(90, 225), own: piecePoint(100, 245) } };
    const at = new Map(toilePlaces(own, atBack).map(({ place, spots }) => [place, spots[0].at]));
    expect([at.get("bust"), at.get("chest"), at.get("underBust")]).toEqual([
      piecePoint(100, 245),
      piecePoint(60, 152.5),
      piecePoint(75, 320),
    ]);
    expect(at.get("backAboveWaist")).toEqual(piecePoint(45, 355));
  });

  it("are no gathers' and no chest's or blades' without a shoulder", () => {
    const bare = dressed.pieces.map((piece): Piece => {
      const { shoulderTip: _, ...rest } = piece.points;
      return { ...piece, points: rest, darts: piece.darts.map((dart): Dart => ({ ...dart, gathered: true })) };
    });
    const gone: readonly TrialPlace[] = ["shoulder", "chest", "blades", "dartEnd"];
    const placesIn = (half: ToileHalf): readonly TrialPlace[] => toilePlaces(half, atBack).map(({ place }) => place);
    expect(placesIn({ ...dressed, pieces: bare })).toEqual(placesIn(dressed).filter((place) => !gone.includes(place)));
  });

  it("want all that they are told from: a neck and an armhole for the chest, both ends of the hip line", () => {
    const less = (...gone: readonly PointName[]): readonly unknown[] => {
      const pieces = dressed.pieces.map((piece): Piece => ({
        ...piece,
        points: Object.fromEntries(
          Object.entries(piece.points).map(([name, point]) => [
            gone.some((one) => one === name) ? `cut${gone.findIndex((one) => one === name) + 1}` : name,
            point,
          ]),
        ),
        edges: piece.edges.map((edge) => {
          const kept = (name: PointName): PointName => (gone.includes(name) ? "cut1" : name);
          return { ...edge, from: kept(edge.from), to: kept(edge.to) };
        }),
      }));
      const left = new Set(told({ ...dressed, pieces }, atBack).map(([place]) => place));
      return told(dressed, atBack)
        .map(([place]) => place)
        .filter((place) => !left.has(place));
    };
    expect(less("centreNeck")).toEqual(["chest"]);
    // The armhole has its middle still.
    expect(less("armholeTouch")).toEqual(["chest", "blades"]);
    expect(less("centreHip")).toEqual(["frontHip", "backHip", "closureHip"]);
    expect(less("sideHip")).toEqual(["frontHip", "sideHip", "backHip"]);
    expect(less("centreWaist")).toEqual([
      "frontAboveWaist",
      "frontWaist",
      "backAboveWaist",
      "backWaist",
      "closureWaist",
    ]);
    expect(less("sideBust")).toEqual(["sideSeam"]);
    expect(less("centreBust")).toEqual(["betweenBusts", "closureBust"]);
  });

  it("lie on no strap, facing or piece without a name", () => {
    const strange = (["strap", "other1", "frontFacing", "skirtFront"] as const).map((name): Piece => ({
      ...bodice("front", 70),
      name,
    }));
    expect(told({ ...dressed, pieces: [...strange, ...dressed.pieces] }, atBack)).toEqual(told(dressed, atBack));
  });

  it("half-way along an armhole that comes in nowhere: 100 of 200, over its corner; at a share of several lines", () => {
    const [front, ...rest] = dressed.pieces;
    if (front === undefined) throw new Error("no front");
    const { armholeTouch: _, ...kept } = front.points;
    const sharp: Piece = {
      ...front,
      // 120 down and 80 out: half-way is 20 short of the corner.
      points: { ...kept, ...points({ shoulderTip: [120, 80], corner01: [120, 200], underarm: [200, 200] }) },
      edges: front.edges.flatMap((edge) =>
        edge.from === "shoulderTip"
          ? [straight("shoulderTip", "corner01", "armhole"), straight("corner01", "underarm", "armhole")]
          : edge.seam === "armhole"
            ? []
            : [edge],
      ),
    };
    const armholeOf = (piece: Piece) =>
      toilePlaces({ ...dressed, pieces: [piece, ...rest] }, atBack).find(({ place }) => place === "frontArmhole")
        ?.spots;
    expect(armholeOf(sharp)).toEqual([
      { view: "front", piece: "front", at: { x: expect.closeTo(120, 6), y: expect.closeTo(180, 6) } },
    ]);
    const low: Piece = { ...sharp, points: { ...sharp.points, ...points({ shoulderTip: [120, 160] }) } };
    // 40 down and 80 out: 20 beyond the corner.
    expect(armholeOf(low)).toEqual([
      { view: "front", piece: "front", at: { x: expect.closeTo(140, 6), y: expect.closeTo(200, 6) } },
    ]);
  });
});

describe("places on cups, a band and straps", () => {
  const cup: Piece = {
    name: "cup",
    points: points({
      centreBust: [0, 100],
      strapInner: [80, 20],
      strapOuter: [110, 20],
      strapAim: [95, -180],
      underarm: [180, 120],
      sideUnderBust: [180, 200],
      underBustDartOuter: [120, 210],
      underBustDartInner: [60, 210],
      underBustDartApex: [90, 140],
      underBustCentre: [0, 200],
    }),
    edges: [
      straight("centreBust", "strapInner", "neck"),
      straight("strapInner", "strapOuter", "strap"),
      straight("strapOuter", "underarm", "armhole"),
      straight("underarm", "sideUnderBust", "side"),
      straight("sideUnderBust", "underBustDartOuter", "underBust"),
      mouth("underBustDartOuter", "underBustDartInner", "underBust", "underBustDart"),
      straight("underBustDartInner", "underBustCentre", "underBust"),
      straight("underBustCentre", "centreBust", "centre"),
    ],
    darts: [dartOn("underBust")],
    levelLines: [],
    centreOnFold: false,
  };
  const band = (name: "frontBand" | "backBand"): Piece => ({
    name,
    points: points({
      underBustCentre: [0, 200],
      sideUnderBust: [180, 200],
      sideWaist: [160, 300],
      centreWaist: [0, 300],
    }),
    edges: [
      straight("underBustCentre", "sideUnderBust", "underBust"),
      straight("sideUnderBust", "sideWaist", "side"),
      straight("sideWaist", "centreWaist", "waist"),
      straight("centreWaist", "underBustCentre", "centre"),
    ],
    darts: [],
    levelLines: [],
    centreOnFold: false,
  });
  const half: ToileHalf = {
    pieces: [cup, band("frontBand"), band("backBand")],
    bustPiece: "cup",
    bustPoint: { printed: piecePoint(90, 130), own: null },
  };
  const spotsOf = (of: ToileHalf): ReadonlyMap<TrialPlace, readonly unknown[]> =>
    new Map(
      toilePlaces(of, atBack).map(({ place, spots }) => [
        place,
        spots.map(({ view, piece, at }) => [view, piece, Math.round(at.x * 1e6) / 1e6, Math.round(at.y * 1e6) / 1e6]),
      ]),
    );

  it("a strap from the middle of its foot, 35 of 100 to the shoulder", () => {
    // (95, 20) towards (95, -180).
    expect(spotsOf(half).get("strap")).toEqual([["front", "cup", 95, -50]]);
    const { strapAim: _, ...noAim } = cup.points;
    expect(spotsOf({ ...half, pieces: [{ ...cup, points: noAim }] }).has("strap")).toBe(false);
    const { strapInner: __, ...noFoot } = cup.points;
    const footless = cup.edges.filter(({ seam }) => seam !== "strap" && seam !== "neck");
    expect(spotsOf({ ...half, pieces: [{ ...cup, points: noFoot, edges: footless }] }).has("strap")).toBe(false);
  });

  it("the seam under the bust 70 of 100 out to the dart, or at half of its length where there is none", () => {
    // From (0, 200) to (60, 210).
    expect(spotsOf(half).get("underBust")).toEqual([["front", "cup", 42, 207]]);
    const { underBustDartInner: _, ...rest } = cup.points;
    const plain: Piece = {
      ...cup,
      points: rest,
      edges: cup.edges.flatMap((edge) =>
        edge.seam !== "underBust"
          ? [edge]
          : edge.from === "sideUnderBust"
            ? [straight("sideUnderBust", "underBustCentre", "underBust")]
            : [],
      ),
      darts: [],
    };
    // Level, from 180 to the centre.
    expect(spotsOf({ ...half, pieces: [plain, band("frontBand")] }).get("underBust")).toEqual([
      ["front", "cup", 90, 200],
    ]);
  });

  it("the side between the under-bust and the waist where no bust line meets it, on the band", () => {
    // 55 of 100 from (180, 200) to (160, 300).
    expect(spotsOf(half).get("sideSeam")).toEqual([
      ["side", "frontBand", 169, 255],
      ["front", "frontBand", 169, 255],
      ["back", "backBand", 169, 255],
    ]);
    expect(spotsOf(half).get("frontWaist")).toEqual([["front", "frontBand", 80, 300]]);
    expect(spotsOf(half).get("frontAboveWaist")).toEqual([["front", "frontBand", 40.5, 255]]);
    for (const none of [
      "frontHip",
      "frontHem",
      "sideHip",
      "closureHip",
      "neckPoint",
      "shoulder",
      "chest",
      "blades",
    ] as const)
      expect(spotsOf(half).has(none)).toBe(false);
  });
});

describe("lengths of a toile", () => {
  const levels = [
    { level: "bust", finished: 960 },
    { level: "waist", finished: 760 },
    { level: "hip", finished: 1040 },
  ] as const;
  const all = { bustGirth: 960, waistGirth: 760, hipGirth: 1040 };

  it("are girths, the centre lines above the waist and the front's shoulder, of the half that is said", () => {
    const short = { pieces: [bodice("front", 0), bodice("back", 10)] };
    const [front, back] = [bodice("front", 0), bodice("back", 0)];
    const longer: Piece = {
      ...front,
      points: { ...front.points, ...points({ centreNeck: [0, 50], shoulderTip: [160, 0] }) },
    };
    const right = { pieces: [longer, back] };
    const plan = { levels, left: dressed, right };
    // Centre lines from 60 to 400; the shoulder over 120 and 40.
    const left = {
      ...all,
      centreFront: expect.closeTo(340, 6) as number,
      centreBack: expect.closeTo(340, 6) as number,
      shoulder: expect.closeTo(Math.hypot(120, 40), 6) as number,
    };
    expect(toileLengths(plan)).toEqual(left);
    expect(toileLengths(plan, "left")).toEqual(left);
    const { hipGirth: _, ...noHip } = left;
    expect(toileLengths(plan, "right")).toEqual({
      ...noHip,
      centreFront: expect.closeTo(350, 6),
      shoulder: expect.closeTo(100, 6),
    });
    expect(toileLengths({ levels: [], left: short, right })).toEqual({
      centreFront: left.centreFront,
      centreBack: left.centreBack,
      shoulder: left.shoulder,
    });
  });

  it("count no strap and no piece without a name, and the pieces of a front cut in two together", () => {
    const cut = (name: PieceName): Piece => ({ ...bodice("front", 0), name });
    const strange = { pieces: [...dressed.pieces, cut("strap"), cut("other1")] };
    expect(toileLengths({ levels, left: strange, right: strange })).toEqual(
      toileLengths({ levels, left: dressed, right: dressed }),
    );
    const two = { pieces: [cut("centreFront"), cut("sideFront")] };
    expect(toileLengths({ levels: [], left: two, right: two })).toEqual({
      centreFront: expect.closeTo(680, 6),
      shoulder: expect.closeTo(2 * Math.hypot(120, 40), 6),
    });
  });
});

describe("a line of the record, whole", () => {
  const dart = { piece: "front", dart: "waistDart" } as const;
  const full: Observation = {
    id: "a",
    place: "bust",
    sign: "dragLines",
    towards: "underarm",
    way: "pinched",
    amount: 6,
    half: "left",
    changed: "let out",
  };
  const { towards: _towards, way: _way, amount: _amount, ...bare } = full;

  it("of another sign keeps what that one is told by", () => {
    expect(lineOfSign(full, "dragLines")).toEqual(full);
    expect(lineOfSign(full, "tight")).toEqual({ ...bare, sign: "tight", way: "letOut", amount: 6 });
    expect(lineOfSign(full, "cutsIn")).toEqual({ ...bare, sign: "cutsIn", way: "off", amount: 6 });
    expect(lineOfSign({ ...full, way: "letOut" }, "cutsIn")).toEqual({
      ...bare,
      sign: "cutsIn",
      way: "letOut",
      amount: 6,
    });
    // A way without an amount is told anew; neither stays neither.
    expect(lineOfSign({ ...bare, way: "pinched" }, "tight")).toEqual({ ...bare, sign: "tight", way: "letOut" });
    expect(lineOfSign({ ...bare, amount: 6 }, "tight")).toEqual({ ...bare, sign: "tight", way: "letOut", amount: 6 });
    expect(lineOfSign(bare, "tight")).toEqual({ ...bare, sign: "tight" });
    expect(lineOfSign(bare, "dragLines")).toStrictEqual({ ...bare, sign: "dragLines" });
  });

  it("of no sign keeps its amount and the way of that", () => {
    const { sign: _, ...none } = bare;
    expect(lineOfSign(full, null)).toEqual({ ...none, way: "pinched", amount: 6 });
    expect(lineOfSign({ ...bare, amount: 6 }, null)).toEqual({ ...none, amount: 6 });
    expect(lineOfSign({ ...bare, way: "pinched" }, null)).toEqual(none);
  });

  it("that is a mark keeps its mark and nothing else of it", () => {
    const mark = { out: 4, down: 2 };
    expect(lineOfSign({ ...full, mark }, "bustPoint")).toEqual({ ...bare, sign: "bustPoint", mark });
    expect(lineOfSign(full, "bustPoint")).toEqual({ ...bare, sign: "bustPoint" });
    expect(lineOfSign({ ...full, mark }, "tight")).toEqual({ ...bare, sign: "tight", way: "letOut", amount: 6 });
  });

  it("is put to a dart, a way, a half, a change and a direction, and taken from each again", () => {
    expect(lineOfDart(bare, dart)).toEqual({ ...bare, dart });
    expect(lineOfDart({ ...bare, dart }, null)).toEqual(bare);
    expect(lineTowards(bare, "chest")).toEqual({ ...bare, towards: "chest" });
    expect(lineTowards({ ...bare, towards: "chest" }, null)).toEqual(bare);
    expect(lineTold(bare, "off")).toEqual({ ...bare, way: "off" });
    expect(lineTold(full, "letOut")).toEqual({ ...full, way: "letOut" });
    const { half: _half, ...whole } = bare;
    expect(lineOnHalf(bare, null)).toEqual(whole);
    expect(lineOnHalf(whole, "right")).toEqual({ ...whole, half: "right" });
    const { changed: _changed, ...unchanged } = bare;
    expect(lineChanged(bare, null)).toEqual(unchanged);
    expect(lineChanged(unchanged, "taken in")).toEqual({ ...unchanged, changed: "taken in" });
  });

  it("of a dart's end takes the dart that is said, else the one it had", () => {
    const other = { piece: "back", dart: "waistDart" } as const;
    expect(linePlaced({ ...bare, dart }, "dartEnd")).toEqual({ ...bare, place: "dartEnd" });
    expect(linePlaced({ ...bare, place: "dartEnd", dart }, "dartEnd", other)).toEqual({
      ...bare,
      place: "dartEnd",
      dart: other,
    });
    expect(linePlaced(bare, "frontWaist", dart)).toEqual({ ...bare, place: "frontWaist" });
  });

  it("has an amount in its own way, else in the usual one of its sign and place", () => {
    expect(lineOfAmount(full, 9)).toEqual({ ...full, amount: 9 });
    expect(lineOfAmount({ id: "a", place: "strap", sign: "cutsIn" }, 9).way).toBe("letOut");
    expect(lineOfAmount({ id: "a", place: "frontNeck", sign: "cutsIn" }, 9).way).toBe("off");
    expect(lineOfAmount({ id: "a", place: "bust", sign: "bustPoint" }, 9)).toEqual({
      id: "a",
      place: "bust",
      sign: "bustPoint",
      amount: 9,
    });
  });

  it("is marked out or down, to either side; a nought that is said stays", () => {
    const line: Observation = { id: "a" };
    expect(lineMarked(line, "out", 0)).toEqual({ id: "a", mark: { out: 0, down: 0 } });
    expect(lineMarked({ id: "a", mark: { out: 3, down: -2 } }, "out", null)).toEqual({
      id: "a",
      mark: { out: 0, down: -2 },
    });
    expect(lineMarked({ id: "a", mark: { out: 3, down: -2 } }, "down", null)).toEqual({
      id: "a",
      mark: { out: 3, down: 0 },
    });
    expect(lineMarked({ id: "a", mark: { out: 0, down: -2 } }, "down", null)).toEqual(line);
  });

  it("marks a bust point only on one half, at the bust", () => {
    const mark: Observation = { id: "a", place: "bust", sign: "bustPoint", half: "right" };
    expect(
      [
        mark,
        { ...mark, place: "dartEnd" } as const,
        { ...mark, sign: "tight" } as const,
        { id: "a", place: "bust", sign: "bustPoint" } as const,
      ].map(isBustMark),
    ).toEqual([true, false, false, false]);
    expect(numberedLines([mark, full])).toEqual([full]);
  });

  it("is told off, pinched or let out as its sign and place have it", () => {
    expect([waysAt("cutsIn", "strap"), waysAt("cutsIn", "frontNeck"), waysAt("cutsIn", undefined)]).toEqual([
      ["letOut"],
      ["off", "letOut"],
      ["off", "letOut"],
    ]);
    expect([
      waysAt("dragLines", "neckPoint"),
      waysAt("dragLines", "frontArmhole"),
      waysAt("dragLines", "bust"),
      waysAt("dragLines", undefined),
      waysAt("foldAlong", "neckPoint"),
      waysAt("gapes", "strap"),
    ]).toEqual([
      ["pinched", "letOut"],
      ["pinched", "letOut"],
      ["letOut", "pinched"],
      ["letOut", "pinched"],
      ["pinched"],
      ["pinched"],
    ]);
    expect(TRIAL_SIGNS.filter((sign) => isMark(sign))).toEqual(["dartEnds", "bustPoint"]);
    expect(TRIAL_SIGNS.filter((sign) => waysAt(sign, undefined).length === 0)).toEqual(["dartEnds", "bustPoint"]);
    expect(isMark(undefined)).toBe(false);
    // Folds and what stands off are pinched, what is tight is let out, what lies elsewhere is so far off.
    expect(TRIAL_SIGNS.filter((sign) => waysAt(sign, undefined)[0] === "pinched")).toEqual([
      "foldAcross",
      "foldAlong",
      "gapes",
      "pointed",
    ]);
    expect(TRIAL_SIGNS.filter((sign) => waysAt(sign, undefined)[0] === "letOut")).toEqual([
      "dragLines",
      "tight",
      "flat",
    ]);
  });

  it("offers each sign once, the one that stands there last where its place has it not", () => {
    const offered = signsFor({ id: "a", place: "strap", sign: "overlaps" }, TRIAL_SIGNS);
    expect(offered.at(-1)).toBe("overlaps");
    expect(new Set(offered).size).toBe(offered.length);
    expect(signsFor({ id: "a", place: "strap", sign: "slips" }, TRIAL_SIGNS)).toEqual(offered.slice(0, -1));
    expect(signsFor({ id: "a", sign: "tight" }, TRIAL_SIGNS)).toEqual(TRIAL_SIGNS);
  });
});
