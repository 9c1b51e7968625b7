/** Names of pieces and darts, sorted by hand into what they are. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { CENTRE_CORNERS } from "../../../src/core/pattern/centreCorners";
import {
  DART_HOMES,
  DART_NAMES,
  dartName,
  homeOf,
  liesAlongBust,
  opensUpright,
  partsOfDart,
} from "../../../src/core/pattern/dartNames";
import { controls, curved, DOWN, INWARD, mouth, named, OUTWARD, straight } from "../../../src/core/pattern/namedEdges";
import {
  dartOf,
  DRESS_PIECES,
  isBend,
  isNumbered,
  isSameDart,
  LEVEL_NAMES,
  pointNames,
  pointOf,
  type DartHome,
  type Piece,
  type PieceName,
} from "../../../src/core/pattern/piece";
import {
  isBand,
  isBasque,
  isBelowWaist,
  isFacing,
  isFrontPiece,
  isOnBody,
} from "../../../src/core/pattern/pieceGroups";
import {
  isSamePiece,
  OTHER_PIECES,
  PATTERN_PIECES,
  PIECE_ORDER,
  pieceIn,
  piecesOf,
  setOf,
  withPiece,
} from "../../../src/core/pattern/pieceSet";
import { CoreBug } from "../../../src/core/result";
import { radiansFromDegrees } from "../../../src/core/units";

const BODICE: readonly PieceName[] = [
  "front",
  "centreFront",
  "sideFront",
  "cup",
  "frontBand",
  "back",
  "backBand",
  "frontBasque",
  "backBasque",
];
const SKIRT: readonly PieceName[] = ["skirtFront", "skirtSideFront", "skirtSideBack", "skirtBack"];
const FACINGS: readonly PieceName[] = ["frontFacing", "backFacing", "frontArmholeFacing", "backArmholeFacing"];
const OTHERS: readonly PieceName[] = ["other1", "other2", "other3", "other4", "other5", "other6"];
const ALL: readonly PieceName[] = [...BODICE, "strap", ...SKIRT, ...FACINGS, ...OTHERS];

const piece = (name: PieceName, x = 0): Piece => ({
  name,
  points: { sideWaist: { at: piecePoint(x, 0), level: "waist" } },
  edges: [],
  darts: [],
  levelLines: [],
  centreOnFold: true,
});

describe("pieces by what they are", () => {
  const those = (is: (name: PieceName) => boolean): readonly PieceName[] => ALL.filter(is);

  it("front pieces", () => {
    expect(those(isFrontPiece)).toEqual([
      "front",
      "centreFront",
      "sideFront",
      "cup",
      "frontBand",
      "frontBasque",
      "skirtFront",
      "skirtSideFront",
      "frontFacing",
      "frontArmholeFacing",
    ]);
  });

  it("basques, bands, facings, and all below the waist", () => {
    expect(those(isBasque)).toEqual(["frontBasque", "backBasque"]);
    expect(those(isBand)).toEqual(["frontBand", "backBand"]);
    expect(those(isFacing)).toEqual(FACINGS);
    expect(those(isBelowWaist)).toEqual(["frontBasque", "backBasque", ...SKIRT]);
  });

  it("pieces drawn where they lie on the body", () => {
    expect(those(isOnBody)).toEqual(BODICE);
  });
});

describe("a set of pieces", () => {
  it("is told in one order: the pattern's, the dress's, the others", () => {
    expect(OTHER_PIECES).toEqual(OTHERS);
    expect(PATTERN_PIECES).toEqual([...BODICE, "strap", ...OTHERS]);
    expect(DRESS_PIECES).toEqual([...SKIRT, ...FACINGS]);
    expect(PIECE_ORDER).toEqual(ALL);
    expect(piecesOf(setOf(ALL.toReversed().map((name) => piece(name)))).map(({ name }) => name)).toEqual(ALL);
    expect(piecesOf(setOf(ALL.map((name) => piece(name)))).map(({ name }) => name)).toEqual(ALL);
    expect(piecesOf({ back: piece("back"), front: piece("front") }).map(({ name }) => name)).toEqual(["front", "back"]);
    // Out of order at the very end only.
    const late = setOf([piece("front"), piece("strap"), piece("back")]);
    expect(piecesOf(late).map(({ name }) => name)).toEqual(["front", "back", "strap"]);
    expect(piecesOf({})).toEqual([]);
  });

  it("gives a piece that it has, and takes one in the place of another", () => {
    const set = setOf([piece("front"), piece("back")]);
    expect(pieceIn(set, "back")).toBe(set.back);
    expect(() => pieceIn(set, "cup")).toThrow("missing: cup");
    const wider = piece("back", 5);
    expect(withPiece(set, wider)).toEqual({ front: piece("front"), back: wider });
    expect(set).toEqual({ front: piece("front"), back: piece("back") });
  });

  it("knows the same piece made twice", () => {
    expect(isSamePiece(piece("front", 3), piece("front", 3))).toBe(true);
    expect(isSamePiece(piece("front", 3), piece("front", 4))).toBe(false);
    expect(isSamePiece(piece("front"), undefined)).toBe(false);
    expect(isSamePiece(undefined, undefined)).toBe(true);
  });
});

describe("darts by name", () => {
  const HOMES: readonly DartHome[] = ["side", "french", "waist", "underBust", "shoulder", "armhole", "neck", "centre"];

  it("are eight homes with three numbers each, put together and taken apart", () => {
    expect(DART_HOMES).toEqual(HOMES);
    expect(DART_NAMES).toEqual(HOMES.flatMap((home) => [`${home}Dart`, `${home}Dart2`, `${home}Dart3`]));
    expect(dartName("side")).toBe("sideDart");
    expect(dartName("underBust", "3")).toBe("underBustDart3");
    expect(partsOfDart("waistDart")).toEqual({ home: "waist", number: "" });
    expect(partsOfDart("armholeDart2")).toEqual({ home: "armhole", number: "2" });
    expect(homeOf("frenchDart3")).toBe("french");
    for (const name of DART_NAMES) {
      const { home, number } = partsOfDart(name);
      expect(dartName(home, number)).toBe(name);
    }
  });

  it("are none by any other name", () => {
    expect(() => Reflect.apply(partsOfDart, undefined, ["sleeveDart"])).toThrow("no dart name: sleeveDart");
  });

  it("lie along the bust line, or stand upright in their mouth", () => {
    expect(HOMES.filter((home) => liesAlongBust(dartName(home, "2")))).toEqual(["side", "armhole", "centre"]);
    expect(HOMES.filter((home) => opensUpright(dartName(home)))).toEqual(["side", "french", "armhole", "centre"]);
  });
});

describe("points and edges by name", () => {
  it("a bend only shapes a line, a numbered corner is of a piece without a name", () => {
    expect(isBend("bend001")).toBe(true);
    expect(isBend("bandTopMiddle")).toBe(false);
    expect(isNumbered("corner01")).toBe(true);
    expect(isNumbered("neckCorner")).toBe(false);
  });

  it("levels from the neck down; corners of the centre line from the neck down", () => {
    expect(LEVEL_NAMES).toEqual(["neck", "shoulder", "underarm", "bust", "underBust", "waist", "hip"]);
    expect(CENTRE_CORNERS).toEqual(["centreNeck", "centreWaist", "centreHem"]);
  });

  it("a piece gives its points and darts, and a bug of ours for what it has not", () => {
    const dart = {
      name: "waistDart",
      seam: "waist",
      inner: "waistDartInner",
      outer: "waistDartOuter",
      apex: "waistDartApex",
      aimsAt: null,
    } as const;
    const darted: Piece = { ...piece("front", 7), darts: [{ ...dart, name: "sideDart" }, dart] };
    expect(pointOf(darted, "sideWaist")).toEqual(piecePoint(7, 0));
    expect(pointNames(darted)).toEqual(["sideWaist"]);
    expect(dartOf(darted, "waistDart")).toBe(dart);
    expect(() => dartOf(darted, "neckDart")).toThrow("missing: front.neckDart");
    expect(() => pointOf(darted, "underarm")).toThrow(CoreBug);
    expect(() => pointOf(darted, "underarm")).toThrow("missing: front.underarm");
  });

  it("a dart is the same where both the piece and the name are", () => {
    const ref = { piece: "front", dart: "sideDart" } as const;
    expect(isSameDart(ref, { ...ref })).toBe(true);
    expect(isSameDart(ref, { ...ref, piece: "back" })).toBe(false);
    expect(isSameDart(ref, { ...ref, dart: "sideDart2" })).toBe(false);
  });

  it("edges are straight, a mouth, or a curve", () => {
    const [c1, c2] = [piecePoint(1, 2), piecePoint(3, 4)];
    expect(named(1, 2, "hip")).toEqual({ at: piecePoint(1, 2), level: "hip" });
    const edge = { from: "sideWaist", to: "sideHem", seam: "side" };
    expect(straight("sideWaist", "sideHem", "side")).toEqual({ ...edge, curve: null, mouthOf: null });
    expect(mouth("sideWaist", "sideHem", "side", "sideDart")).toEqual({ ...edge, curve: null, mouthOf: "sideDart" });
    expect(curved("sideWaist", "sideHem", "side", c1, c2)).toEqual({ ...edge, curve: { c1, c2 }, mouthOf: null });
  });

  it("controls lie a share of the straight distance from the ends, the way the line leaves and arrives", () => {
    // From (0, 0) to (30, 40), 50 apart: leaving outward, arriving downward.
    const [a, b] = [piecePoint(0, 0), piecePoint(30, 40)];
    const close = (points: readonly { readonly x: number; readonly y: number }[], wanted: readonly number[]): void => {
      const flat = points.flatMap(({ x, y }) => [x, y]);
      expect(flat).toHaveLength(wanted.length);
      flat.forEach((value, at) => expect(value).toBeCloseTo(wanted[at] ?? Number.NaN, 12));
    };
    close(controls(a, OUTWARD, b, DOWN), [50 / 3, 0, 30, 40 - 50 / 3]);
    close(controls(a, OUTWARD, b, DOWN, 0.2), [10, 0, 30, 30]);
    close(controls(a, DOWN, b, INWARD, 0.2, 0.4), [0, 10, 50, 40]);
    close(controls(a, radiansFromDegrees(-90), b, OUTWARD, 0.1, 0.3), [0, -5, 15, 40]);
  });
});
