/**
 * Each row of the table by hand: what is seen, as it is measured on the cloth, and what is altered for it. Amounts follow from
 * the cloth alone: a fold pinched f deep inside a piece takes 2f out of it, one at a seam f out of each piece; a slit lets its width
 * in, a seam opened half of it into each piece; what lies off by e is brought back by e. Girths and widths are stated whole.
 */
import { describe, expect, it } from "vitest";
import type { Alteration, Half } from "../../../src/core/decisions/alteration";
import type { FitName } from "../../../src/core/decisions/fitNames";
import type { StyleName } from "../../../src/core/decisions/pattern";
import { pointOf } from "../../../src/core/pattern/piece";
import { pieceIn, setOf } from "../../../src/core/pattern/pieceSet";
import { answersTo, dartIn, expectFirst, first, line, planOf, toile, workAfter } from "../../support/trials";

type Line = ReturnType<typeof line>;
type Fits = Readonly<Partial<Record<FitName, number>>>;

const fitsOf = (alterations: readonly Alteration[], half?: Half): Fits =>
  Object.fromEntries(alterations.flatMap((a) => (a.kind === "fit" && a.half === half ? [[a.fit, a.amount]] : [])));

const ROWS: readonly (readonly [string, StyleName, readonly Line[], Fits])[] = [
  [
    "folds across the back 6 deep, the waist behind 12 low: 12 out at the centre back",
    "sideDart",
    [line("backAboveWaist", "foldAcross", { amount: 6 }), line("backWaist", "drops", { amount: 12 })],
    { swayBack: 12 },
  ],
  [
    "tight above the waist behind, which rides up: as much let in",
    "sideDart",
    [line("backAboveWaist", "tight", { amount: 10 }), line("backWaist", "ridesUp", { amount: 10 })],
    { swayBack: -10 },
  ],
  [
    "the back waist pulled up by 12, a slit over the blades 12 wide, the neck edge off: a round back",
    "sideDart",
    [
      line("backWaist", "ridesUp", { amount: 12 }),
      line("blades", "tight", { amount: 12 }),
      line("backNeck", "gapes"),
      line("backHem", "ridesUp"),
    ],
    { roundBack: 12 },
  ],
  [
    "a fold across the blades 5 deep: 10 out over the blades",
    "sideDart",
    [line("blades", "foldAcross", { amount: 5 }), line("backWaist", "drops", { amount: 10 })],
    { roundBack: -10 },
  ],
  [
    "folds from the neck point to the armhole, 8 pinched at the shoulder seam: its end 8 lower on front and back",
    "sideDart",
    [line("neckPoint", "dragLines", { amount: 8, way: "pinched" }), line("frontArmhole", "dragLines")],
    { shoulderSlope: -8 },
  ],
  [
    "the shoulder seam strains and is opened by 16, folds at the neck: its end 8 up on front and back",
    "sideDart",
    [line("shoulder", "tight", { amount: 16 }), line("neckPoint", "foldAcross")],
    { shoulderSlope: 8 },
  ],
  [
    "the shoulder seam 10 behind the top of the shoulder: its end 10 forward",
    "sideDart",
    [line("shoulder", "leansBack", { amount: 10 })],
    { forwardShoulder: 10 },
  ],
  [
    "the shoulder seam 8 in front: its end 8 back",
    "sideDart",
    [line("shoulder", "leansForward", { amount: 8 })],
    { forwardShoulder: -8 },
  ],
  [
    "the shoulder ends 8 outside: 8 shorter",
    "sideDart",
    [line("shoulder", "endsOutside", { amount: 8 })],
    { shoulderWidth: -8 },
  ],
  [
    "the shoulder ends 7 inside: 7 longer",
    "sideDart",
    [line("shoulder", "endsInside", { amount: 7 })],
    { shoulderWidth: 7 },
  ],
  [
    "folds across chest and blades, 5 deep: 10 shorter above the bust",
    "sideDart",
    [line("chest", "foldAcross", { amount: 5 }), line("blades", "foldAcross", { amount: 5 })],
    { lengthAboveBust: -10 },
  ],
  [
    "the bust line, the underarm and the waist all 10 high: 10 longer above the bust",
    "sideDart",
    [
      line("bust", "ridesUp", { amount: 10 }),
      line("underarm", "cutsIn", { amount: 10 }),
      line("frontWaist", "ridesUp", { amount: 10 }),
      line("backWaist", "ridesUp", { amount: 10 }),
    ],
    { lengthAboveBust: 10 },
  ],
  [
    "folds across all round above the waist, 7 deep: 14 shorter below the bust",
    "sideDart",
    [line("frontAboveWaist", "foldAcross", { amount: 7 }), line("backAboveWaist", "foldAcross", { amount: 7 })],
    { lengthBelowBust: -14 },
  ],
  [
    "the waist 12 high all round: 12 longer below the bust",
    "sideDart",
    [line("frontWaist", "ridesUp", { amount: 12 }), line("backWaist", "ridesUp", { amount: 12 })],
    { lengthBelowBust: 12 },
  ],
  [
    "the same above a midriff band: a deeper band",
    "midriff",
    [line("frontWaist", "ridesUp", { amount: 12 }), line("backWaist", "ridesUp", { amount: 12 })],
    { bandDepth: 12 },
  ],
  [
    "the waist dips in front by 10: 10 shorter at the centre front",
    "sideDart",
    [line("frontWaist", "drops", { amount: 10 })],
    { waistDropFront: -10 },
  ],
  [
    "the waist rises in front by 9: 9 longer at the centre front",
    "sideDart",
    [line("frontWaist", "ridesUp", { amount: 9 })],
    { waistDropFront: 9 },
  ],
  [
    "the waist dips behind by 10: 10 shorter at the centre back",
    "sideDart",
    [line("backWaist", "drops", { amount: 10 })],
    { waistDropBack: -10 },
  ],
  [
    "the waist rises behind by 10: 10 longer at the centre back",
    "sideDart",
    [line("backWaist", "ridesUp", { amount: 10 })],
    { waistDropBack: 10 },
  ],
  [
    "the hem 15 low all round: 15 shorter below the waist",
    "sideDart",
    [line("frontHem", "drops", { amount: 15 }), line("backHem", "drops", { amount: 15 })],
    { lengthBasque: -15 },
  ],
  [
    "the hem 15 high all round: 15 longer below the waist",
    "sideDart",
    [line("frontHem", "ridesUp", { amount: 15 }), line("backHem", "ridesUp", { amount: 15 })],
    { lengthBasque: 15 },
  ],
  [
    "the under-bust seam 10 above the crease: 10 more above it, 10 less band, the bust points where they were",
    "midriff",
    [line("underBust", "ridesUp", { amount: 10 })],
    { strapLength: 10, bustPointLevel: -10, bandDepth: -10 },
  ],
  [
    "the under-bust seam 8 below the crease: the other way",
    "midriff",
    [line("underBust", "drops", { amount: 8 })],
    { strapLength: -8, bustPointLevel: 8, bandDepth: 8 },
  ],
  ["the armhole cuts in by 8: 8 deeper", "sideDart", [line("underarm", "cutsIn", { amount: 8 })], { armholeDepth: 8 }],
  [
    "the armhole stands 9 low: 9 shallower",
    "sideDart",
    [line("underarm", "drops", { amount: 9 })],
    { armholeDepth: -9 },
  ],
  [
    "a fold down the side at the waist 6 deep on each side: 12 an edge pair, 24 round",
    "sideDart",
    [line("sideSeam", "foldAlong", { amount: 6 })],
    { sideSeamWaist: -24 },
  ],
  [
    "a fold down under the arm 5 deep on each side: 20 round",
    "sideDart",
    [line("underarm", "foldAlong", { amount: 5 })],
    { sideSeamBust: -20 },
  ],
  [
    "a fold down the side at the hip 5 deep on each side: 20 round",
    "sideDart",
    [line("sideHip", "foldAlong", { amount: 5 })],
    { sideSeamHip: -20 },
  ],
  [
    "tight round the waist, the closure 20 apart, slits 10 wide on each side: 20 round",
    "sideDart",
    [
      line("closureWaist", "doesNotMeet", { amount: 20 }),
      line("sideSeam", "tight", { amount: 10 }),
      line("frontWaist", "tight"),
    ],
    { sideSeamWaist: 20 },
  ],
  [
    "tight under the arm and across the back, the closure 16 apart: 16 round at the bust",
    "sideDart",
    [
      line("closureBust", "doesNotMeet", { amount: 16 }),
      line("underarm", "tight", { amount: 8 }),
      line("blades", "tight"),
    ],
    { sideSeamBust: 16 },
  ],
  [
    "the closure 24 apart at the hip, which is tight: 24 round",
    "sideDart",
    [
      line("closureHip", "doesNotMeet", { amount: 24 }),
      line("sideHip", "tight"),
      line("backHip", "tight"),
      line("frontHip", "tight"),
    ],
    { sideSeamHip: 24 },
  ],
  [
    "folds down the upper chest 4 deep on each side: 8 a half, 16 across",
    "sideDart",
    [line("chest", "foldAlong", { amount: 4 })],
    { chestWidth: -16 },
  ],
  [
    "strained across the chest, slits 6 wide on each side: 12 across",
    "sideDart",
    [line("chest", "tight", { amount: 6 }), line("frontArmhole", "tight")],
    { chestWidth: 12 },
  ],
  [
    "folds down the blades 4 deep on each side: 8 a half, 16 across",
    "sideDart",
    [line("blades", "foldAlong", { amount: 4 })],
    { backWidth: -16 },
  ],
  [
    "strained across the blades, slits 7 wide on each side: 14 across",
    "sideDart",
    [line("blades", "tight", { amount: 7 }), line("backArmhole", "tight")],
    { backWidth: 14 },
  ],
  [
    "the front neck gapes, 4 pinched towards each bust point: a wedge of 8 closed on each side",
    "sideDart",
    [line("frontNeck", "gapes", { amount: 4 })],
    { necklineGape: 8 },
  ],
  [
    "the edge of a cup gapes, 4 pinched: a wedge of 8",
    "midriff",
    [line("frontNeck", "gapes", { amount: 4 })],
    { edgeGape: 8 },
  ],
  [
    "the front armhole gapes, 5 pinched: a wedge of 10",
    "princessArmhole",
    [line("frontArmhole", "gapes", { amount: 5 })],
    { armholeGape: 10 },
  ],
  [
    "the back neck gapes, 3 pinched on each side: 6 a half, 12 across",
    "sideDart",
    [line("backNeck", "gapes", { amount: 3 })],
    { backNeckGape: 12 },
  ],
  [
    "straps slip and lie 10 too far out: 10 nearer the neck",
    "midriff",
    [line("strap", "slips"), line("strap", "endsOutside", { amount: 10 })],
    { strapPlace: 10 },
  ],
  [
    "straps lie 9 too far in: 9 further out",
    "midriff",
    [line("strap", "endsInside", { amount: 9 })],
    { strapPlace: -9 },
  ],
  [
    "straps stand off, folded 6 deep: 12 shorter",
    "midriff",
    [line("strap", "gapes", { amount: 6 }), line("strap", "foldAcross", { amount: 6 })],
    { strapLength: -12 },
  ],
  [
    "straps cut in, let out by 12: 12 longer",
    "midriff",
    [line("strap", "cutsIn", { amount: 12, way: "letOut" }), line("strap", "tight", { amount: 12 })],
    { strapLength: 12 },
  ],
];

describe("each row by itself", () => {
  it.each(ROWS)("%s", (_, style, lines, expected) => {
    const answer = first(toile(style, lines));
    expect(fitsOf(answer.alterations)).toEqual(expected);
    expect(answer.alterations).toHaveLength(Object.keys(expected).length);
    expect(answer.bustAlteration).toBeUndefined();
    expect(answer.leaves).toEqual([]);
  });

  it("a slit over each bust point, 12 wide, the waist risen in front: 24 more bust in all", () => {
    const trial = toile("sideDart", [
      line("bust", "tight", { amount: 12 }),
      line("bust", "dragLines"),
      line("frontWaist", "ridesUp"),
    ]);
    const answer = first(trial);
    expect(answer.bustAlteration).toBe(planOf(trial.sewn).sizing.bust.alteration + 24);
    expect(answer.alterations).toEqual([]);
  });

  it("a loose fold down over each bust, 5 deep: 20 less bust in all", () => {
    const trial = toile("sideDart", [line("bust", "foldAlong", { amount: 5 })]);
    expect(first(trial).bustAlteration).toBe(planOf(trial.sewn).sizing.bust.alteration - 20);
  });

  it("one breast fuller by 12: the next cup version but for that half alone", () => {
    const trial = toile("sideDart", [
      line("bust", "tight", { amount: 12, half: "left" }),
      line("bust", "dragLines", { half: "left" }),
      line("bust", "flat", { half: "left" }),
    ]);
    // Versions are 25 of whole difference apart: 12 a half is 24 whole.
    expect(planOf(trial.sewn).sizing.cup.label).toBe("C");
    expect(first(trial).halfCups).toEqual({ left: "D" });
  });

  it.each(["sideDart", "princessArmhole", "midriff"] as const)(
    "a mark of the dart's end: it comes to lie there, its fullness held (%s)",
    (style) => {
      const trial = toile(style, [line("dartEnd", "dartEnds", { mark: { out: 7, down: 4 } })]);
      const [before] = planOf(trial.sewn).left.darts.toSorted((a, b) => b.drawn.intake - a.drawn.intake);
      if (style === "princessArmhole") return;
      const after = dartIn(planOf(workAfter(trial)), before?.ref);
      expect(after.drawn.apex.x - (before?.drawn.apex.x ?? 0)).toBeCloseTo(7, -0.5);
      expect(after.drawn.apex.y - (before?.drawn.apex.y ?? 0)).toBeCloseTo(4, -0.5);
      expect(after.drawn.fullness).toBeCloseTo(before?.drawn.fullness ?? 0, 2);
    },
  );

  it("a point at the dart's end, 3 pinched: its mouth narrower by 6, half at each end", () => {
    const [alteration, ...others] = first(toile("sideDart", [line("dartEnd", "pointed", { amount: 3 })])).alterations;
    expect(alteration).toMatchObject({ kind: "dartMouth", inner: -3, outer: -3 });
    expect(others).toEqual([]);
  });

  it("too flat over the bust at the dart's end, a slit of 8: its mouth wider by 8", () => {
    const [alteration] = first(toile("sideDart", [line("dartEnd", "flat", { amount: 8 })])).alterations;
    expect(alteration).toMatchObject({ kind: "dartMouth", inner: 4, outer: 4 });
  });

  it("the bust point marked 10 lower, the seam right: its level alone", () => {
    const answer = first(toile("midriff", [line("bust", "bustPoint", { mark: { out: 0, down: 10 } })]));
    expect(fitsOf(answer.alterations)).toEqual({ bustPointLevel: 10 });
    expect(answer.alterations).toHaveLength(1);
  });

  it("slack between the busts, 6 pinched at the seam: 6 off each front, the darts 6 nearer the centre", () => {
    const trial = toile("sideDart", [line("betweenBusts", "foldAlong", { amount: 6 })]);
    expect(first(trial).alterations).toMatchObject([{ kind: "dartPlace", how: "offCentreSeam", by: 6 }]);
    const ref = { piece: "front", dart: "waistDart" } as const;
    const fromCentre = (plan: ReturnType<typeof planOf>): number =>
      dartIn(plan, ref).drawn.apex.x - pointOf(pieceIn(setOf(plan.left.pieces), "front"), "centreWaist").x;
    expect(fromCentre(planOf(trial.sewn)) - fromCentre(planOf(workAfter(trial)))).toBeCloseTo(6, 0);
  });
});

describe("pairs that must be told apart", () => {
  it("a fold that runs round the front too is no sway back", () => {
    const answers = answersTo(
      toile("sideDart", [
        line("backAboveWaist", "foldAcross", { amount: 6 }),
        line("frontAboveWaist", "foldAcross", { amount: 6 }),
        line("sideSeam", "foldAcross", { amount: 6 }),
      ]),
    );
    expectFirst(answers, ["longBelowBust"]);
  });

  it("a gape of the armhole with drag lines to the bust and a risen waist is a full bust", () => {
    expectFirst(
      answersTo(
        toile("sideDart", [
          line("frontArmhole", "gapes", { amount: 5 }),
          line("bust", "dragLines", { amount: 10 }),
          line("bust", "tight", { amount: 10 }),
          line("frontWaist", "ridesUp"),
        ]),
      ),
      ["fullBust"],
    );
  });

  it("a point at the end of a dart whose end is marked elsewhere is put right by the end", () => {
    expectFirst(
      answersTo(
        toile("sideDart", [line("dartEnd", "pointed"), line("dartEnd", "dartEnds", { mark: { out: 12, down: 0 } })]),
      ),
      ["dartEndElsewhere"],
    );
  });

  it("a neck edge that stands off with the waist pulled up behind is a round back, without it a gape", () => {
    const gape = line("backNeck", "gapes", { amount: 4 });
    expectFirst(answersTo(toile("sideDart", [gape])), ["backNeckGapes"]);
    expectFirst(
      answersTo(
        toile("sideDart", [
          gape,
          line("backWaist", "ridesUp", { amount: 12 }),
          line("backHem", "ridesUp", { amount: 12 }),
          line("blades", "dragLines", { amount: 12 }),
        ]),
      ),
      ["roundBack"],
    );
  });

  it("tight across the bust and the back alike is the side seams, not the bust", () => {
    expectFirst(
      answersTo(
        toile("sideDart", [
          line("bust", "tight", { amount: 8 }),
          line("underarm", "tight", { amount: 8 }),
          line("blades", "tight", { amount: 8 }),
          line("closureBust", "doesNotMeet", { amount: 16 }),
        ]),
      ),
      ["tightBust"],
    );
  });

  it("two causes that show at the same place share what is measured there", () => {
    const answer = first(
      toile("sideDart", [
        line("backAboveWaist", "foldAcross", { amount: 13 }),
        line("frontAboveWaist", "foldAcross", { amount: 6 }),
        line("sideSeam", "foldAcross", { amount: 6 }),
        line("frontWaist", "drops", { amount: 12 }),
        line("backWaist", "drops", { amount: 26 }),
        line("backHem", "drops", { amount: 26 }),
      ]),
    );
    expect(answer.causes.map(({ rule }) => rule)).toEqual(["swayBack", "longBelowBust"]);
    // 12 all round; behind 26 in all, so 14 of sway back.
    const fits = fitsOf(answer.alterations);
    expect(fits.swayBack).toBeGreaterThanOrEqual(12);
    expect(fits.swayBack).toBeLessThanOrEqual(16);
    expect(fits.lengthBelowBust).toBeGreaterThanOrEqual(-14);
    expect(fits.lengthBelowBust).toBeLessThanOrEqual(-10);
  });
});
