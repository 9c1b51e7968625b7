/** Ease in seams, and what drifts apart by blending taken up: straight pieces, whose seams are sums and Pythagoras. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { blendedEase, walkBlended, withSeamEase } from "../../../src/core/nest/seamEase";
import { trueToBodice } from "../../../src/core/nest/trueToBodice";
import { pieceIn, setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { straightNest } from "../../support/straightNest";

const piecesOf = (width: number): readonly Piece[] =>
  invariant(
    straightNest([
      { label: "", front: { bust: width, waist: width, dart: 20 }, back: { bust: width, waist: width, dart: 20 } },
    ]).sizes[0],
    "size",
  ).pieces;

/** As wide at the waist as said, with a side seam that leans by 30 in 200, and a level waist. */
function basque(name: "frontBasque" | "backBasque", waist: number): Piece {
  const at = (x: number, y: number, level: "waist" | "hip") => ({ at: piecePoint(x, y), level });
  return {
    name,
    points: {
      centreWaist: at(0, 400, "waist"),
      sideWaist: at(waist, 400, "waist"),
      sideHip: at(waist + 30, 600, "hip"),
      centreHip: at(0, 600, "hip"),
    },
    edges: [
      { from: "centreWaist", to: "sideWaist", seam: "waist", curve: null, mouthOf: null },
      { from: "sideWaist", to: "sideHip", seam: "side", curve: null, mouthOf: null },
      { from: "sideHip", to: "centreHip", seam: "hem", curve: null, mouthOf: null },
      { from: "centreHip", to: "centreWaist", seam: "centre", curve: null, mouthOf: null },
    ],
    darts: [],
    levelLines: [],
    centreOnFold: false,
  };
}

const withPoint = (piece: Piece, name: PointName, x: number, y: number): Piece => ({
  ...piece,
  points: { ...piece.points, [name]: { ...invariant(piece.points[name], name), at: piecePoint(x, y) } },
});
const gap = (piece: Piece, from: PointName, to: PointName): number => {
  const [a, b] = [pointOf(piece, from), pointOf(piece, to)];
  return Math.hypot(a.x - b.x, a.y - b.y);
};

describe("the ease of printed seams", () => {
  it("stands on the first piece of each pair: what it is longer by", () => {
    const [front, back] = withSeamEase([...piecesOf(200), basque("frontBasque", 175), basque("backBasque", 186)]);
    // Back shoulder 105 : 40, front 100 : 40; back side 200 straight down, front 50 + 30 + 90 without its dart's mouth.
    expect(back?.seamEase?.shoulder).toBeCloseTo(Math.hypot(105, 40) - Math.hypot(100, 40), 9);
    expect(back?.seamEase?.side).toBeCloseTo(30, 9);
    // Waists 200 less a dart of 20, on basques of 175 and 186.
    expect(front?.seamEase?.waist).toBeCloseTo(5, 9);
    expect(back?.seamEase?.waist).toBeCloseTo(-6, 9);
    expect(Object.keys(front?.seamEase ?? {})).toEqual(["waist"]);
    expect(Object.keys(back?.seamEase ?? {}).toSorted()).toEqual(["shoulder", "side", "waist"]);
  });

  it("is none on a piece that is sewn to nothing as the first, and leaves all else", () => {
    const [front, back] = piecesOf(200);
    const [only] = withSeamEase([invariant(front, "front")]);
    expect(only).toEqual({ ...front, seamEase: {} });
    const [, sewn] = withSeamEase([invariant(front, "front"), invariant(back, "back")]);
    expect({ ...sewn, seamEase: undefined }).toEqual({ ...back, seamEase: undefined });
  });
});

describe("the ease of a blended piece", () => {
  const piece = invariant(piecesOf(200)[1], "back");
  const sizes = [
    { ...piece, seamEase: { side: 2, shoulder: 5 } },
    { ...piece, seamEase: { side: 6, waist: 1 } },
    { ...piece, seamEase: { side: 9 } },
  ];

  it.each([
    [0, { side: 2, shoulder: 5 }],
    [1, { side: 6, waist: 1 }],
    // Half-way; the shoulder, which the next size does not tell of, stays.
    [0.5, { side: 4, shoulder: 5 }],
    [1.25, { side: 6.75, waist: 1 }],
    // Past the ends by the nearest step.
    [-0.5, { side: 0, shoulder: 5 }],
    [3, { side: 12, waist: 1 }],
  ])("is that of its base size %d", (at, seamEase) => {
    expect(blendedEase(piece, sizes, at)).toEqual({ ...piece, seamEase });
  });

  it("is none where no size has any, and nothing told where one of them has", () => {
    expect(blendedEase(piece, [piece, piece], 0.5)).toBe(piece);
    expect(blendedEase(piece, [piece, { ...piece, seamEase: { side: 6 } }], 0.5)).toEqual({ ...piece, seamEase: {} });
    expect(blendedEase(piece, [{ ...piece, seamEase: { neck: 3, side: 1 } }], 0)).toEqual({
      ...piece,
      seamEase: { side: 1 },
    });
  });
});

describe("what drifted apart by blending", () => {
  const bare = setOf(piecesOf(200));
  const eased = setOf(withSeamEase(piecesOf(200)));

  it("is left as it is where nothing did", () => {
    const walked = walkBlended(eased, eased);
    expect(walked).toBe(eased);
  });

  it("is shared by the legs of a dart, along each: their difference is the base size's again, their sum as it was", () => {
    // The outer mouth end 10 mm further out: legs (10, 125) and (20, 125) from the end at 95, 275.
    const drifted = withPoint(pieceIn(eased, "front"), "waistDartOuter", 115, 400);
    const { front } = walkBlended({ ...eased, front: drifted }, eased);
    const walked = invariant(front, "front");
    const [inner, outer] = [
      gap(walked, "waistDartApex", "waistDartInner"),
      gap(walked, "waistDartApex", "waistDartOuter"),
    ];
    expect(outer - inner).toBeCloseTo(0, 9);
    expect(inner + outer).toBeCloseTo(Math.hypot(10, 125) + Math.hypot(20, 125), 9);
    // The end itself stays, and each mouth end on the line of its leg: x off the axis to y along it as before.
    expect(pointOf(walked, "waistDartApex")).toEqual(piecePoint(95, 275));
    const end = pointOf(walked, "waistDartOuter");
    expect((end.x - 95) / (end.y - 275)).toBeCloseTo(20 / 125, 9);
  });

  it("leaves legs whose drift is under a millionth of a millimetre", () => {
    const hardly = { ...eased, front: withPoint(pieceIn(eased, "front"), "waistDartOuter", 105, 400 + 5e-7) };
    expect(walkBlended(hardly, eased).front).toBe(hardly.front);
  });

  it("goes by the difference of the legs alone, whichever grew", () => {
    // Both mouth ends further out: legs (15, 125) and (20, 125).
    const wider = withPoint(pieceIn(eased, "front"), "waistDartOuter", 115, 400);
    const walked = pieceIn(
      walkBlended({ ...eased, front: withPoint(wider, "waistDartInner", 80, 400) }, eased),
      "front",
    );
    const half = (Math.hypot(15, 125) + Math.hypot(20, 125)) / 2;
    expect(gap(walked, "waistDartApex", "waistDartInner")).toBeCloseTo(half, 9);
    expect(gap(walked, "waistDartApex", "waistDartOuter")).toBeCloseTo(half, 9);
  });

  it("keeps legs as unlike as they were drawn", () => {
    const unlike = { ...eased, front: withPoint(pieceIn(eased, "front"), "waistDartOuter", 105, 404) };
    expect(walkBlended(unlike, unlike)).toEqual(unlike);
  });

  it("is shared by front and back at their side waists, the ease between them kept", () => {
    // The back 8 mm longer at the side than drawn.
    const longer: PieceSet = { ...eased, back: withPoint(pieceIn(eased, "back"), "sideWaist", 200, 408) };
    const walked = walkBlended(longer, eased);
    const [front, back] = [pieceIn(walked, "front"), pieceIn(walked, "back")];
    expect(gap(back, "sideBust", "sideWaist") - gap(front, "sideDartOuter", "sideWaist")).toBeCloseTo(60, 4);
    // Half of it each.
    expect(gap(front, "sideDartOuter", "sideWaist")).toBeCloseTo(94, 4);
    expect(gap(back, "sideBust", "sideWaist")).toBeCloseTo(154, 4);
  });

  it("walks to no difference where the pattern has no ease of its own", () => {
    const walked = walkBlended(bare, bare);
    const [front, back] = [pieceIn(walked, "front"), pieceIn(walked, "back")];
    // 200 on the back, 170 on the front: 185 each.
    expect(gap(back, "sideBust", "sideWaist")).toBeCloseTo(135, 4);
    expect(gap(front, "sideDartOuter", "sideWaist")).toBeCloseTo(105, 4);
  });

  it("is the basque's to make good at the waist: the bodice's less the ease", () => {
    const own = setOf(withSeamEase([...piecesOf(200), basque("frontBasque", 175), basque("backBasque", 186)]));
    const drifted: PieceSet = {
      ...own,
      frontBasque: { ...basque("frontBasque", 179), seamEase: {} },
      backBasque: { ...pieceIn(own, "backBasque") },
    };
    const walked = walkBlended(drifted, own);
    expect(gap(pieceIn(walked, "frontBasque"), "centreWaist", "sideWaist")).toBeCloseTo(175, 3);
    expect(gap(pieceIn(walked, "backBasque"), "centreWaist", "sideWaist")).toBeCloseTo(186, 3);
    expect(pieceIn(walked, "front")).toEqual(pieceIn(own, "front"));
  });
});

describe("a basque trued to its bodice", () => {
  it.each([165, 170, 190])("has a waist of %d mm, its side corner moved straight across", (wanted) => {
    const trued = trueToBodice(basque("frontBasque", 170), wanted);
    expect(trued).toEqual({
      ...basque("frontBasque", 170),
      points: { ...basque("frontBasque", 170).points, sideWaist: { at: piecePoint(wanted, 400), level: "waist" } },
    });
  });

  it("meets a waist that runs aslant to well under a hundredth", () => {
    // 3 : 4, 250 long; straight across, 0.8 of each millimetre counts.
    const slanting = withPoint(basque("frontBasque", 200), "sideWaist", 200, 250);
    const trued = trueToBodice(slanting, 255);
    expect(pointOf(trued, "sideWaist").y).toBe(250);
    expect(Math.hypot(pointOf(trued, "sideWaist").x, 150)).toBeCloseTo(255, 1);
  });
});
