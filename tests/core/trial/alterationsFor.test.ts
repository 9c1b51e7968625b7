/** From causes of so many millimetres on one half to alterations, by hand: what is stated whole is twice that, both halves one. */
import { describe, expect, it } from "vitest";
import { HALVES, type Alteration, type FitAlteration, type Half } from "../../../src/core/decisions/alteration";
import type { Decided } from "../../../src/core/decisions/decided";
import type { FitName } from "../../../src/core/decisions/fitNames";
import type { StyleName } from "../../../src/core/decisions/pattern";
import type { Observation } from "../../../src/core/decisions/trial";
import { apexAfter } from "../../../src/core/dart/dartFrame";
import type { DartRef } from "../../../src/core/pattern/piece";
import { alterationsFor, canBeMade, canBeOnOneHalf, type ToAlter } from "../../../src/core/trial/alterationsFor";
import { readLines } from "../../../src/core/trial/recordLines";
import { RULES, ruleOf, type RuleName } from "../../../src/core/trial/rules";
import { dartIn, line, planOf, sewnAs } from "../../support/trials";

const cause = (name: RuleName, amount: number, ...halves: readonly Half[]): ToAlter => ({
  rule: ruleOf(name),
  halves: halves.length === 0 ? HALVES : halves,
  amount,
});

/** The works that differ from the plain ones in nothing that a plan of their own would show here. */
const plans = { sideDart: planOf(sewnAs("sideDart")), midriff: planOf(sewnAs("midriff")) };

interface Given {
  readonly style?: "sideDart" | "midriff";
  readonly lines?: readonly Observation[];
  readonly sewn?: Partial<Decided>;
}

function altered(causes: readonly ToAlter[], { style = "sideDart", lines = [], sewn = {} }: Given = {}) {
  return alterationsFor(causes, { sewn: { ...sewnAs(style), ...sewn }, plan: plans[style], lines: readLines(lines) });
}

const fit = (name: FitName, amount: number, half?: Half): FitAlteration => ({
  kind: "fit",
  id: half === undefined ? `fit-${name}` : `fit-${name}-${half}`,
  fit: name,
  amount,
  ...(half === undefined ? {} : { half }),
});
const nothingElse = { bustAlteration: null, halfCups: null };
const only = (...alterations: readonly Alteration[]) => ({ alterations, ...nothingElse });

describe("fits", () => {
  it("have the cause's amount, to whole millimetres, and are for both halves", () => {
    expect(altered([])).toEqual(only());
    expect(altered([cause("neckGapes", 7.6)])).toEqual(only(fit("necklineGape", 8)));
    expect(altered([cause("slopingShoulder", 7.4)])).toEqual(only(fit("shoulderSlope", -7)));
    expect(altered([cause("roundBack", 0.4)])).toEqual(only(fit("roundBack", 0)));
  });

  it("stated whole are twice what is of one half, and on one half as they are", () => {
    expect(altered([cause("narrowChest", 8)])).toEqual(only(fit("chestWidth", -16)));
    expect(altered([cause("tightHip", 6.5, "left")])).toEqual(only(fit("sideSeamHip", 7, "left")));
  });

  it("of several causes add up", () => {
    expect(altered([cause("swayBack", 12), cause("longBelowBust", 9), cause("flatBack", 5)])).toEqual(
      only(fit("swayBack", 7), fit("lengthBelowBust", -9)),
    );
    expect(altered([cause("underBustTooHigh", 10), cause("strapTooLong", 12)], { style: "midriff" })).toEqual(
      only(fit("strapLength", -2), fit("bustPointLevel", -10), fit("bandDepth", -10)),
    );
  });

  it("are those that the garment can have: a band where there is one", () => {
    expect(altered([cause("longBelowBust", 9)], { style: "midriff" })).toEqual(only(fit("bandDepth", -9)));
    expect(altered([cause("neckGapes", 8)], { style: "midriff" })).toEqual(only(fit("edgeGape", 8)));
    expect(altered([cause("strapTooLong", 8)])).toEqual(only());
  });

  it("alike on both halves are one, otherwise one for each", () => {
    expect(altered([cause("armholeGapes", 8, "left"), cause("armholeGapes", 8, "right")])).toEqual(
      only(fit("armholeGape", 8)),
    );
    expect(altered([cause("armholeGapes", 8, "left"), cause("armholeGapes", 5, "right")])).toEqual(
      only(fit("armholeGape", 8, "left"), fit("armholeGape", 5, "right")),
    );
    expect(altered([cause("armholeGapes", 5, "right")])).toEqual(only(fit("armholeGape", 5, "right")));
    expect(altered([cause("broadChest", 5), cause("broadChest", 4, "right")])).toEqual(
      only(fit("chestWidth", 5, "left"), fit("chestWidth", 9, "right")),
    );
  });

  it("stay within what is ever sensible, half of it on each half where they are stated whole", () => {
    // Necks are closed by 30 at the most and never opened; shoulders 30 narrower to 25 wider; chests 30 whole.
    expect(altered([cause("neckGapes", 40)])).toEqual(only(fit("necklineGape", 30)));
    expect(altered([cause("broadShoulder", 40)])).toEqual(only(fit("shoulderWidth", 25)));
    expect(altered([cause("narrowShoulder", 40)])).toEqual(only(fit("shoulderWidth", -30)));
    expect(altered([cause("broadChest", 40)])).toEqual(only(fit("chestWidth", 30)));
    expect(altered([cause("narrowChest", 40, "left")])).toEqual(only(fit("chestWidth", -15, "left")));
  });

  it("are counted from what was sewn, under the name that stands", () => {
    const own = { ...fit("swayBack", 10), id: "mine" };
    const sewn = { alterations: [fit("roundBack", 3), own, fit("chestWidth", 12)] };
    expect(altered([cause("swayBack", 6)], { sewn })).toEqual(only({ ...own, amount: 16 }));
    expect(altered([cause("flatBack", 10)], { sewn })).toEqual(only({ ...own, amount: 0 }));
    expect(altered([cause("broadChest", 3)], { sewn })).toEqual(only(fit("chestWidth", 18)));
    // Of 12 all round 6 are on the left.
    expect(altered([cause("broadChest", 3, "left")], { sewn })).toEqual(only(fit("chestWidth", 9, "left")));
    const onLeft = { alterations: [{ ...fit("armholeGape", 4, "left"), id: "one-left" }] };
    expect(altered([cause("armholeGapes", 8)], { sewn: onLeft })).toEqual(
      only(
        { ...fit("armholeGape", 12, "left"), id: "one-left" },
        { ...fit("armholeGape", 8, "right"), id: "one-right" },
      ),
    );
    expect(altered([cause("armholeGapes", 4, "right")], { sewn: onLeft })).toEqual(
      only({ ...fit("armholeGape", 4, "right"), id: "one-right" }),
    );
  });
});

describe("the bust", () => {
  it("is altered by twice what is of one half, counted from what the plan has", () => {
    expect(plans.sideDart.sizing.bust.alteration).toBe(0);
    expect(altered([cause("fullBust", 10.4)])).toEqual({ ...only(), bustAlteration: 21 });
    expect(altered([cause("smallBust", 10)])).toEqual({ ...only(), bustAlteration: -20 });
    expect(altered([cause("fullBust", 10), cause("smallBust", 10)])).toEqual(only());
    const plan = planOf({ ...sewnAs("sideDart"), picks: { bustAlteration: 12 } });
    expect(alterationsFor([cause("fullBust", 5)], { sewn: sewnAs("sideDart"), plan, lines: [] }).bustAlteration).toBe(
      22,
    );
  });

  // The versions are B, C and D, 25 mm apart; it is sewn in a C.
  it.each([
    ["fullBust", 12, "D"],
    ["fullBust", 6.3, "D"],
    ["fullBust", 6.2, "C"],
    ["fullBust", 40, "D"],
    ["smallBust", 6.3, "B"],
    ["smallBust", 6.2, "C"],
    ["smallBust", 40, "B"],
  ] as const)("%s by %d on one half is the nearest version: %s", (name, amount, label) =>
    expect(altered([cause(name, amount, "right")])).toEqual({ ...only(), halfCups: { right: label } }),
  );

  it("on one half goes by the version of that half, and leaves the other's", () => {
    const sewn = { picks: { halfCups: { left: "B", right: "D" } } } as const;
    expect(altered([cause("fullBust", 12, "left")], { sewn }).halfCups).toEqual({ left: "C", right: "D" });
    expect(altered([cause("smallBust", 12, "right")], { sewn }).halfCups).toEqual({ left: "B", right: "C" });
  });

  it("of a version that the chart has no more goes by what it was drafted for", () => {
    // Drafted for C, 75.
    expect(
      altered([cause("fullBust", 12, "left")], { sewn: { picks: { halfCups: { left: "gone" } } } }).halfCups,
    ).toEqual({ left: plans.sideDart.sizing.cup.drafted === 75 ? "D" : "C" });
  });
});

describe("marks", () => {
  const WAIST: DartRef = { piece: "front", dart: "waistDart" };
  const SIDE: DartRef = { piece: "front", dart: "sideDart" };
  const markOf = (out: number, down: number, more: Partial<Observation> = {}): Observation =>
    line("bust", "bustPoint", { mark: { out, down }, ...more });
  const endOf = (out: number, down: number, more: Partial<Observation> = {}): Observation =>
    line("dartEnd", "dartEnds", { mark: { out, down }, ...more });

  /** Where the ends of darts come to lie, further out and down. */
  const ends = (alterations: readonly Alteration[], style: "sideDart" | "midriff" = "sideDart") =>
    alterations.flatMap((one) => {
      if (one.kind !== "dartEnd") return [];
      const { drawn } = dartIn(plans[style], one.dart);
      const after = apexAfter(drawn, one);
      return [[one.id, one.hold, Math.round(after.x - drawn.apex.x) + 0, Math.round(after.y - drawn.apex.y) + 0]];
    });

  it("of the bust point: its level where the garment has one, the darts' ends out to it", () => {
    const down = altered([cause("bustPointElsewhere", 0)], { style: "midriff", lines: [markOf(0, 10)] });
    expect(down).toEqual(only(fit("bustPointLevel", 10)));
    const out = altered([cause("bustPointElsewhere", 0)], { lines: [markOf(8, 0)] });
    expect(ends(out.alterations)).toEqual([
      ["dartEnd-front-waistDart", "fullness", 8, 0],
      ["dartEnd-front-sideDart", "fullness", 8, 0],
    ]);
    expect(out.alterations).toHaveLength(2);
    const both = altered([cause("bustPointElsewhere", 0, "left")], { lines: [markOf(-8, -9)] });
    expect(both.alterations[0]).toEqual(fit("bustPointLevel", -9, "left"));
    expect(ends(both.alterations)).toEqual([
      ["dartEnd-front-waistDart-left", "fullness", -8, 0],
      ["dartEnd-front-sideDart-left", "fullness", -8, 0],
    ]);
  });

  // Worth altering from 4 mm on.
  it("nearer than is worth altering change nothing that way", () => {
    const of = (out: number, down: number) => altered([cause("bustPointElsewhere", 0)], { lines: [markOf(out, down)] });
    expect(of(3.9, 4)).toEqual(only(fit("bustPointLevel", 4)));
    expect(of(-4, -3.9).alterations.map(({ kind }) => kind)).toEqual(["dartEnd", "dartEnd"]);
    expect(altered([cause("bustPointElsewhere", 0)])).toEqual(only());
  });

  it("of the bust point: less what other causes bring it down or up by", () => {
    const lines = [markOf(0, 14)];
    expect(altered([cause("shortAboveBust", 9), cause("bustPointElsewhere", 0)], { lines })).toEqual(
      only(fit("lengthAboveBust", 9), fit("bustPointLevel", 5)),
    );
    expect(altered([cause("shortAboveBust", 11), cause("bustPointElsewhere", 0)], { lines })).toEqual(
      only(fit("lengthAboveBust", 11)),
    );
    expect(altered([cause("longAboveBust", 6), cause("bustPointElsewhere", 0)], { lines })).toEqual(
      only(fit("lengthAboveBust", -6), fit("bustPointLevel", 20)),
    );
    // What is altered on one half brings it down there.
    expect(altered([cause("shortAboveBust", 9, "left"), cause("bustPointElsewhere", 0)], { lines })).toEqual(
      only(fit("lengthAboveBust", 9, "left"), fit("bustPointLevel", 5, "left"), fit("bustPointLevel", 14, "right")),
    );
    // A full bust shows in the mark and moves it no way that is known.
    expect(altered([cause("fullBust", 6), cause("bustPointElsewhere", 0)], { lines }).alterations).toEqual([
      fit("bustPointLevel", 14),
    ]);
  });

  it("on each half go by that half's, else by the other's", () => {
    const lines = [markOf(0, 10, { half: "left" }), markOf(0, 6, { half: "right" })];
    expect(altered([cause("bustPointElsewhere", 0)], { lines })).toEqual(
      only(fit("bustPointLevel", 10, "left"), fit("bustPointLevel", 6, "right")),
    );
    expect(altered([cause("bustPointElsewhere", 0, "right")], { lines: lines.slice(0, 1) })).toEqual(
      only(fit("bustPointLevel", 10, "right")),
    );
  });

  it("of a dart's end: of the dart named, else of the one along whose line it lies", () => {
    const of = (one: Observation) => ends(altered([cause("dartEndElsewhere", 0)], { lines: [one] }).alterations);
    expect(of(endOf(6, 5, { dart: SIDE }))).toEqual([["dartEnd-front-sideDart", "fullness", 6, 5]]);
    expect(of(endOf(6, 5, { dart: WAIST }))).toEqual([["dartEnd-front-waistDart", "fullness", 6, 5]]);
    // The dart from the waist runs upright, the one from the side nearly level.
    expect(of(endOf(0, 12))).toEqual([["dartEnd-front-waistDart", "fullness", 0, 12]]);
    expect(of(endOf(12, 0))).toEqual([["dartEnd-front-sideDart", "fullness", 12, 0]]);
    // One that the garment has not names none.
    expect(of(endOf(12, 0, { dart: { piece: "front", dart: "neckDart" } }))).toEqual([
      ["dartEnd-front-sideDart", "fullness", 12, 0],
    ]);
  });

  it("of the ends of several darts: each its own, on each half its own", () => {
    const lines = [
      endOf(0, 8, { dart: WAIST, half: "left" }),
      endOf(9, 0, { dart: SIDE, half: "left" }),
      endOf(0, 6, { dart: WAIST, half: "right" }),
    ];
    const all = altered([cause("dartEndElsewhere", 0)], { lines: lines.map((one, at) => ({ ...one, id: `${at}` })) });
    expect(ends(all.alterations)).toEqual([
      ["dartEnd-front-waistDart-left", "fullness", 0, 8],
      ["dartEnd-front-sideDart-left", "fullness", 9, 0],
      ["dartEnd-front-waistDart-right", "fullness", 0, 6],
    ]);
    const right = altered([cause("dartEndElsewhere", 0, "right")], { lines: lines.slice(0, 1) });
    expect(ends(right.alterations)).toEqual([["dartEnd-front-waistDart-right", "fullness", 0, 8]]);
  });

  it("are counted from the ends as they were sewn, with what they held and gave back", () => {
    const before: Alteration = {
      kind: "dartEnd",
      id: "before",
      dart: WAIST,
      shorten: 5,
      across: -2,
      hold: "mouth",
      giveBack: { sideSeam: 1 },
    };
    const [end] = altered([cause("dartEndElsewhere", 0)], {
      lines: [endOf(0, 12, { dart: WAIST })],
      sewn: { alterations: [before] },
    }).alterations;
    const { drawn } = dartIn(plans.sideDart, WAIST);
    expect(end).toMatchObject({
      kind: "dartEnd",
      id: "dartEnd-front-waistDart",
      hold: "mouth",
      giveBack: { sideSeam: 1 },
    });
    const moved =
      end?.kind === "dartEnd" ? apexAfter(drawn, { shorten: end.shorten - 5, across: end.across + 2 }) : null;
    expect(moved?.y).toBeCloseTo(drawn.apex.y + 12, 0);
    expect(moved?.x).toBeCloseTo(drawn.apex.x, 0);
  });
});

describe("the mouths of darts", () => {
  const WAIST: DartRef = { piece: "front", dart: "waistDart" };
  const SIDE: DartRef = { piece: "front", dart: "sideDart" };
  const mouth = (dart: DartRef, by: number, half?: Half) => ({
    kind: "dartMouth" as const,
    id: `dartMouth-${dart.piece}-${dart.dart}${half === undefined ? "" : `-${half}`}`,
    dart,
    inner: by,
    outer: by,
    giveBack: {},
    ...(half === undefined ? {} : { half }),
  });

  it("are wider or narrower by half at each end, of the fullest dart where none is named", () => {
    // 69 of the side against 50 of the waist.
    const point = line("dartEnd", "pointed", { amount: 3 });
    expect(altered([cause("dartTooFull", 6)], { lines: [point] })).toEqual(only(mouth(SIDE, -3)));
    expect(altered([cause("dartTooFull", 6, "left")], { lines: [point] })).toEqual(only(mouth(SIDE, -3, "left")));
    expect(altered([cause("dartTooFull", 6)], { lines: [{ ...point, dart: WAIST }] })).toEqual(only(mouth(WAIST, -3)));
    expect(altered([cause("dartTooFlat", 9)], { lines: [line("dartEnd", "flat")] })).toEqual(only(mouth(SIDE, 5)));
    const beside = [line("bust", "pointed"), { ...point, dart: WAIST }];
    expect(altered([cause("dartTooFull", 6)], { lines: beside })).toEqual(only(mouth(WAIST, -3)));
    // A line of something else names no dart.
    expect(altered([cause("dartTooFull", 6)], { lines: [line("bust", "tight", { dart: WAIST }), point] })).toEqual(
      only(mouth(SIDE, -3)),
    );
    // Where no line is about it, the first of the bust.
    expect(altered([cause("dartTooFull", 6)])).toEqual(only(mouth(WAIST, -3)));
  });

  it("are counted from what was sewn, and give back as the dart's redraws do", () => {
    const before: Alteration = { ...mouth(SIDE, 2), id: "x", outer: 4, giveBack: { underarm: 1 } };
    const lines = [line("dartEnd", "pointed", { dart: SIDE })];
    expect(altered([cause("dartTooFull", 6)], { lines, sewn: { alterations: [before] } })).toEqual(
      only({ ...mouth(SIDE, -1), outer: 1, giveBack: { underarm: 1 } }),
    );
    const place: Alteration = {
      kind: "dartPlace",
      id: "y",
      dart: SIDE,
      by: 3,
      how: "redraw",
      giveBack: { waistEnd: 1 },
    };
    expect(altered([cause("dartTooFull", 6)], { lines, sewn: { alterations: [place] } })).toEqual(
      only({ ...mouth(SIDE, -3), giveBack: { waistEnd: 1 } }),
    );
    const end: Alteration = {
      kind: "dartEnd",
      id: "e",
      dart: SIDE,
      shorten: 2,
      across: 0,
      hold: "mouth",
      giveBack: {},
    };
    expect(altered([cause("dartTooFull", 6)], { lines, sewn: { alterations: [end, place] } })).toEqual(
      only({ ...mouth(SIDE, -3), giveBack: { waistEnd: 1 } }),
    );
    const onLeft: Alteration = { ...before, half: "left" };
    expect(altered([cause("dartTooFull", 6, "right")], { lines, sewn: { alterations: [onLeft] } })).toEqual(
      only(mouth(SIDE, -3, "right")),
    );
  });

  it("the waist dart comes nearer the centre off its seam, from where it was sewn", () => {
    const place = (by: number, half?: Half) => ({
      kind: "dartPlace" as const,
      id: `dartPlace-front-waistDart${half === undefined ? "" : `-${half}`}`,
      dart: WAIST,
      by,
      how: "offCentreSeam" as const,
      giveBack: {},
      ...(half === undefined ? {} : { half }),
    });
    expect(altered([cause("slackBetweenBusts", 6.4)])).toEqual(only(place(6)));
    expect(altered([cause("slackBetweenBusts", 6, "right")])).toEqual(only(place(6, "right")));
    expect(altered([cause("slackBetweenBusts", 6)], { sewn: { alterations: [{ ...place(4), id: "z" }] } })).toEqual(
      only(place(10)),
    );
    expect(altered([cause("slackBetweenBusts", 6)], { sewn: { alterations: [place(4, "left")] } })).toEqual(
      only(place(10, "left"), place(6, "right")),
    );
  });
});

describe("what a garment can have", () => {
  const names = (style: StyleName): readonly RuleName[] => {
    const plan = planOf(sewnAs(style));
    return RULES.filter((rule) => !canBeMade(rule, plan)).map(({ name }) => name);
  };

  it("no straps, cups or bands on a bodice with a side dart", () =>
    expect(names("sideDart")).toEqual([
      "underBustTooHigh",
      "underBustTooLow",
      "strapTooFarOut",
      "strapTooFarIn",
      "strapTooLong",
      "strapTooShort",
    ]));

  it("no shoulder, neck or upper back on a strapped one, no dart from the waist", () => {
    const left = names("midriff");
    expect(left).toEqual(
      expect.arrayContaining(["slopingShoulder", "forwardShoulder", "backNeckGapes", "slackBetweenBusts"]),
    );
    for (const name of [
      "fullBust",
      "dartTooFull",
      "dartEndElsewhere",
      "strapTooLong",
      "neckGapes",
      "seamPuckered",
    ] as const)
      expect(left).not.toContain(name);
  });

  it("no bust dart where the seams are shaped", () => {
    const left = names("princessShoulder");
    expect(left).toEqual(
      expect.arrayContaining(["dartTooFull", "dartTooFlat", "dartEndElsewhere", "slackBetweenBusts"]),
    );
    expect(left).not.toContain("bustPointElsewhere");
  });
});

describe("what can be on one half", () => {
  const work = sewnAs("sideDart");
  const withCups = (count: number): Decided => ({
    ...work,
    pattern: { ...work.pattern, chart: { ...work.pattern.chart, cups: work.pattern.chart.cups.slice(0, count) } },
  });

  it("no bust of her own pieces, which are there in one cup alone", () => {
    const drawing = { format: "svg", unit: null, lines: [], points: [], writings: [], hiddenLayers: [] } as const;
    const own = { file: "own.svg", drawing, pieces: [] };
    const sewnFrom = (pieces: typeof own & { readonly inUse?: true }): Decided => ({
      ...work,
      pattern: { ...work.pattern, own: pieces },
    });
    expect(canBeOnOneHalf(ruleOf("fullBust"), sewnFrom(own))).toBe(true);
    expect(canBeOnOneHalf(ruleOf("fullBust"), sewnFrom({ ...own, inUse: true }))).toBe(false);
    expect(canBeOnOneHalf(ruleOf("neckGapes"), sewnFrom({ ...own, inUse: true }))).toBe(true);
  });

  it("a bust from two versions on, everything else always", () => {
    const can = (name: RuleName, sewn: Decided) => canBeOnOneHalf(ruleOf(name), sewn);
    expect([0, 1, 2, 3].map((count) => can("fullBust", withCups(count)))).toEqual([false, false, true, true]);
    expect([0, 3].map((count) => can("neckGapes", withCups(count)))).toEqual([true, true]);
    expect(can("seamPuckered", withCups(0))).toBe(true);
  });
});
