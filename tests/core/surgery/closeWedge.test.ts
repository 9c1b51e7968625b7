/** A wedge closed on straight pieces: where it is folded, which part turns, by what, and what goes with it. */
import { describe, expect, it } from "vitest";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { pointOf, type Dart, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { closeWedgeIntoDart, takesWedge } from "../../../src/core/surgery/closeWedge";
import { cornerPiece, dartFor, type CornerOf } from "../../support/cornerPiece";
import { seamByBezierJs } from "../../support/independent";

type Wedge = Parameters<typeof closeWedgeIntoDart>[1];

const BUST = piecePoint(100, 120);
const CORNERS: readonly CornerOf[] = [
  ["centreNeck", 0, 0, "neck"],
  ["sideNeck", 60, 0, "shoulder"],
  ["shoulderDartInner", 80, 0, "shoulder", "shoulderDart"],
  ["shoulderDartOuter", 120, 0, "shoulder"],
  ["shoulderTip", 160, 0, "armhole"],
  ["armholeTouch", 150, 80, "armhole"],
  ["underarm", 200, 100, "side"],
  ["sideBust", 200, 120, "side"],
  ["sideWaist", 200, 300, "waist"],
  ["waistDartOuter", 115, 300, "waist", "waistDart"],
  ["waistDartInner", 85, 300, "waist"],
  ["centreWaist", 0, 300, "centre"],
  ["centreBust", 0, 120, "centre"],
];
const DARTS = [dartFor("shoulderDart", "shoulder", "bustPoint"), dartFor("waistDart", "waist", "bustPoint")];
const INSIDE = { bustPoint: [100, 120], shoulderDartApex: [105, 90], waistDartApex: [100, 150] } as const;
const front = (
  corners: readonly CornerOf[] = CORNERS,
  inside: Parameters<typeof cornerPiece>[0]["inside"] = INSIDE,
  darts: readonly Dart[] = DARTS,
): Piece => cornerPiece({ corners, inside, darts });

function closed(piece: Piece, wedge: Wedge) {
  const done = closeWedgeIntoDart(piece, wedge);
  if (!done.ok) throw new Error(JSON.stringify(done.failure));
  return done.value;
}
const foldOf = (piece: Piece, wedge: Wedge): PiecePoint => invariant(closed(piece, wedge).trace.cuts[0]?.[0], "fold");
const round = ({ x, y }: PiecePoint, about: PiecePoint, angle: number): { readonly x: number; readonly y: number } => ({
  x: expect.closeTo(about.x + (x - about.x) * Math.cos(angle) - (y - about.y) * Math.sin(angle), 9),
  y: expect.closeTo(about.y + (x - about.x) * Math.sin(angle) + (y - about.y) * Math.cos(angle), 9),
});
const apart = (a: PiecePoint, b: PiecePoint): number => Math.hypot(a.x - b.x, a.y - b.y);
const without = (name: string): readonly Dart[] =>
  DARTS.map((dart) => (dart.name === name ? { ...dart, aimsAt: null } : dart));

describe("where a wedge is folded", () => {
  const neck = (x: number, piece = front()): PiecePoint =>
    foldOf(piece, { seam: "neck", amount: 0.3, point: piecePoint(x, 120) });

  it("is where the edge comes nearest the point, no nearer its ends than 15 in 100", () => {
    expect(neck(30)).toEqual({ x: expect.closeTo(30, 6), y: 0 });
    expect(neck(100)).toEqual({ x: expect.closeTo(51, 9), y: 0 });
    expect(neck(-20)).toEqual({ x: expect.closeTo(9, 9), y: 0 });
  });

  it("is the same on an edge with bends in it", () => {
    const [first, ...rest] = CORNERS;
    if (first === undefined) throw new Error("corners");
    const bent = front([first, ["bend001", 25, 0, "neck"], ["bend002", 40, 0, "neck"], ...rest]);
    for (const [x, at] of [
      [30, 30],
      [15, 15],
      [45, 45],
      [100, 51],
      [-20, 9],
    ] as const)
      expect(Math.abs(neck(x, bent).x - at)).toBeLessThan(1e-3);
  });

  it("is on the nearest stretch of the seam that is long enough", () => {
    // The neck in two at a corner: 50 mm level and 60 mm down.
    const cornered = front(
      [
        ["centreNeck", -50, 60, "neck"],
        ["corner01", 0, 60, "neck"],
        ["sideNeck", 0, 0, "shoulder"],
        ...CORNERS.slice(2),
      ],
      { ...INSIDE, bustPoint: [100, 120] },
    );
    expect(foldOf(cornered, { seam: "neck", amount: 0.3, point: piecePoint(80, 30) }).x).toBe(0);
    expect(foldOf(cornered, { seam: "neck", amount: 0.3, point: piecePoint(-25, 120) })).toEqual({
      x: expect.closeTo(-25, 6),
      y: 60,
    });
    // Under 40 mm it is passed over, although it is nearer.
    const short = front(
      [
        ["centreNeck", -39, 60, "neck"],
        ["corner01", 0, 60, "neck"],
        ["sideNeck", 0, 0, "shoulder"],
        ...CORNERS.slice(2),
      ],
      INSIDE,
    );
    expect(foldOf(short, { seam: "neck", amount: 0.3, point: piecePoint(-5, 100) }).x).toBe(0);
  });

  it("is never in the mouth of a dart in it", () => {
    const mouthed = front(
      [
        ["centreNeck", -80, 0, "neck"],
        ["neckDartInner", -30, 0, "neck", "neckDart"],
        ["neckDartOuter", 15, 0, "neck"],
        ...CORNERS.slice(1),
      ],
      { ...INSIDE, neckDartApex: [0, 60] },
      [...DARTS, dartFor("neckDart", "neck")],
    );
    expect(neck(0, mouthed).x).toBeCloseTo(15 + 0.15 * 45, 9);
    expect(neck(-60, mouthed).x).toBeCloseTo(-60, 6);
  });
});

describe("what a wedge goes into", () => {
  const armhole = { seam: "armhole", amount: 2, point: BUST } as const;
  // On the lower edge, 15 in 100 down from (150, 80) to (200, 100).
  const fold = piecePoint(157.5, 83);
  const turn = 2 * Math.asin(1 / apart(fold, BUST));

  it("is the nearest bust dart, the part on the way to it turned about the point so that the fold shuts", () => {
    const { piece, dart, trace, turn: by } = closed(front(), armhole);
    expect([dart, trace.hinges, trace.parts.length]).toEqual(["shoulderDart", [BUST], 1]);
    expect(by).toBeCloseTo(turn, 12);
    // Back to the shoulder, it turns on: +x towards +y.
    expect(trace.parts[0]?.motion.angle).toBeCloseTo(turn, 12);
    expect(trace.parts[0]?.before.map(({ a }) => [a.x, a.y])).toEqual([
      [120, 0],
      [160, 0],
      [150, 80],
      [157.5, 83],
      [100, 120],
    ]);
    expect(pointOf(piece, "sideNeck")).toEqual(piecePoint(60, 0));
    expect(pointOf(piece, "waistDartOuter")).toEqual(piecePoint(115, 300));
  });

  it("is one further on where the nearer serves no bust: that part turns back", () => {
    const { piece, dart, trace, turn: by } = closed(front(CORNERS, INSIDE, without("shoulderDart")), armhole);
    expect([dart, by]).toEqual(["waistDart", expect.closeTo(turn, 12)]);
    expect(trace.parts[0]?.motion.angle).toBeCloseTo(-turn, 12);
    expect(trace.parts[0]?.before.map(({ a }) => [a.x, a.y])).toEqual([
      [157.5, 83],
      [200, 100],
      [200, 120],
      [200, 300],
      [115, 300],
      [100, 120],
    ]);
    for (const [name, x, y] of [
      ["underarm", 200, 100],
      ["sideBust", 200, 120],
      ["sideWaist", 200, 300],
    ] as const)
      expect(pointOf(piece, name)).toEqual(round(piecePoint(x, y), BUST, -turn));
    expect(pointOf(piece, "shoulderTip")).toEqual(piecePoint(160, 0));
    // The middle of the wider mouth, 30 mm short of the point as it was.
    expect(apart(pointOf(piece, "waistDartApex"), BUST)).toBeCloseTo(30, 9);
    const opening = (of: Piece): number => {
      const [a, b] = [pointOf(of, "waistDartInner"), pointOf(of, "waistDartOuter")];
      return Math.atan2(b.x - 100, b.y - 120) - Math.atan2(a.x - 100, a.y - 120);
    };
    expect(Math.abs(opening(piece) - opening(front()) - turn)).toBeLessThan(2e-4);
  });

  it("is looked for all round, but not over the centre line", () => {
    const far = closed(front(CORNERS, INSIDE, without("shoulderDart")), { seam: "neck", amount: 0.3, point: BUST });
    // Onward from the neck, round shoulder, armhole and side, comes the waist dart.
    expect(far.dart).toBe("waistDart");
    const bare = front(
      CORNERS,
      INSIDE,
      DARTS.map((dart) => ({ ...dart, aimsAt: null })),
    );
    expect(closeWedgeIntoDart(bare, armhole)).toEqual({ ok: false, failure: { code: "wedge/no-dart" } });
    expect([takesWedge(bare, "armhole"), takesWedge(front(), "armhole")]).toEqual([false, true]);
  });

  it("is the one with the shorter way along the outline", () => {
    // From the fold at the foot of the plumb on a side of 200 down to the waist dart, or up to a dart in the armhole.
    const sided = (armholeDart: number): Piece =>
      front(
        [
          ["centreNeck", 0, 0, "neck"],
          ["sideNeck", 60, 0, "armhole"],
          ["armholeDartInner", armholeDart - 10, 0, "armhole", "armholeDart"],
          ["armholeDartOuter", armholeDart, 0, "armhole"],
          ["underarm", 200, 0, "side"],
          ["sideWaist", 200, 240, "waist"],
          ["waistDartOuter", 115, 240, "waist", "waistDart"],
          ["waistDartInner", 85, 240, "waist"],
          ["centreWaist", 0, 240, "centre"],
        ],
        { bustPoint: [100, 120], armholeDartApex: [100, 100], waistDartApex: [100, 150] },
        [dartFor("armholeDart", "armhole", "bustPoint"), dartFor("waistDart", "waist", "bustPoint")],
      );
    const dartOf = (armholeDart: number) => closed(sided(armholeDart), { seam: "side", amount: 2, point: BUST }).dart;
    // Down: 120 and 85; up: 120 and 200 less where the dart lies.
    expect([dartOf(117), dartOf(113)]).toEqual(["armholeDart", "waistDart"]);
  });

  it("is refused a dart that would open by more than 75 degrees at the point, with what opens it just so", () => {
    const half = (37 * Math.PI) / 180;
    const wide = front(
      [
        ["centreNeck", 0, 0, "neck"],
        ["sideNeck", 60, 0, "shoulder"],
        ["shoulderTip", 160, 0, "armhole"],
        ["underarm", 300, 20, "side"],
        ["sideWaist", 300, 200, "waist"],
        ["waistDartOuter", 100 + 80 * Math.tan(half), 200, "waist", "waistDart"],
        ["waistDartInner", 100 - 80 * Math.tan(half), 200, "waist"],
        ["centreWaist", 0, 200, "centre"],
      ],
      { bustPoint: [100, 120], waistDartApex: [100, 150] },
      [dartFor("waistDart", "waist", "bustPoint")],
    );
    // The side stands 200 mm from the point; one degree is left.
    const most = 2 * 200 * Math.sin(Math.PI / 360);
    const asked = (amount: number) => closeWedgeIntoDart(wide, { seam: "side", amount, point: BUST });
    const refused = asked(4);
    expect(refused).toEqual({ ok: false, failure: { code: "wedge/too-much", most: expect.any(Number) } });
    const told = refused.ok || refused.failure.code === "wedge/no-dart" ? Number.NaN : refused.failure.most;
    expect(Math.abs(told - most)).toBeLessThan(0.05);
    expect([asked(most - 0.01).ok, asked(most + 0.01).ok]).toEqual([true, false]);
  });
});

describe("what goes with the part that turns", () => {
  const inside = {
    ...INSIDE,
    bustLineInner: [100, 120],
    bustLineOuter: [100, 120],
    strapAim: [170, 40],
    underBustCentre: [150, 250],
  } as const;

  it("is the bust line with its side end, and what lies within it", () => {
    const { piece, turn } = closed(front(CORNERS, inside, without("shoulderDart")), {
      seam: "armhole",
      amount: 2,
      point: BUST,
    });
    // Onward to the waist dart: the side goes, and the bust line's outer end with it, which lies on the point turned about.
    expect(pointOf(piece, "underBustCentre")).toEqual(round(piecePoint(150, 250), BUST, -turn));
    expect(pointOf(piece, "strapAim")).toEqual(piecePoint(170, 40));
  });

  it("goes by its owner where that is elsewhere than it lies", () => {
    const owned = (outer: readonly [number, number], inner: readonly [number, number]) => {
      const { piece, turn } = closed(
        front(CORNERS, { ...inside, bustLineOuter: outer, bustLineInner: inner }, without("shoulderDart")),
        { seam: "armhole", amount: 2, point: BUST },
      );
      return { outer: pointOf(piece, "bustLineOuter"), inner: pointOf(piece, "bustLineInner"), turn };
    };
    // Far off the cloth, the outer end still goes with the side; on it, the inner one does not.
    const { outer, inner, turn } = owned([90, 130], [150, 200]);
    expect(outer).toEqual(round(piecePoint(90, 130), BUST, -turn));
    expect(inner).toEqual(piecePoint(150, 200));
  });

  it("is nothing beyond the cut", () => {
    const { piece } = closed(front(CORNERS, { ...inside, underBustCentre: [40, 200] }, without("shoulderDart")), {
      seam: "armhole",
      amount: 2,
      point: BUST,
    });
    expect(pointOf(piece, "underBustCentre")).toEqual(piecePoint(40, 200));
  });

  it("is the place that a strap makes for with the inner end of its seam", () => {
    const cup = cornerPiece({
      name: "cup",
      corners: [
        ["centreBust", 0, 80, "neck"],
        ["strapInner", 90, 0, "strap"],
        ["strapOuter", 120, 0, "armhole"],
        ["underarm", 200, 100, "side"],
        ["sideUnderBust", 200, 200, "underBust"],
        ["underBustDartOuter", 110, 200, "underBust", "underBustDart"],
        ["underBustDartInner", 90, 200, "underBust"],
        ["underBustCentre", 0, 200, "centre"],
      ],
      inside: { bustPoint: [100, 120], strapAim: [100, -200], underBustDartApex: [100, 140] },
      darts: [dartFor("underBustDart", "underBust", "bustPoint")],
    });
    // Off the neck everything onward turns, the strap with it; off the armhole only what lies beyond.
    const neck = closed(cup, { seam: "neck", amount: 2, point: BUST });
    expect(pointOf(neck.piece, "strapAim")).toEqual(round(piecePoint(100, -200), BUST, -neck.turn));
    const armhole = closed(cup, { seam: "armhole", amount: 2, point: BUST });
    expect(pointOf(armhole.piece, "strapAim")).toEqual(piecePoint(100, -200));
  });
});

describe("the edge a wedge was taken from", () => {
  const places = (piece: Piece, names: readonly PointName[]): readonly PiecePoint[] =>
    names.map((name) => pointOf(piece, name));

  it.each([2, 6, 12])("is shorter by the %d mm; a hollow armhole is drawn that much less deep", (amount) => {
    const before = front();
    const { piece, turn } = closed(before, { seam: "armhole", amount, point: BUST });
    expect(seamByBezierJs(before, "armhole") - seamByBezierJs(piece, "armhole")).toBeCloseTo(amount, 4);
    const [tip, touch, underarm] = places(piece, ["shoulderTip", "armholeTouch", "underarm"]);
    if (tip === undefined || touch === undefined || underarm === undefined) throw new Error("armhole");
    expect(underarm).toEqual(piecePoint(200, 100));
    // The corner, turned with the part, moved straight towards the middle between the ends of the armhole.
    const [dx, dy] = [50 * Math.cos(turn) + 40 * Math.sin(turn), 50 * Math.sin(turn) - 40 * Math.cos(turn)];
    const [mx, my] = [touch.x - 100 - dx, touch.y - 120 - dy];
    const [ox, oy] = [(tip.x + underarm.x) / 2 - 100 - dx, (tip.y + underarm.y) / 2 - 120 - dy];
    const along = (mx * ox + my * oy) / Math.hypot(ox, oy);
    expect(along).toBeGreaterThan(0);
    expect(along).toBeLessThan(10);
    expect(Math.hypot(mx, my)).toBeLessThan(along + 0.2);
  });

  it("of three stretches gives by both its corners, towards the middle between its two ends", () => {
    const [a, b] = [CORNERS.slice(0, 5), CORNERS.slice(6)];
    const before = front([...a, ["armholeTouch", 150, 50, "armhole"], ["corner01", 155, 90, "armhole"], ...b]);
    const { piece, turn } = closed(before, { seam: "armhole", amount: 8, point: piecePoint(100, 110) });
    expect(seamByBezierJs(before, "armhole") - seamByBezierJs(piece, "armhole")).toBeCloseTo(8, 4);
    const [tip, touch, lower, underarm] = places(piece, ["shoulderTip", "armholeTouch", "corner01", "underarm"]);
    if (tip === undefined || touch === undefined || lower === undefined || underarm === undefined)
      throw new Error("armhole");
    // Folded on the lowest stretch or on the middle one, the upper corner turns with the part.
    const turned = {
      x: 100 + 50 * Math.cos(turn) + 60 * Math.sin(turn),
      y: 110 + 50 * Math.sin(turn) - 60 * Math.cos(turn),
    };
    const by = { x: touch.x - turned.x, y: touch.y - turned.y };
    expect(Math.hypot(by.x, by.y)).toBeGreaterThan(0.1);
    const onLower = { x: lower.x - by.x, y: lower.y - by.y };
    const from = { x: (tip.x + underarm.x) / 2 - onLower.x, y: (tip.y + underarm.y) / 2 - onLower.y };
    // Both go by the same, and that is towards the middle as the lower one sees it.
    expect(Math.atan2(by.y, by.x)).toBeCloseTo(Math.atan2(from.y, from.x), 9);
  });

  it("keeps the directions and the lengths of its handles as they go with its ends", () => {
    const hollow = cornerPiece({
      corners: CORNERS,
      curves: {
        centreNeck: [
          [25, 20],
          [50, 18],
        ],
      },
      inside: INSIDE,
      darts: DARTS,
    });
    const { piece, turn } = closed(hollow, { seam: "neck", amount: 1.5, point: piecePoint(40, 120) });
    expect(seamByBezierJs(hollow, "neck") - seamByBezierJs(piece, "neck")).toBeCloseTo(1.5, 4);
    const curve = invariant(piece.edges.find(({ from }) => from === "centreNeck")?.curve, "neck");
    const end = pointOf(piece, "sideNeck");
    expect(end).toEqual(round(piecePoint(60, 0), piecePoint(40, 120), -turn));
    expect(Math.atan2(curve.c1.y, curve.c1.x)).toBeCloseTo(Math.atan2(20, 25), 9);
    expect(Math.atan2(curve.c2.y - end.y, curve.c2.x - end.x)).toBeCloseTo(Math.atan2(18, -10) - turn, 9);
    // Both drawn shorter alike.
    expect(Math.hypot(curve.c1.x, curve.c1.y) / Math.hypot(25, 20)).toBeCloseTo(
      Math.hypot(curve.c2.x - end.x, curve.c2.y - end.y) / Math.hypot(10, 18),
      9,
    );
  });
});

describe("the dart that a wedge went into", () => {
  it("ends as far from the point and as far aside of its middle as before, its seam as long and its legs alike", () => {
    const { piece, turn } = closed(front(), { seam: "armhole", amount: 4, point: BUST });
    const apex = pointOf(piece, "shoulderDartApex");
    expect(apart(apex, BUST)).toBeCloseTo(Math.hypot(5, 30), 9);
    // Its middle line turned by half of what it opened by; its end lies atan(5 / 30) on from that.
    const along = Math.atan2(apex.y - 120, apex.x - 100) + Math.PI / 2;
    expect(Math.abs(along - Math.atan(5 / 30) - turn / 2)).toBeLessThan(2e-3);
    expect(seamByBezierJs(piece, "shoulder")).toBeCloseTo(60, 3);
    expect(apart(apex, pointOf(piece, "shoulderDartInner"))).toBeCloseTo(
      apart(apex, pointOf(piece, "shoulderDartOuter")),
      3,
    );
  });

  it("that reached the point still does", () => {
    const { piece } = closed(front(CORNERS, { ...INSIDE, shoulderDartApex: [100, 120] }), {
      seam: "armhole",
      amount: 4,
      point: BUST,
    });
    expect(pointOf(piece, "shoulderDartApex")).toEqual(piecePoint(100, 120));
  });

  it("drawn up as gathers has its mouth as wide as the turn made it, and nothing trued", () => {
    const gathered = front(
      CORNERS,
      INSIDE,
      DARTS.map((dart) => ({ ...dart, gathered: true as const })),
    );
    const { piece, turn } = closed(gathered, { seam: "armhole", amount: 4, point: BUST });
    expect(pointOf(piece, "shoulderDartInner")).toEqual(piecePoint(80, 0));
    expect(pointOf(piece, "shoulderDartOuter")).toEqual(round(piecePoint(120, 0), BUST, turn));
    expect(piece.edges.find(({ from }) => from === "shoulderDartOuter")?.curve).toBeNull();
  });

  it("in the same seam keeps what the wedge left of it", () => {
    const corners: readonly CornerOf[] = [
      ["centreNeck", 0, 0, "neck"],
      ["sideNeck", 60, 0, "armhole"],
      ["armholeDartInner", 90, 0, "armhole", "armholeDart"],
      ["armholeDartOuter", 110, 0, "armhole"],
      ["underarm", 200, 0, "side"],
      ["sideWaist", 200, 240, "waist"],
      ["centreWaist", 0, 240, "centre"],
    ];
    const piece = front(corners, { bustPoint: [100, 120], armholeDartApex: [100, 100] }, [
      dartFor("armholeDart", "armhole", "bustPoint"),
    ]);
    const done = closed(piece, { seam: "armhole", amount: 3, point: piecePoint(150, 120) });
    expect(seamByBezierJs(done.piece, "armhole")).toBeCloseTo(120 - 3, 2);
  });
});
