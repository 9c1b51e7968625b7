/** The parts of the last truing on oblong pieces, each worked out by hand. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { mouth, named, straight } from "../../../src/core/pattern/namedEdges";
import type { Edge, Piece, PieceName, PointName } from "../../../src/core/pattern/piece";
import { pieceIn, setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { asDrawn } from "../../../src/core/truing/asDrawn";
import { mergeChanges, type TruingChange } from "../../../src/core/truing/changes";
import { hasCorner, offCentre, otherSeamAt, runningOn } from "../../../src/core/truing/joins";
import { SEWN_ONLY, trueAll } from "../../../src/core/truing/trueAll";
import { squareCorners, straightenJoins } from "../../../src/core/truing/trueCorners";
import { equalLegs, smoothDarts, smoothSeams } from "../../../src/core/truing/trueSeams";
import { leftOf } from "../../../src/core/truing/truingLeft";
import { walkSeams } from "../../../src/core/truing/walkSeams";
import type { Truing } from "../../../src/core/truing/truing";

/** 200 wide and 400 long, clockwise from the centre of the neck; the shoulder goes on level from the neck. */
function oblong(name: PieceName, more: Partial<Piece> = {}): Piece {
  return {
    name,
    points: {
      centreNeck: named(0, 0, "neck"),
      underarm: named(200, 0, "underarm"),
      sideBust: named(200, 200, "bust"),
      sideWaist: named(200, 400, "waist"),
      centreWaist: named(0, 400, "waist"),
    },
    edges: [
      straight("centreNeck", "underarm", "neck"),
      straight("underarm", "sideBust", "side"),
      straight("sideBust", "sideWaist", "side"),
      straight("sideWaist", "centreWaist", "waist"),
      straight("centreWaist", "centreNeck", "centre"),
    ],
    darts: [],
    levelLines: [],
    centreOnFold: false,
    ...more,
  };
}

const at = (piece: Piece, name: PointName, x: number, y: number): Piece => ({
  ...piece,
  points: { ...piece.points, [name]: { at: piecePoint(x, y), level: piece.points[name]?.level ?? "bust" } },
});

/** With a waist dart 40 wide and 100 deep, its mouth level and its end `aside` of the middle. */
function darted(name: PieceName, aside = 0, more: Partial<Piece["darts"][number]> = {}): Piece {
  const plain = oblong(name);
  return {
    ...plain,
    points: {
      ...plain.points,
      waistDartInner: named(80, 400, "bust"),
      waistDartOuter: named(120, 400, "bust"),
      waistDartApex: named(100 + aside, 300, "bust"),
    },
    edges: plain.edges.flatMap((edge): Edge[] =>
      edge.seam === "waist"
        ? [
            straight("sideWaist", "waistDartOuter", "waist"),
            mouth("waistDartOuter", "waistDartInner", "waist", "waistDart"),
            straight("waistDartInner", "centreWaist", "waist"),
          ]
        : [edge],
    ),
    darts: [
      {
        name: "waistDart",
        seam: "waist",
        inner: "waistDartInner",
        outer: "waistDartOuter",
        apex: "waistDartApex",
        aimsAt: null,
        ...more,
      },
    ],
  };
}

const toldBy = (
  step: Truing,
  pieces: PieceSet,
): { readonly set: PieceSet; readonly changes: readonly TruingChange[] } => {
  const changes: TruingChange[] = [];
  return { set: step(pieces, changes), changes };
};

const degrees = (angle: number): number => (angle * 180) / Math.PI;
const slope = (across: number, along: number): number => degrees(Math.atan(across / along));

describe("edges at a corner", () => {
  /** A piece that is all corners: a ring of these seams, each corner named by where it stands. */
  const ring = (...seams: readonly (readonly [PointName, Edge["seam"]])[]): Piece => ({
    ...oblong("sideFront"),
    points: Object.fromEntries(seams.map(([name], k) => [name, named(k * 10, k * k * 10, "bust")])),
    edges: seams.map(([from, seam], k) => straight(from, seams[(k + 1) % seams.length]?.[0] ?? from, seam)),
  });

  it("what runs on is not what is sewn: princess before side before shoulder, and all others run on", () => {
    const piece = ring(
      ["princessTop", "shoulder"],
      ["shoulderTip", "armhole"],
      ["underarm", "side"],
      ["sideWaist", "waist"],
      ["princessWaist", "princess"],
    );
    // Princess (edge 4) comes in, shoulder (0) goes out: the shoulder runs on.
    expect(runningOn(piece, "princessTop")).toEqual({ index: 0, end: "start" });
    expect(runningOn(piece, "shoulderTip")).toEqual({ index: 1, end: "start" });
    expect(runningOn(piece, "underarm")).toEqual({ index: 1, end: "end" });
    expect(runningOn(piece, "sideWaist")).toEqual({ index: 3, end: "start" });
    expect(runningOn(piece, "princessWaist")).toEqual({ index: 3, end: "end" });
    const other = ring(["princessTop", "princess"], ["princessWaist", "side"], ["underarm", "shoulder"]);
    expect(runningOn(other, "princessTop")).toEqual({ index: 2, end: "end" });
    expect(runningOn(other, "princessWaist")).toEqual({ index: 1, end: "start" });
    expect(runningOn(other, "underarm")).toEqual({ index: 2, end: "start" });
  });

  it("at the centre it is the edge that is not the centre's, whichever comes first", () => {
    expect(offCentre(oblong("front"), "centreNeck")).toEqual({ index: 0, end: "start" });
    expect(offCentre(oblong("front"), "centreWaist")).toEqual({ index: 3, end: "end" });
  });

  it("the seam that meets another one; none within a seam", () => {
    expect(otherSeamAt(oblong("front"), "sideWaist", "side")).toBe("waist");
    expect(otherSeamAt(oblong("front"), "sideWaist", "waist")).toBe("side");
    expect(otherSeamAt(oblong("front"), "underarm", "side")).toBe("neck");
    expect(otherSeamAt(oblong("front"), "sideBust", "side")).toBeNull();
  });

  it("a corner is one that an edge begins at", () => {
    const loose = at(oblong("front"), "bustPoint", 90, 200);
    expect([
      hasCorner(loose, "underarm"),
      hasCorner(loose, "bustPoint"),
      hasCorner(loose, "sideHem"),
      hasCorner(undefined, "underarm"),
    ]).toEqual([true, false, false, false]);
  });
});

describe("changes put together", () => {
  const one: TruingChange = { piece: "front", seam: "side", what: "seamWalked", point: "underarm", amount: 0.3 };

  it("add up in one place, each kind, seam, piece and point by itself, in the order in which they came", () => {
    const others: readonly TruingChange[] = [
      { ...one, piece: "back" },
      { ...one, seam: "waist" },
      { ...one, what: "seamSmoothed" },
      { ...one, point: null },
    ];
    expect(mergeChanges([one, ...others, { ...one, amount: 0.5 }])).toEqual([{ ...one, amount: 0.8 }, ...others]);
  });

  it("are told from a tenth on, either way", () => {
    const of = (...amounts: readonly number[]): readonly number[] =>
      mergeChanges(amounts.map((amount) => ({ ...one, amount }))).map(({ amount }) => amount);
    expect([of(0.1), of(0.09), of(-0.1), of(-0.09), of(0.06, 0.06), of(0.3, -0.3)]).toEqual([
      [0.1],
      [],
      [-0.1],
      [],
      [0.12],
      [],
    ]);
  });
});

describe("what is left", () => {
  const back = oblong("back");
  const front = oblong("front");
  const longer = (by: number): PieceSet => setOf([front, at(back, "underarm", 200, -by)]);

  it.each([
    [0.99, false],
    [-0.99, false],
    [1.01, true],
    [-1.01, true],
  ])("a side of the back %d mm longer", (by, isLeft) => {
    const set = longer(by);
    const { piece, seam, off } = leftOf(set, set) ?? { piece: null, seam: null, off: 0 };
    expect([piece, seam]).toEqual(isLeft ? ["back", "side"] : [null, null]);
    expect(off).toBeCloseTo(isLeft ? 1.01 : 0, 6);
  });

  it("less the pattern's own ease", () => {
    const eased = setOf([front, at({ ...back, seamEase: { side: 8 } }, "underarm", 200, -8)]);
    expect(leftOf(eased, eased)).toBeNull();
    const none = setOf([front, { ...back, seamEase: { side: 8 } }]);
    expect(leftOf(none, none)).toEqual({ piece: "back", seam: "side", off: expect.closeTo(8, 6) });
  });

  it("a corner carried further than 60 mm, with the first seam of the outline that meets there", () => {
    const moved = (name: PointName, x: number, y: number) => leftOf(setOf([front]), setOf([at(front, name, x, y)]));
    // 36-48-60 and a little more.
    expect(moved("underarm", 236, 48)).toBeNull();
    expect(moved("underarm", 236.1, 48)).toEqual({
      piece: "front",
      seam: "neck",
      off: expect.closeTo(Math.hypot(36.1, 48), 9),
    });
    expect(moved("sideBust", 261, 200)).toEqual({ piece: "front", seam: "side", off: 61 });
    expect(moved("sideWaist", 200, 461)).toEqual({ piece: "front", seam: "side", off: 61 });
    expect(moved("centreWaist", -61, 400)).toEqual({ piece: "front", seam: "waist", off: 61 });
    // A point that no edge meets is told with the side; one that was not there before was not moved.
    const loose = at(front, "bustPoint", 90, 200);
    expect(leftOf(setOf([loose]), setOf([at(loose, "bustPoint", 151, 200)]))).toMatchObject({ seam: "side", off: 61 });
    expect(leftOf(setOf([front]), setOf([loose]))).toBeNull();
    expect(leftOf({}, setOf([front]))).toBeNull();
  });
});

describe("as drawn", () => {
  it("notes the turn of every corner but a dart's own: square ones 90, the side's own bend", () => {
    const bent = at(oblong("front"), "sideBust", 220, 200);
    const steep = slope(20, 200);
    expect(asDrawn(bent)).toEqual({
      ...bent,
      darts: [],
      drawnTurns: {
        centreNeck: expect.closeTo(90, 9),
        // The side leaves outward, so the corner turns by less; at the bust it comes back by twice as much.
        underarm: expect.closeTo(90 - steep, 9),
        sideBust: expect.closeTo(2 * steep, 9),
        sideWaist: expect.closeTo(90 - steep, 9),
        centreWaist: expect.closeTo(90, 9),
      },
    });
  });

  it("and of a dart the corner over it shut, and how much longer its outer leg is", () => {
    const piece = darted("front", 10);
    const noted = asDrawn(piece);
    // Legs from (110, 300) to (80, 400) and (120, 400): the seam is level, so that the shut dart leaves both their slopes.
    expect(noted.darts).toEqual([
      {
        ...piece.darts[0],
        drawnTurn: expect.closeTo(-(slope(30, 100) + slope(10, 100)), 9),
        drawnLegs: expect.closeTo(Math.hypot(10, 100) - Math.hypot(30, 100), 9),
      },
    ]);
    expect(Object.keys(noted.drawnTurns ?? {})).toEqual([
      "centreNeck",
      "underarm",
      "sideBust",
      "sideWaist",
      "centreWaist",
    ]);
    const gathered = darted("front", 10, { gathered: true });
    expect(asDrawn(gathered).darts).toEqual(gathered.darts);
  });
});

describe("one step alone", () => {
  const steep = (by: number): number => 200 * Math.tan((by * Math.PI) / 180);

  it.each([0.9, -0.9, 1.1, -1.1, 4])(
    "a corner at the centre %d° off is made square from 1° on, its seam as long",
    (off) => {
      const front = at(oblong("front"), "sideWaist", 200, 400 + steep(off));
      const { set, changes } = toldBy(squareCorners, setOf([front]));
      const isOff = Math.abs(off) > 1;
      expect(changes.map(({ piece, seam, what, point }) => ({ piece, seam, what, point }))).toEqual(
        isOff ? [{ piece: "front", seam: "waist", what: "cornerSquared", point: "centreWaist" }] : [],
      );
      expect(changes[0]?.amount ?? 0).toBeCloseTo(isOff ? Math.abs(off) : 0, 6);
      const waist = set.front?.edges[3];
      const end = waist?.curve?.c2 ?? piecePoint(200, 400 + steep(off));
      // Square: the end's own handle lies level with the corner.
      expect(degrees(Math.atan2(end.y - 400, end.x))).toBeCloseTo(isOff ? 0 : off, 4);
    },
  );

  it.each([2.9, -2.9, 3.1, -3.1])("corners that are sewn together and %d° off are straightened from 3° on", (off) => {
    const front = at(oblong("front"), "centreNeck", 0, steep(off));
    const { set, changes } = toldBy(straightenJoins, setOf([front, oblong("back")]));
    const told = (piece: PieceName): TruingChange => ({
      piece,
      seam: "neck",
      what: "cornerSquared",
      point: "underarm",
      amount: expect.closeTo(Math.abs(off) / 2, 6) as number,
    });
    const isOff = Math.abs(off) > 3;
    expect(changes).toEqual(isOff ? [told("front"), told("back")] : []);
    // Half of it each: the neck edges come in with slopes that sum to nothing.
    const arriving = (piece: Piece, start: number): number => {
      const handle = piece.edges[0]?.curve?.c2 ?? piecePoint(0, start);
      return degrees(Math.atan2(-handle.y, 200 - handle.x));
    };
    expect(arriving(pieceIn(set, "front"), steep(off)) + arriving(pieceIn(set, "back"), 0)).toBeCloseTo(
      isOff ? 0 : -off,
      4,
    );
    expect(arriving(pieceIn(set, "back"), 0)).toBeCloseTo(isOff ? off / 2 : 0, 4);
  });

  it.each([
    // 2.5° of 200 mm is 8.732 mm.
    [8.7, false],
    [8.8, true],
    [-8.7, false],
    [-8.8, true],
  ])("a bend %d mm out in the side", (out, isSmoothed) => {
    const front = at(oblong("front"), "sideBust", 200 + out, 200);
    const { set, changes } = toldBy(smoothSeams, setOf([front]));
    expect(changes.map(({ piece, seam, what, point }) => ({ piece, seam, what, point }))).toEqual(
      isSmoothed ? [{ piece: "front", seam: "side", what: "seamSmoothed", point: "sideBust" }] : [],
    );
    expect(set.front === front).toBe(!isSmoothed);
    for (const { amount } of changes) {
      // Drawn as a parabola with half of the turn at its end: off by a quarter of that angle's tangent of the length at most.
      expect(amount).toBeGreaterThan(0.5);
      expect(amount).toBeLessThan((200 * (2.6 * Math.PI)) / 180 / 4);
    }
  });

  it("a bend that was drawn stays, and so does one of no named seam", () => {
    const bent = at(oblong("front"), "sideBust", 220, 200);
    const drawn = { ...bent, drawnTurns: { sideBust: 2 * slope(20, 200) } };
    const unnamed = { ...bent, edges: bent.edges.map((edge) => ({ ...edge, seam: "edge" as const })) };
    for (const piece of [drawn, unnamed])
      expect(toldBy(smoothSeams, { front: piece })).toEqual({ set: { front: piece }, changes: [] });
  });

  it("legs of one length are let be, and those that differ share what they differ by", () => {
    const even = setOf([darted("front")]);
    expect(toldBy(equalLegs, even)).toEqual({ set: even, changes: [] });
    const difference = Math.hypot(30, 100) - Math.hypot(10, 100);
    const { set, changes } = toldBy(equalLegs, setOf([darted("front", 10)]));
    expect(changes).toEqual([
      {
        piece: "front",
        seam: "waist",
        what: "legsEqualled",
        point: "waistDartApex",
        amount: expect.closeTo(difference / 2, 9),
      },
    ]);
    const [apex, inner, outer] = (["waistDartApex", "waistDartInner", "waistDartOuter"] as const).map(
      (name) => set.front?.points[name]?.at ?? piecePoint(NaN, NaN),
    );
    expect(apex).toEqual(piecePoint(110, 300));
    const leg = (end: typeof apex): number => Math.hypot((end?.x ?? NaN) - 110, (end?.y ?? NaN) - 300);
    expect(leg(inner)).toBeCloseTo(leg(outer), 2);
    // As they were drawn they are let be, and gathers have none.
    const drawn = setOf([darted("front", 10, { drawnLegs: -difference })]);
    expect(toldBy(equalLegs, drawn)).toEqual({ set: drawn, changes: [] });
    const gathered = setOf([darted("front", 10, { gathered: true })]);
    expect(toldBy(equalLegs, gathered)).toEqual({ set: gathered, changes: [] });
  });

  it("a seam over a shut dart is smoothed from 3° on; as drawn, or gathered, it is let be", () => {
    // A level seam leaves both half angles: 3° is a half mouth of 100 tan 1.5° = 2.619.
    const narrow = (half: number, more: Partial<Piece["darts"][number]> = {}): PieceSet =>
      setOf([at(at(darted("front", 0, more), "waistDartInner", 100 - half, 400), "waistDartOuter", 100 + half, 400)]);
    expect(toldBy(smoothDarts, narrow(2.6)).changes).toEqual([]);
    expect(toldBy(smoothDarts, narrow(2.6)).set).toEqual(narrow(2.6));
    const { changes } = toldBy(smoothDarts, narrow(2.64));
    expect(changes).toEqual([
      {
        piece: "front",
        seam: "waist",
        what: "seamSmoothed",
        point: "waistDartApex",
        amount: expect.any(Number) as number,
      },
    ]);
    // Each side of nearly 100 mm turned by 1.5° at its end: off by 4/27 of that at most.
    expect(changes[0]?.amount).toBeGreaterThan(0.2);
    expect(changes[0]?.amount).toBeLessThan((97.4 * 1.52 * Math.PI * 4) / 180 / 27);
    const turned = narrow(20, { drawnTurn: -2 * slope(20, 100) });
    expect(toldBy(smoothDarts, turned)).toEqual({ set: turned, changes: [] });
    const gathered = narrow(20, { gathered: true });
    expect(toldBy(smoothDarts, gathered)).toEqual({ set: gathered, changes: [] });
  });

  it("a side that is longer is brought to the other at the armpit, half each, from 0.05 mm on", () => {
    const set = setOf([oblong("front"), at(oblong("back"), "underarm", 200, -8)]);
    const { set: walked, changes } = toldBy(walkSeams, set);
    const told = { seam: "side", what: "seamWalked", point: "underarm", amount: expect.closeTo(4, 6) } as const;
    expect(changes).toEqual([
      { piece: "back", ...told },
      { piece: "front", ...told },
    ]);
    // Both armpits half-way, straight up and down.
    for (const name of ["front", "back"] as const) {
      expect(walked[name]?.points.underarm?.at.x).toBeCloseTo(200, 3);
      expect(walked[name]?.points.underarm?.at.y).toBeCloseTo(-4, 3);
    }
    const near = setOf([oblong("front"), at(oblong("back"), "underarm", 200, -0.04)]);
    expect(toldBy(walkSeams, near)).toEqual({ set: near, changes: [] });
    expect(toldBy(walkSeams, setOf([oblong("front"), at(oblong("back"), "underarm", 200, 0.06)])).changes).toHaveLength(
      2,
    );
  });

  it("a side that the armpit is no end of is walked at the waist, which keeps its length", () => {
    const high = (name: PieceName, lower: number): Piece => ({
      ...at(oblong(name), "sideWaist", 200, 400 + lower),
      edges: oblong(name).edges.map((edge): Edge => (edge.from === "underarm" ? { ...edge, seam: "armhole" } : edge)),
    });
    const set = setOf([high("front", 0), high("back", 8)]);
    const { set: walked, changes } = toldBy(walkSeams, set);
    const told = { seam: "side", what: "seamWalked", point: "sideWaist", amount: expect.closeTo(4, 6) } as const;
    expect(changes).toEqual([
      { piece: "back", ...told },
      { piece: "front", ...told },
    ]);
    for (const [name, waist] of [
      ["front", 200],
      ["back", Math.hypot(200, 8)],
    ] as const) {
      const corner = walked[name]?.points.sideWaist?.at ?? piecePoint(NaN, NaN);
      expect(Math.hypot(corner.x - 200, corner.y - 200)).toBeCloseTo(204, 2);
      expect(Math.hypot(corner.x, corner.y - 400)).toBeCloseTo(waist, 2);
    }
  });

  it("a seam without a free end stays as it is", () => {
    const fixed = (name: PieceName, length: number): Piece => ({
      ...oblong(name),
      points: { cut1: named(0, 0, "bust"), cut2: named(200, 0, "bust"), cut3: named(200, length, "bust") },
      edges: [straight("cut1", "cut2", "neck"), straight("cut2", "cut3", "side"), straight("cut3", "cut1", "centre")],
    });
    const set = setOf([fixed("front", 400), fixed("back", 420)]);
    expect(toldBy(walkSeams, set)).toEqual({ set, changes: [] });
  });

  it.each([
    ["princess", "sideFront", "centreFront", "princessWaist"],
    ["underBust", "cup", "frontBand", "sideUnderBust"],
    ["shoulder", "back", "front", "shoulderTip"],
  ] as const)("a %s is walked at its own free end", (seam, first, second, corner) => {
    const ease = seam === "shoulder" ? 6 : 0;
    const piece = (name: PieceName, longer: number): Piece => ({
      ...oblong(name),
      points: { cut1: named(0, 0, "bust"), [corner]: named(0, 300 + longer, "bust"), cut3: named(-150, 150, "bust") },
      edges: [straight("cut1", corner, seam), straight(corner, "cut3", "armhole"), straight("cut3", "cut1", "centre")],
    });
    const { changes } = toldBy(walkSeams, setOf([piece(first, ease + 10), piece(second, 0)]));
    const told = { seam, what: "seamWalked", point: corner, amount: expect.closeTo(5, 6) } as const;
    expect(changes).toEqual([
      { piece: first, ...told },
      { piece: second, ...told },
    ]);
  });

  it("a basque alone is brought to the waist of its bodice, its side seam kept", () => {
    const basque: Piece = {
      ...oblong("frontBasque"),
      points: {
        centreWaist: named(0, 0, "waist"),
        sideWaist: named(206, 0, "waist"),
        sideHem: named(206, 150, "hip"),
        centreHem: named(0, 150, "hip"),
      },
      edges: [
        straight("centreWaist", "sideWaist", "waist"),
        straight("sideWaist", "sideHem", "side"),
        straight("sideHem", "centreHem", "hem"),
        straight("centreHem", "centreWaist", "centre"),
      ],
    };
    const front = oblong("front");
    const { set, changes } = toldBy(walkSeams, setOf([front, basque]));
    expect(changes).toEqual([
      {
        piece: "frontBasque",
        seam: "waist",
        what: "seamWalked",
        point: "sideWaist",
        amount: expect.closeTo(6, 6),
      },
    ]);
    expect(set.front).toBe(front);
    const side = set.frontBasque?.points.sideWaist?.at ?? piecePoint(NaN, NaN);
    // The waist straight from the centre, the side straight to the hem, 200 and 150 long: the corner lies on both circles.
    expect(Math.hypot(side.x, side.y)).toBeCloseTo(200, 2);
    expect(Math.hypot(side.x - 206, side.y - 150)).toBeCloseTo(150, 2);
  });
});

describe("all together", () => {
  it("blended pieces are made equal, straight and walked, and neither squared nor smoothed", () => {
    const front = at(oblong("front"), "sideBust", 215, 200);
    // As far in as the front goes out: straight together.
    const back = at(oblong("back"), "sideBust", 185, 200);
    // And a waist that falls 1.4° to the side on both, 2.8 together.
    const fallen = setOf(
      [front, back].map((piece) => at(piece, "sideWaist", 200, 400 + 200 * Math.tan((1.4 * Math.PI) / 180))),
    );
    const trued = trueAll(fallen, SEWN_ONLY);
    expect(trued.pieces).toBe(fallen);
    expect(trued).toEqual({ pieces: fallen, changes: [], left: null });
    expect(new Set(trueAll(fallen).changes.map(({ what }) => what))).toEqual(
      new Set(["cornerSquared", "seamSmoothed"]),
    );
  });

  it("goes on until nothing changes, twelve passes at the most", () => {
    let calls = 0;
    const endless: Truing = (pieces) => {
      calls += 1;
      return { ...pieces };
    };
    trueAll(setOf([oblong("front")]), [endless]);
    expect(calls).toBe(12);
    calls = 0;
    const once: Truing = (pieces) => {
      calls += 1;
      return calls === 1 ? { ...pieces } : pieces;
    };
    trueAll(setOf([oblong("front")]), [once]);
    expect(calls).toBe(2);
  });
});
