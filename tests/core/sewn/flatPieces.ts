/** A square front of 100 mm, by hand, with whatever darts are wanted in its waist. */
import { piecePoint } from "../../../src/core/geometry/point";
import type { Dart, Edge, NamedPoint, Piece, PointName } from "../../../src/core/pattern/piece";

const named = (x: number, y: number): NamedPoint => ({ at: piecePoint(x, y), level: "bust" });
const straight = (from: PointName, to: PointName, seam: Edge["seam"], mouthOf: Edge["mouthOf"] = null): Edge => ({
  from,
  to,
  seam,
  mouthOf,
  curve: null,
});

const SIDE = 100;

/** Centre at x = 0, from (0, 0) clockwise on screen; the waist at y = 100; the bust line level at y = 30. */
export const square: Piece = {
  name: "front",
  points: {
    centreNeck: named(0, 0),
    underarm: named(SIDE, 0),
    sideBust: named(SIDE, 30),
    sideWaist: named(SIDE, SIDE),
    centreWaist: named(0, SIDE),
    centreBust: named(0, 30),
  },
  edges: [
    straight("centreNeck", "underarm", "armhole"),
    straight("underarm", "sideBust", "side"),
    straight("sideBust", "sideWaist", "side"),
    straight("sideWaist", "centreWaist", "waist"),
    straight("centreWaist", "centreBust", "centre"),
    straight("centreBust", "centreNeck", "centre"),
  ],
  darts: [],
  levelLines: [{ level: "bust", along: { points: ["centreBust", "sideBust"] } }],
  centreOnFold: true,
};

const dart: Dart = {
  name: "waistDart",
  seam: "waist",
  inner: "waistDartInner",
  outer: "waistDartOuter",
  apex: "waistDartApex",
  aimsAt: null,
};

/** With a dart from `inner` to `outer` on the waist, its end at (50, `end`). */
export const darted = (inner: number, outer: number, end: number, also: Partial<Dart> = {}): Piece => ({
  ...square,
  points: {
    ...square.points,
    waistDartInner: named(inner, SIDE),
    waistDartOuter: named(outer, SIDE),
    waistDartApex: named(50, end),
  },
  edges: [
    ...square.edges.slice(0, 3),
    straight("sideWaist", "waistDartOuter", "waist"),
    straight("waistDartOuter", "waistDartInner", "waist", "waistDart"),
    straight("waistDartInner", "centreWaist", "waist"),
    ...square.edges.slice(4),
  ],
  darts: [{ ...dart, ...also }],
});
