/** What a drafted piece is beside its line: its seams in order, darts, levels, fold. As the trade has them: front on the fold, back seamed. */
import { describe, expect, it } from "vitest";
import { draftBackBlock } from "../../../src/core/draft/backBlock";
import { draftBasque } from "../../../src/core/draft/basque";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { shapingOf } from "../../../src/core/draft/shaping";
import { seamLength } from "../../../src/core/girth/seamLength";
import type { Piece } from "../../../src/core/pattern/piece";

const measures = draftMeasuresFor(
  { label: "12", bust: 880, waist: 700, hip: 940 },
  { sizes: [], draftedDifference: 50, cups: [] },
  { bust: 80, waist: 40, hip: 50 },
);
const front = draftFrontBlock(measures);
const back = draftBackBlock(measures);

const told = ({ name, edges, darts, levelLines, centreOnFold }: Piece) => ({
  name,
  edges: edges.map(({ from, to, seam, mouthOf, curve }) =>
    [from, to, mouthOf ?? seam, ...(curve === null ? [] : ["curved"])].join(" "),
  ),
  darts,
  levelLines,
  centreOnFold,
});
const levelsOf = ({ points }: Piece): Readonly<Record<string, string>> =>
  Object.fromEntries(Object.entries(points).map(([name, { level }]) => [name, level]));

const waistDart = {
  name: "waistDart",
  seam: "waist",
  inner: "waistDartInner",
  outer: "waistDartOuter",
  apex: "waistDartApex",
} as const;
const sideAndWaist = [
  "underarm sideBust side",
  "sideBust sideWaist side curved",
  "sideWaist waistDartOuter waist curved",
  "waistDartOuter waistDartInner waistDart",
  "waistDartInner centreWaist waist curved",
  "centreWaist centreBust centre",
  "centreBust centreNeck centre",
];
const bodiceLevels = {
  centreNeck: "neck",
  sideNeck: "neck",
  shoulderTip: "shoulder",
  armholeTouch: "shoulder",
  underarm: "underarm",
  centreBust: "bust",
  sideBust: "bust",
  underBustCentre: "underBust",
  sideWaist: "waist",
  centreWaist: "waist",
  waistDartApex: "bust",
  waistDartInner: "bust",
  waistDartOuter: "bust",
};

it("the front has a dart in the shoulder and one at the waist, both to the bust point, and lies on the fold", () => {
  expect(told(front)).toEqual({
    name: "front",
    edges: [
      "centreNeck sideNeck neck curved",
      "sideNeck shoulderDartInner shoulder",
      "shoulderDartInner shoulderDartOuter shoulderDart",
      "shoulderDartOuter shoulderTip shoulder",
      "shoulderTip armholeTouch armhole curved",
      "armholeTouch underarm armhole curved",
      ...sideAndWaist,
    ],
    darts: [
      {
        name: "shoulderDart",
        seam: "shoulder",
        inner: "shoulderDartInner",
        outer: "shoulderDartOuter",
        apex: "shoulderDartApex",
        aimsAt: "bustPoint",
      },
      { ...waistDart, aimsAt: "bustPoint" },
    ],
    levelLines: [
      { level: "bust", along: { points: ["centreBust", "bustLineInner", "bustLineOuter", "sideBust"] } },
      { level: "waist", along: { seam: "waist" } },
    ],
    centreOnFold: true,
  });
  expect(levelsOf(front)).toEqual({
    ...bodiceLevels,
    shoulderDartInner: "shoulder",
    shoulderDartOuter: "shoulder",
    shoulderDartApex: "bust",
    bustPoint: "bust",
    bustLineInner: "bust",
    bustLineOuter: "bust",
  });
  // 20 mm below the bust point (common practice: 15 to 25), the shoulder's dart at it.
  const [bust, end] = [front.points.bustPoint?.at, front.points.waistDartApex?.at];
  expect((end?.y ?? NaN) - (bust?.y ?? NaN)).toBeCloseTo(20, 9);
  expect(front.points.shoulderDartApex?.at).toEqual(bust);
});

it("the back has a dart at the waist that serves no bust, and a centre seam", () => {
  expect(told(back)).toEqual({
    name: "back",
    edges: [
      "centreNeck sideNeck neck curved",
      "sideNeck shoulderTip shoulder",
      "shoulderTip armholeTouch armhole curved",
      "armholeTouch underarm armhole curved",
      ...sideAndWaist,
    ],
    darts: [{ ...waistDart, aimsAt: null }],
    levelLines: [
      { level: "bust", along: { points: ["centreBust", "sideBust"] } },
      { level: "waist", along: { seam: "waist" } },
    ],
    centreOnFold: false,
  });
  expect(levelsOf(back)).toEqual(bodiceLevels);
});

describe.each([
  ["front", "frontBasque", front, true],
  ["back", "backBasque", back, false],
] as const)("the basque of the %s", (side, name, bodice, centreOnFold) => {
  const waist = seamLength(bodice, "waist");
  const basque = draftBasque(measures, waist, { side, dartLess: 6 });

  it("goes on from the waist to 30 mm below the hip line, on the fold where its bodice is", () => {
    expect(told(basque)).toEqual({
      name,
      edges: [
        "centreWaist waistDartInner waist curved",
        "waistDartInner waistDartOuter waistDart",
        "waistDartOuter sideWaist waist curved",
        "sideWaist sideHip side curved",
        "sideHip sideHem side",
        "sideHem centreHem hem",
        "centreHem centreHip centre",
        "centreHip centreWaist centre",
      ],
      darts: [{ ...waistDart, aimsAt: null }],
      levelLines: [
        { level: "waist", along: { seam: "waist" } },
        { level: "hip", along: { points: ["centreHip", "sideHip"] } },
      ],
      centreOnFold,
    });
    expect(levelsOf(basque)).toEqual({
      centreWaist: "waist",
      waistDartInner: "bust",
      waistDartOuter: "bust",
      waistDartApex: "bust",
      sideWaist: "waist",
      sideHip: "hip",
      sideHem: "hip",
      centreHem: "hip",
      centreHip: "hip",
    });
    // Hips of 940 and 50 in four, 5 more in front and less behind; 200 down at bust 880.
    const hip = 247.5 + (side === "front" ? 5 : -5);
    expect([basque.points.sideHip?.at, basque.points.centreHem?.at]).toEqual([
      { x: hip, y: 200 },
      { x: 0, y: 230 },
    ]);
  });

  it("has a dart so much narrower than the draft's, at 42 of 100 of the waist, and the waist of its bodice", () => {
    const [inner, outer, end] = [
      basque.points.waistDartInner?.at,
      basque.points.waistDartOuter?.at,
      basque.points.waistDartApex?.at,
    ];
    // Half of 480 − 370 − 2 · 18, less 6.
    expect(shapingOf(measures).dart).toBeCloseTo(37, 9);
    expect((outer?.x ?? NaN) - (inner?.x ?? NaN)).toBeCloseTo(31, 9);
    expect(((outer?.x ?? NaN) + (inner?.x ?? NaN)) / 2).toBeCloseTo(0.42 * waist, 6);
    expect(end).toEqual({ x: expect.closeTo(0.42 * waist, 6), y: side === "front" ? 95 : 130 });
    // Two rounds bring it within a few micrometres.
    expect(Math.abs(seamLength(basque, "waist") - waist)).toBeLessThan(0.005);
  });
});

describe("sharing what the waist is smaller by", () => {
  const shared = (waist: number) => {
    const { side, dart, frontWaist, backWaist } = shapingOf({ ...measures, waist });
    return [side, dart, frontWaist, backWaist].map((amount) => Math.round(amount * 1e6) / 1e6);
  };
  // The half bust is 480, front 245 and back 235; the half waist a half of the girth and 20.
  it.each([
    // 110: 18 to each side, the rest to two darts.
    [700, [18, 37, 190, 180]],
    // 72: as much again to the darts, which is the last.
    [776, [18, 18, 209, 199]],
    // 71.9: 17 of 100 to each side.
    [776.2, [12.223, 23.727, 209.05, 199.05]],
    // 18: 17 of 100 would be 3.06, but the darts keep 6 each.
    [884, [3, 6, 236, 226]],
    // 12 and less: the sides go out.
    [896, [0, 6, 239, 229]],
    [920, [-6, 6, 245, 235]],
  ])("of a waist of %d", (waist, shares) => {
    expect(shared(waist)).toEqual(shares);
  });

  it("the bust line keeps 10 mm below the underarm where the bust lies high", () => {
    // 265 from the side neck at (69, -40): 223.7. The underarm lies 5 above the depth of 210.
    const at = shapingOf(measures);
    expect(at.underarm).toBe(205);
    expect(at.bustLine).toBeCloseTo(Math.sqrt(265 ** 2 - 26 ** 2) - 40, 9);
    expect(shapingOf({ ...measures, scyeDepth: 220 }).bustLine).toBe(225);
    // 55 of 100 of the depth and 2.5; 41 of 100 of the way to the waist.
    expect(at.across).toBeCloseTo(118, 9);
    expect(at.underBustLine).toBeCloseTo(at.bustLine + 0.41 * (410 - at.bustLine), 9);
  });
});
