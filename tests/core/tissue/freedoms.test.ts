/**
 * What patterns may differ in: which points go together and which way, on which pieces. How far they usually do is our own
 * choice; what a freedom leaves as it is follows from what it is for, and is measured.
 */
import { describe, expect, it } from "vitest";
import { seamLength } from "../../../src/core/girth/seamLength";
import { distance } from "../../../src/core/geometry/point";
import { pointOf, type Piece, type PieceName, type PointName } from "../../../src/core/pattern/piece";
import { FREEDOMS, type Freedom } from "../../../src/core/tissue/freedoms";
import { reshapePiece } from "../../../src/core/tissue/reshapePiece";
import { measureTissue } from "../../../src/core/tissue/tapeWays";
import {
  dart,
  handBack,
  handBand,
  handBasque,
  handCentreFront,
  handCup,
  handFront,
  handSideFront,
  pieceOf,
} from "./handPieces";

const back = pieceOf(
  "back",
  [
    ["centreNeck", 0, 20, "neck"],
    ["sideNeck", 80, 0, "shoulder"],
    ["shoulderTip", 180, 30, "armhole"],
    ["underarm", 250, 200, "side"],
    ["sideWaist", 230, 420, "waist"],
    ["waistDartOuter", 110, 420, "waist", "waistDart"],
    ["waistDartInner", 90, 420, "waist"],
    ["centreWaist", 0, 420, "centre"],
  ],
  [["waistDartApex", 100, 260]],
  [dart("waistDart", "waist", null)],
);
const strap = pieceOf("strap", [
  ["strapFrontInner", 0, 0, "strap"],
  ["strapFrontOuter", 20, 0, "edge"],
  ["strapBackOuter", 20, 300, "strap"],
  ["strapBackInner", 0, 300, "edge"],
]);
const backBand: Piece = { ...handBand(), name: "backBand" };
const backWithUnderBust: Piece = {
  ...back,
  edges: back.edges.map((edge) => (edge.seam === "waist" ? { ...edge, seam: "underBust" } : edge)),
};
const PIECES: readonly Piece[] = [
  handFront(),
  handCentreFront(),
  handSideFront(),
  handCup(),
  handBand(),
  back,
  backBand,
  handBasque("frontBasque"),
  handBasque("backBasque"),
  strap,
];
const pieceNamed = (name: PieceName): Piece => PIECES.find((piece) => piece.name === name) ?? handFront();
const named = (name: string): Freedom => {
  const found = FREEDOMS.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no freedom ${name}`);
  return found;
};

const FRONTS = ["front", "centreFront", "sideFront", "cup", "frontBand"];
const BACKS = ["back", "backBand"];
const BASQUES = ["frontBasque", "backBasque"];
const touched = (name: string): string[] =>
  PIECES.filter((piece) => named(name).movesOf(piece) !== null)
    .map((piece): string => piece.name)
    .toSorted();

/** Which way each point goes, as a compass on paper. */
function ways(name: string, piece: PieceName | Piece): Record<string, string> {
  const moves = named(name).movesOf(typeof piece === "string" ? pieceNamed(piece) : piece) ?? {};
  return Object.fromEntries(
    Object.entries(moves).map(([point, [x, y]]) => [
      point,
      `${y > 0 ? "down" : y < 0 ? "up" : ""}${x > 0 ? "out" : x < 0 ? "in" : ""}`,
    ]),
  );
}
const all = (way: string, ...points: string[]): Record<string, string> =>
  Object.fromEntries(points.map((point) => [point, way]));

/** A piece with a freedom moved by some millimetres. */
function withMoved(name: string, piece: Piece, by: number): Piece {
  const moves = named(name).movesOf(piece) ?? {};
  return reshapePiece(
    piece,
    new Map(
      Object.entries(moves)
        .filter(([point]) => point in piece.points)
        .map(([point, [x, y]]) => [point as PointName, [x * by, y * by] as const]),
    ),
  );
}

describe("what both halves share and what each has alone", () => {
  const SHARED = [
    "length",
    "underarm",
    "neckDepth",
    "neckRise",
    "slope",
    "touch",
    "bustHeight",
    "sideWaist",
    "underBust",
    "sideBust",
    "underarmAcross",
    "neckWidth",
    "shoulderWidth",
    "across",
    "bustGrade",
  ];
  it.each(SHARED)("%s goes on all of the bodice, on the front alone and on the back alone", (name) => {
    expect(touched(name)).toEqual([...FRONTS, ...BACKS].toSorted());
    expect(touched(`${name}Front`)).toEqual(FRONTS.toSorted());
    expect(touched(`${name}Back`)).toEqual(BACKS.toSorted());
    for (const half of [`${name}Front`, `${name}Back`])
      for (const piece of touched(half)) expect(ways(half, piece as PieceName)).toEqual(ways(name, piece as PieceName));
  });

  it("of it neck, shoulder, armhole and bust points go the way that they are named for", () => {
    expect(ways("underarm", "front")).toEqual(all("down", "underarm", "sideBust", "armholeTouch"));
    expect(ways("neckDepth", "front")).toEqual(all("down", "centreNeck"));
    expect(ways("neckRise", "front")).toEqual(all("down", "sideNeck", "princessTop"));
    expect(ways("slope", "back")).toEqual(all("down", "shoulderTip", "armholeTouch", "princessTop"));
    expect(ways("touch", "back")).toEqual(all("down", "armholeTouch"));
    expect(ways("sideWaist", "back")).toEqual(all("down", "sideWaist"));
    expect(ways("underarmAcross", "back")).toEqual(all("out", "underarm"));
    expect(ways("neckWidth", "back")).toEqual(all("out", "sideNeck", "princessTop"));
    expect(ways("across", "back")).toEqual(all("out", "armholeTouch"));
    expect(ways("sideBust", "front")).toEqual(all("out", "sideBust", "sideDartInner", "sideDartOuter"));
    expect(ways("shoulderWidth", "cup")).toEqual(
      all("out", "shoulderTip", "armholeTouch", "princessTop", "strapInner", "strapOuter"),
    );
    expect(ways("underBust", "cup")).toEqual(
      all("down", "underBustCentre", "sideUnderBust", "bandTopMiddle", "underBustDartInner", "underBustDartOuter"),
    );
  });

  it("a longer bodice is longer above the waist, everywhere by its share", () => {
    // From the waist, which stays, to the shoulder, which goes with it whole, no point overtakes one above it.
    const moves = named("length").movesOf(handFront()) ?? {};
    const share = (...points: PointName[]): number[] => points.map((point) => moves[point]?.[1] ?? 0);
    expect(
      share("centreNeck", "sideNeck", "shoulderTip", "strapInner", "strapOuter", "strapAim", "princessTop"),
    ).toEqual([1, 1, 1, 1, 1, 1, 1]);
    const down = share("armholeTouch", "bustPoint", "sideDartInner", "sideDartOuter", "sideUnderBust", "sideWaist");
    expect(down).toEqual(down.toSorted((a, b) => b - a));
    expect(down.at(-1)).toBe(0);
    expect(down.slice(0, -1).every((one) => one > 0 && one < 1)).toBe(true);
    for (const point of [
      "underarm",
      "sideBust",
      "bustLineInner",
      "bustLineOuter",
      "centreBust",
      "princessBust",
    ] as const)
      expect(share(point)[0]).toBeGreaterThan(0.3);
    for (const point of [
      "underBustCentre",
      "sideDartApex",
      "waistDartApex",
      "bandTopMiddle",
      "underBustDartInner",
      "underBustDartOuter",
      "underBustDartApex",
    ] as const)
      expect(share(point)[0]).toBeGreaterThan(0);
  });

  it("a bust point higher or lower takes all darts that aim at it along, and the side", () => {
    expect(ways("bustHeight", "front")).toEqual(
      all(
        "down",
        "bustPoint",
        "bustLineInner",
        "bustLineOuter",
        "princessBust",
        "sideDartApex",
        "waistDartApex",
        "centreBust",
        "sideBust",
        "underarm",
        "armholeTouch",
        "sideDartInner",
        "sideDartOuter",
      ),
    );
    // The back's dart aims at none.
    expect(ways("bustHeight", "back").waistDartApex).toBeUndefined();
  });
});

describe("girths", () => {
  const bust = ["underarm", "sideBust", "sideDartInner", "sideDartOuter", "sideUnderBust"];
  const waist = ["sideWaist", "sideDartInner", "sideDartOuter", "sideUnderBust"];

  it("go out at all sides, or from one half to the other", () => {
    expect(ways("bustGirth", "front")).toEqual(all("out", ...bust));
    expect(ways("bustGirth", "back")).toEqual(all("out", ...bust));
    expect(ways("bustShared", "front")).toEqual(all("out", ...bust));
    expect(ways("bustShared", "cup")).toEqual(all("out", ...bust));
    expect(ways("bustShared", "back")).toEqual(all("in", ...bust));
    for (const name of ["waistShared", "waistGradeShared"]) {
      for (const piece of [...FRONTS, "frontBasque"])
        expect(ways(name, piece as PieceName)).toEqual(all("out", ...waist));
      for (const piece of [...BACKS, "backBasque"]) expect(ways(name, piece as PieceName)).toEqual(all("in", ...waist));
    }
    for (const name of ["waistGirth", "waistGrade"])
      expect(touched(name)).toEqual([...FRONTS, ...BACKS, ...BASQUES].toSorted());
    expect(ways("waistGirth", "backBasque")).toEqual(all("out", ...waist));
    for (const name of ["hipGirth", "hipGrade"])
      expect(ways(name, "backBasque")).toEqual(all("out", "sideHip", "sideHem"));
    for (const name of ["hipShared", "hipGradeShared"]) {
      expect(ways(name, "frontBasque")).toEqual(all("out", "sideHip", "sideHem"));
      expect(ways(name, "backBasque")).toEqual(all("in", "sideHip", "sideHem"));
      expect(touched(name)).toEqual(BASQUES.toSorted());
    }
    expect(touched("bustGirth")).toEqual([...FRONTS, ...BACKS].toSorted());
  });

  it("of a bust or a waist carry the side between them in shares that make one", () => {
    const moves = (name: string) => named(name).movesOf(handFront()) ?? {};
    for (const point of ["sideDartInner", "sideDartOuter", "sideUnderBust"] as const)
      expect((moves("bustGirth")[point]?.[0] ?? 0) + (moves("waistGirth")[point]?.[0] ?? 0)).toBeCloseTo(1, 12);
  });

  it("from size to size grow with their own girth, and nothing else does", () => {
    const graded = FREEDOMS.filter(({ grade }) => grade !== null).map(
      ({ name, grade }) => `${name.split(":")[0] ?? ""} ${grade ?? ""}`,
    );
    expect([...new Set(graded)].toSorted()).toEqual(
      [
        "bustGrade bust",
        "bustGradeFront bust",
        "bustGradeBack bust",
        "waistGrade waist",
        "waistGradeShared waist",
        "hipGrade hip",
        "hipGradeShared hip",
        "intakeGrade waist",
        "dartMouthGrade waist",
        "princessIntakeGrade waist",
      ].toSorted(),
    );
  });
});

/** Of single pieces: which, and what goes which way on each. */
const EACH: readonly (readonly [string, readonly PieceName[], Record<string, string>])[] = [
  ["sideUnderBust", ["cup", "back", "frontBand", "backBand"], all("down", "sideUnderBust")],
  ["bandMiddle", ["frontBand", "backBand"], all("down", "bandTopMiddle")],
  ["waistMiddle", ["frontBand", "backBand"], all("down", "waistMiddle")],
  ["middlesAcross", ["frontBand", "backBand"], all("out", "waistMiddle", "bandTopMiddle")],
  ["underBustWidth", ["cup", "frontBand", "backBand"], all("out", "sideUnderBust")],
  ["strapHeight", ["cup", "back"], all("down", "strapInner", "strapOuter")],
  ["princessFall", ["centreFront", "sideFront"], all("down", "princessWaist")],
  ["princessBust", ["centreFront", "sideFront"], all("down", "princessBust")],
  ["princessTop", ["centreFront", "sideFront"], all("down", "princessTop")],
  ["sideRise", ["frontBasque", "backBasque"], all("down", "sideWaist")],
  ["sideHip", ["frontBasque", "backBasque"], all("down", "sideHip", "sideHem")],
  ["basqueWaist", ["frontBasque", "backBasque"], all("out", "sideWaist")],
  ["hemWidth", ["frontBasque", "backBasque"], all("out", "sideHem")],
  [
    "dartPlace",
    ["front", "back", "frontBasque", "backBasque"],
    all("out", "waistDartInner", "waistDartOuter", "waistDartApex"),
  ],
  ["dartLean", ["front", "back", "frontBasque", "backBasque"], all("out", "waistDartApex")],
  ["dartFall", ["front", "back", "frontBasque", "backBasque"], all("down", "waistDartInner", "waistDartOuter")],
  ["dartLegs", ["front", "back", "frontBasque", "backBasque"], { waistDartInner: "up", waistDartOuter: "down" }],
  [
    "dartMouth",
    ["front", "back", "frontBasque", "backBasque"],
    { waistDartInner: "in", waistDartOuter: "out", sideWaist: "out" },
  ],
  [
    "dartMouthGrade",
    ["front", "back", "frontBasque", "backBasque"],
    { waistDartInner: "in", waistDartOuter: "out", sideWaist: "out" },
  ],
  ["dartMouth", ["cup"], { underBustDartInner: "in", underBustDartOuter: "out", sideUnderBust: "out" }],
  ["dartMouthGrade", ["cup"], { underBustDartInner: "in", underBustDartOuter: "out", sideUnderBust: "out" }],
  ["dartPlace", ["cup"], all("out", "underBustDartInner", "underBustDartOuter", "underBustDartApex")],
  ["dartLean", ["cup"], all("out", "underBustDartApex")],
  ["dartFall", ["cup"], all("down", "underBustDartInner", "underBustDartOuter")],
  ["dartLegs", ["cup"], { underBustDartInner: "up", underBustDartOuter: "down" }],
  [
    "bustDartMouth",
    ["front"],
    { underarm: "up", sideBust: "up", sideDartInner: "up", sideDartOuter: "down", sideWaist: "down" },
  ],
  ["bustDartAcross", ["front"], all("out", "sideDartInner", "sideDartOuter")],
  ["bustDartSide", ["front"], all("out", "sideDartInner")],
  ["bustDartLegs", ["front"], all("out", "sideDartOuter")],
  ["bustDartAim", ["front"], all("down", "sideDartApex")],
];

const SEVERAL: readonly (readonly [string, readonly PieceName[], Record<string, string>])[] = [
  ["princessPlace", ["centreFront", "sideFront"], all("out", "princessWaist")],
  ["princessTopPlace", ["centreFront", "sideFront"], all("out", "princessTop")],
  ["princessTopHeight", ["centreFront", "sideFront"], all("down", "princessTop")],
  ["sideFrontLean", ["sideFront"], all("out", "princessWaist", "sideWaist")],
  ["sideFrontShoulder", ["sideFront"], all("down", "shoulderTip")],
  ["sideFrontTop", ["sideFront"], all("down", "princessTop", "shoulderTip", "armholeTouch")],
  ["sideFrontTurn", ["sideFront"], all("out", "princessTop", "shoulderTip")],
  ["hipHeight", ["frontBasque", "backBasque"], all("down", "centreHip", "sideHip", "centreHem", "sideHem")],
  ["hem", ["frontBasque", "backBasque"], all("down", "centreHem", "sideHem")],
  ["sideRise", ["frontBasque", "backBasque"], all("down", "sideWaist")],
  ["strapLength", ["strap"], all("down", "strapFrontInner", "strapFrontOuter")],
];

describe("what one piece has by itself, or a few together", () => {
  it.each(EACH)("%s of %s", (name, pieces, expected) => {
    for (const piece of pieces) {
      expect(ways(`${name}:${piece}`, piece)).toEqual(expected);
      expect(touched(`${name}:${piece}`)).toEqual([piece]);
    }
  });

  it.each(SEVERAL)("%s of %s together", (name, pieces, expected) => {
    expect(touched(name)).toEqual([...pieces].toSorted());
    for (const piece of pieces) expect(ways(name, piece)).toEqual(expected);
  });

  it("an under-bust is only where there is such a seam", () => {
    expect(named("underBustWidth:back").movesOf(back)).toBeNull();
    expect(ways("underBustWidth:back", backWithUnderBust)).toEqual(all("out", "sideUnderBust"));
  });

  it("darts that are not there move nothing", () => {
    const plain = handBack();
    for (const name of ["dartMouth", "dartPlace", "dartLean", "dartLength", "dartFall", "dartLegs", "dartMouthGrade"])
      expect(named(`${name}:back`).movesOf(plain)).toBeNull();
    for (const name of [
      "bustDartMouth",
      "bustDartPlace",
      "bustDartAcross",
      "bustDartSide",
      "bustDartLegs",
      "bustDartLength",
      "bustDartAim",
    ])
      expect(named(`${name}:cup`).movesOf(handCup())).toBeNull();
    expect(named("bustPoint").movesOf(handCentreFront())?.princessWaist).toEqual([1, 0]);
  });
});

describe("what a freedom leaves as it is", () => {
  it.each(["front", "back", "frontBasque", "backBasque", "cup"] as const)(
    "a wider mouth on a %s: the sewn seam",
    (name) => {
      const piece = pieceNamed(name);
      const seam = name === "cup" ? "underBust" : "waist";
      for (const freedom of [`dartMouth:${name}`, `dartMouthGrade:${name}`]) {
        const moved = withMoved(freedom, piece, 6);
        // The straight lines of a cup's lower edge lean a little.
        expect(Math.abs(seamLength(moved, seam) - seamLength(piece, seam))).toBeLessThan(0.3);
        expect(measureTissue(moved, "waistDartMouth")).toBeCloseTo(
          (measureTissue(piece, "waistDartMouth") ?? 0) + 6,
          9,
        );
      }
    },
  );

  it("a princess seam that takes more: what is sewn of the waist", () => {
    const fronts = [handCentreFront(), handSideFront()] as const;
    const sewn = (some: readonly Piece[]): number => some.reduce((sum, piece) => sum + seamLength(piece, "waist"), 0);
    for (const name of ["princessIntake", "princessIntakeGrade", "intakeGrade"]) {
      const moved = fronts.map((piece) => withMoved(name, piece, 4));
      expect(sewn(moved)).toBeCloseTo(sewn(fronts), 9);
      const gap = ([one, other]: readonly Piece[]): number =>
        other === undefined || one === undefined
          ? NaN
          : pointOf(other, "princessWaist").x - pointOf(one, "princessWaist").x;
      expect(gap(moved) - gap(fronts)).toBeCloseTo(4, 9);
    }
    expect(named("princessIntakeGrade").movesOf(handFront())).toBeNull();
    expect(named("intakeGrade").movesOf(handBand())).toBeNull();
    expect(ways("intakeGrade", "front")).toEqual(ways("dartMouth:front", "front"));
  });

  it("a dart's length: the way that it points, a millimetre for each", () => {
    const front = handFront();
    for (const [name, apex, length] of [
      ["dartLength:front", "waistDartApex", "waistDartLength"],
      ["bustDartLength:front", "sideDartApex", "bustDartLength"],
    ] as const) {
      const moved = withMoved(name, front, 5);
      expect(measureTissue(moved, length)).toBeCloseTo((measureTissue(front, length) ?? 0) + 5, 9);
      expect(distance(pointOf(moved, apex), pointOf(front, apex))).toBeCloseTo(5, 9);
    }
    expect(touched("dartLength:cup")).toEqual(["cup"]);
    for (const name of ["back", "frontBasque", "backBasque"] as const)
      expect(touched(`dartLength:${name}`)).toEqual([name]);
  });

  it("a dart moved along the side: its legs, as it turns about its end", () => {
    const front = handFront();
    const legs = (piece: Piece): number[] =>
      (["sideDartInner", "sideDartOuter"] as const).map((name) =>
        distance(pointOf(piece, "sideDartApex"), pointOf(piece, name)),
      );
    const moved = withMoved("bustDartPlace:front", front, 0.001);
    for (const [i, leg] of legs(moved).entries()) expect(leg).toBeCloseTo(legs(front)[i] ?? NaN, 6);
    expect(pointOf(moved, "sideDartInner").y).toBeGreaterThan(pointOf(front, "sideDartInner").y);
    expect(pointOf(moved, "sideDartOuter").y).toBeGreaterThan(pointOf(front, "sideDartOuter").y);
    // Of a leg that stands straight above the end nothing can be said across.
    const upright = reshapePiece(front, new Map([["sideDartInner", [125 - 234, 0] as const]]));
    expect(named("bustDartPlace:front").movesOf(upright)?.sideDartInner).toEqual([0, 1]);
  });

  it("a bust point set further out takes its darts and the mouth from below along", () => {
    expect(ways("bustPoint", "front")).toEqual(
      all(
        "out",
        "bustPoint",
        "bustLineInner",
        "bustLineOuter",
        "princessBust",
        "sideDartApex",
        "waistDartApex",
        "waistDartInner",
        "waistDartOuter",
        "princessWaist",
      ),
    );
    expect(touched("bustPoint")).toEqual(FRONTS.toSorted());
  });
});
