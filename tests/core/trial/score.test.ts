/**
 * Sets of causes weighed by hand: noisy-or over every place and sign that the table knows, in two worlds (all as the table has it,
 * or something amiss beside), amounts by least squares. What is our own choice stands as it was chosen.
 */
import { describe, expect, it } from "vitest";
import type { Half } from "../../../src/core/decisions/alteration";
import type { Observation, TrialCheck } from "../../../src/core/decisions/trial";
import { readLines } from "../../../src/core/trial/recordLines";
import { RULES, ruleOf, type RuleName } from "../../../src/core/trial/rules";
import { findingsOf, isShownBy, weigh, type Look, type Supposed } from "../../../src/core/trial/score";
import { line } from "../../support/trials";

const BOTH = ["left", "right"] as const;
const on = (name: RuleName, ...halves: readonly Half[]): Supposed => ({
  rule: ruleOf(name),
  halves: halves.length === 0 ? BOTH : halves,
});
const look = (
  seen: readonly Observation[],
  checks: Readonly<Partial<Record<TrialCheck, boolean>>> = {},
  altered: readonly Supposed[] = [],
): Look => ({ lines: readLines(seen), checks, altered });
/** The log-probability of these causes, of a record and of those before it. */
const scoreOf = (causes: readonly Supposed[], one: Look, ...earlier: readonly Look[]): number =>
  weigh(causes, findingsOf(one, earlier))?.score ?? Number.NaN;

const KNOWN = new Set(RULES.flatMap(({ shows }) => shows.map(({ place, sign }) => `${place} ${sign}`))).size;
const { log, exp, sqrt, PI } = Math;

/** One sign more or less in three worlds; a thing seen is not hidden, a thing not seen is. */
type World = { readonly share: number; readonly both: number; readonly one: number };
const WORLDS: readonly World[] = [
  { share: 0.75, both: 0.003, one: 0.003 },
  { share: 0.25, both: 0.02, one: 0.025 },
];
const seen = (miss: number, falsely: number): number => log(1 - (1 - falsely) * miss);
const unseen = (miss: number, falsely: number): number => log((1 - falsely) * miss);
/** The sum over both worlds of what each says. */
const inWorlds = (told: (world: World) => number): number =>
  log(WORLDS.reduce((sum, world) => sum + world.share * exp(told(world)), 0));

/** One cause more; that it is of one half; what was measured is seen falsely less often. */
const [CAUSE, ONE_HALF, MEASURED] = [-2.2, -0.4, 0.65];
/** How much shows of a cause of 8 mm and of 12: none of 2, all of 10. */
const [EIGHT, TWELVE] = [0.75, 1];

const gape = line("frontNeck", "gapes", { amount: 4 });

describe("a record with nothing in it", () => {
  it("is as probable as that nothing is seen falsely", () =>
    expect(scoreOf([], look([]))).toBeCloseTo(
      inWorlds(({ both }) => KNOWN * unseen(1, both)),
      9,
    ));

  it("speaks against a cause by all that it should show", () =>
    // A neck that gapes: 0.85 gapes, 0.25 folds along it, 0.15 flat above; usually 8 mm.
    expect(scoreOf([on("neckGapes")], look([]))).toBeCloseTo(
      CAUSE +
        inWorlds(
          ({ both }) =>
            (KNOWN - 3) * unseen(1, both) +
            unseen(1 - 0.85 * EIGHT, both) +
            unseen(1 - 0.25 * EIGHT, both) +
            unseen(1 - 0.15 * EIGHT, both),
        ),
      9,
    ));
});

describe("a sign seen on both halves", () => {
  it("is one thing, seen by its cause or falsely", () => {
    const others = ({ both }: World): number => (KNOWN - 1) * unseen(1, both);
    expect(scoreOf([], look([gape]))).toBeCloseTo(
      inWorlds((world) => others(world) + seen(1, world.both * MEASURED)),
      9,
    );
    expect(scoreOf([], look([line("frontNeck", "gapes")]))).toBeCloseTo(
      inWorlds((world) => others(world) + seen(1, world.both)),
      9,
    );
  });

  it("is explained by a cause of it", () => {
    // Folded 4 deep, 8 of cloth: as is usual.
    const findings = findingsOf(look([gape]));
    expect(weigh([on("neckGapes")], findings)).toMatchObject({ amounts: [expect.closeTo(8, 9)], measured: [true] });
    expect(scoreOf([on("neckGapes")], look([gape]))).toBeCloseTo(
      CAUSE +
        inWorlds(
          ({ both }) =>
            (KNOWN - 3) * unseen(1, both) +
            seen(1 - 0.85 * EIGHT, both * MEASURED) +
            unseen(1 - 0.25 * EIGHT, both) +
            unseen(1 - 0.15 * EIGHT, both),
        ),
      9,
    );
  });

  it("and shown on one half alone, is half of what each half says", () => {
    expect(scoreOf([on("neckGapes", "left")], look([gape]))).toBeCloseTo(
      CAUSE +
        ONE_HALF +
        inWorlds(
          ({ both }) =>
            (KNOWN - 3) * unseen(1, both) +
            (seen(1 - 0.85 * EIGHT, both * MEASURED) + seen(1, both * MEASURED)) / 2 +
            unseen(1 - 0.25 * EIGHT, both) +
            unseen(1, both) +
            unseen(1 - 0.15 * EIGHT, both) +
            unseen(1, both),
        ),
      9,
    );
  });
});

describe("a sign seen on one half", () => {
  it.each(BOTH)("is a thing of that half (%s), and not seen on the other", (half) => {
    const one = look([{ ...gape, half }]);
    const told = (world: World): number => (KNOWN - 3) * unseen(1, world.both);
    expect(scoreOf([on("neckGapes", half)], one)).toBeCloseTo(
      CAUSE +
        ONE_HALF +
        inWorlds(
          (world) =>
            told(world) +
            seen(1 - 0.85 * EIGHT, world.one * MEASURED) +
            unseen(1, world.one * MEASURED) +
            unseen(1 - 0.25 * EIGHT, world.both) +
            unseen(1, world.both) +
            unseen(1 - 0.15 * EIGHT, world.both) +
            unseen(1, world.both),
        ),
      9,
    );
    expect(scoreOf([on("neckGapes")], one)).toBeCloseTo(
      CAUSE +
        inWorlds(
          (world) =>
            told(world) +
            seen(1 - 0.85 * EIGHT, world.one * MEASURED) +
            unseen(1 - 0.85 * EIGHT, world.one * MEASURED) +
            unseen(1 - 0.25 * EIGHT, world.both) +
            unseen(1 - 0.15 * EIGHT, world.both),
        ),
      9,
    );
  });

  it("mirrored weighs the same", () => {
    const record = (half: Half) => look([{ ...gape, half }, line("chest", "flat"), line("bust", "tight", { half })]);
    for (const name of ["neckGapes", "fullBust"] as const)
      expect(scoreOf([on(name, "left")], record("left"))).toBeCloseTo(
        scoreOf([on(name, "right")], record("right")),
        12,
      );
  });
});

describe("what no row knows", () => {
  it("is a thing seen falsely, whatever is supposed", () => {
    const odd = line("frontHip", "pointed");
    const alone = scoreOf([on("neckGapes")], look([gape]));
    // The two worlds by how far they are left after all else.
    expect(scoreOf([], look([odd]))).toBeCloseTo(
      inWorlds(({ both }) => KNOWN * unseen(1, both) + seen(1, both)),
      9,
    );
    expect(scoreOf([on("neckGapes")], look([gape, odd]))).toBeLessThan(alone + log(0.02));
    expect(scoreOf([on("neckGapes")], look([gape, odd]))).toBeGreaterThan(alone + log(0.003));
  });
});

describe("two causes", () => {
  it("miss a sign that both show only where both miss it", () => {
    // Both gape at the neck: 0.85 of one, 0.7 of an edge that grew (20 mm, all of it seen).
    const stretched = [0.6, 0.6, 0.15];
    expect(scoreOf([on("neckGapes"), on("neckStretched")], look([gape]))).toBeCloseTo(
      2 * CAUSE +
        inWorlds(
          ({ both }) =>
            (KNOWN - 6) * unseen(1, both) +
            seen((1 - 0.85 * EIGHT) * (1 - 0.7), both * MEASURED) +
            unseen(1 - 0.25 * EIGHT, both) +
            unseen(1 - 0.15 * EIGHT, both) +
            stretched.reduce((sum, likely) => sum + unseen(1 - likely, both), 0),
        ),
      9,
    );
  });
});

describe("amounts", () => {
  const amountOf = (name: RuleName, ...seenThere: readonly Observation[]) =>
    weigh([on(name)], findingsOf(look(seenThere)))?.amounts[0];
  /** What was measured says a thing to 5 mm, the usual first try to 30: as much as so many lines. */
  const TIE = (5 / 30) ** 2;

  it("are the usual first try where nothing was measured", () => {
    expect(weigh([on("swayBack"), on("neckGapes")], findingsOf(look([])))).toMatchObject({
      amounts: [12, 8],
      measured: [false, false],
    });
  });

  it("are the mean of what was measured, with the usual for a small part of a line", () => {
    // A fold 10 deep is 20; a waist 16 low is 16. The usual is 12.
    const lines = [line("backAboveWaist", "foldAcross", { amount: 10 }), line("backWaist", "drops", { amount: 16 })];
    expect(amountOf("swayBack", ...lines)).toBeCloseTo((20 + 16 + 12 * TIE) / (2 + TIE), 9);
  });

  it.each<readonly [RuleName, Observation, number]>([
    // At a seam a fold takes its depth out of each piece, so 6 deep is 6 of its amount; inside a piece 12.
    ["slopingShoulder", line("neckPoint", "dragLines", { amount: 6, way: "pinched" }), 6],
    ["neckGapes", line("frontNeck", "gapes", { amount: 6 }), 12],
    ["squareShoulder", line("shoulder", "tight", { amount: 16 }), 8],
    ["broadChest", line("chest", "tight", { amount: 9 }), 9],
    ["tightWaist", line("closureWaist", "doesNotMeet", { amount: 24 }), 12],
    ["looseWaist", line("sideSeam", "foldAlong", { amount: 7 }), 14],
    ["longAboveBust", line("bust", "bustPoint", { mark: { out: 0, down: -9 } }), 9],
    ["shortAboveBust", line("bust", "bustPoint", { mark: { out: 3, down: 9 } }), 9],
  ])("%s by one line", (name, one, amount) => {
    const { usual } = ruleOf(name);
    const found = weigh([on(name)], findingsOf(look([one])));
    // A line tells an amount by so much cloth for each mm; the more, the surer.
    const cloth =
      one.mark === undefined
        ? (one.way === "pinched" || one.sign === "gapes" || one.sign === "foldAlong" ? 2 : 1) * (one.amount ?? 0)
        : Math.abs(one.mark.down);
    const perMm = cloth / amount;
    expect(found?.amounts[0]).toBeCloseTo((perMm * cloth + usual * TIE) / (perMm ** 2 + TIE), 9);
    expect(found?.measured).toEqual([true]);
  });

  it("of two causes that show at one place add up there", () => {
    // 10 of sway back below the blades and 14 all round: 24 behind, 14 in front, and nothing left over.
    const lines = [
      line("backAboveWaist", "foldAcross", { amount: 12 }),
      line("backWaist", "drops", { amount: 24 }),
      line("frontAboveWaist", "foldAcross", { amount: 7 }),
      line("frontWaist", "drops", { amount: 14 }),
    ];
    const found = weigh([on("swayBack"), on("longBelowBust")], findingsOf(look(lines)));
    expect(found?.amounts[0]).toBeCloseTo(10, 0);
    expect(found?.amounts[1]).toBeCloseTo(14, 0);
  });

  it("too small to alter are none, but of marks", () => {
    // Folded 2 deep, 4 of cloth, a little more with the usual 8; 1.9 deep a little less than 4.
    expect(amountOf("neckGapes", line("frontNeck", "gapes", { amount: 2 }))).toBeCloseTo((4 + 8 * TIE) / (1 + TIE), 9);
    expect(weigh([on("neckGapes")], findingsOf(look([line("frontNeck", "gapes", { amount: 1.9 })])))).toBeNull();
    const marked = line("dartEnd", "dartEnds", { mark: { out: 9, down: 0 } });
    expect(weigh([on("dartEndElsewhere")], findingsOf(look([marked])))?.amounts).toEqual([0]);
    expect(weigh([on("dartEndElsewhere"), on("neckGapes")], findingsOf(look([marked, gape])))).not.toBeNull();
  });

  it("that agree speak for their cause, and those that do not against it, up to a point", () => {
    const two = (one: number, other: number) =>
      scoreOf(
        [on("slopingShoulder")],
        look([
          line("neckPoint", "dragLines", { amount: one, way: "pinched" }),
          line("shoulder", "foldAlong", { amount: other }),
        ]),
      );
    // Folds of equal depth against folds of 16 and 8: the mean is 12 in both, 8 of cloth off at each line (two for each mm).
    const usual = 8;
    const mean = (2 * 24 + 2 * 24 + usual * TIE) / (8 + TIE);
    const misfit = (off: number): number => (off / 5) ** 2 / 2;
    const apart = misfit(2 * mean - 32) + misfit(2 * mean - 16) - 2 * misfit(2 * mean - 24);
    expect(two(12, 12) - two(16, 8)).toBeCloseTo(apart, 9);
    // Beyond 3 no line speaks louder.
    expect(two(12, 12) - two(36, 4)).toBeLessThan(6.01);
  });

  it("one more that agrees is worth as much as 30 mm that could have been against 5 that were read", () => {
    const one = line("neckPoint", "dragLines", { amount: 8, way: "pinched" });
    const more = line("shoulder", "foldAlong", { amount: 8 });
    const unmeasured = line("shoulder", "foldAlong");
    const gain =
      scoreOf([on("slopingShoulder")], look([one, more])) - scoreOf([on("slopingShoulder")], look([one, unmeasured]));
    // And a little for that a measured sign is seen falsely less often.
    const agrees = log(30 / (5 * sqrt(2 * PI)));
    const miss = 1 - 0.3 * EIGHT;
    const falsely = seen(miss, 0.003 * MEASURED) - seen(miss, 0.003);
    expect(gain - agrees).toBeLessThan(0);
    expect(gain - agrees).toBeGreaterThan(8 * falsely);
  });
});

describe("how much of a cause shows", () => {
  it.each([
    [4, 0.25],
    [8, 0.75],
    [10, 1],
    [14, 1],
  ])("of %d mm %d of all", (amount, share) => {
    // Measured where nothing else of it is: a shoulder that ends inside.
    const record = look([line("shoulder", "endsInside", { amount })]);
    const found = weigh([on("broadShoulder")], findingsOf(record));
    const own = found?.amounts[0] ?? 0;
    expect(own).toBeCloseTo(amount, 0);
    const shown = Math.min((own - 2) / 8, 1);
    expect(shown).toBeCloseTo(share, 1);
    const off = own - amount;
    expect(found?.score).toBeCloseTo(
      CAUSE -
        (off / 5) ** 2 / 2 +
        inWorlds(
          ({ both }) =>
            (KNOWN - 2) * unseen(1, both) + seen(1 - 0.85 * shown, both * MEASURED) + unseen(1 - 0.15 * shown, both),
        ),
      9,
    );
  });

  it("of a cause that is a mark, all", () => {
    const record = look([line("dartEnd", "dartEnds", { mark: { out: 5, down: 0 } })]);
    expect(scoreOf([on("dartEndElsewhere")], record)).toBeCloseTo(
      CAUSE +
        inWorlds(({ both }) => (KNOWN - 2) * unseen(1, both) + seen(1 - 0.8, both * MEASURED) + unseen(1 - 0.3, both)),
      9,
    );
  });
});

describe("ticks", () => {
  // A thing ticked as right is ticked wrongly once in four.
  const denied = (miss: number): number => log(1 - 0.75 * (1 - miss));

  it.each<readonly [TrialCheck, RuleName, readonly (readonly [number, boolean])[]]>([
    [
      "hemLevel",
      "longBelowWaist",
      [
        [0.7, true],
        [0.7, true],
        [0.3, false],
        [0.3, false],
      ],
    ],
    [
      "waistOnWaist",
      "waistRisesInFront",
      [
        [0.8, true],
        [0.3, false],
        [0.15, false],
      ],
    ],
    [
      "waistOnWaist",
      "waistDipsBehind",
      [
        [0.8, true],
        [0.25, false],
      ],
    ],
    [
      "waistOnWaist",
      "waistRisesBehind",
      [
        [0.8, true],
        [0.25, false],
      ],
    ],
    [
      "hemLevel",
      "shortBelowWaist",
      [
        [0.7, true],
        [0.7, true],
      ],
    ],
    [
      "sideSeamsUpright",
      "sideSeamsForward",
      [
        [0.8, true],
        [0.5, false],
        [0.5, false],
      ],
    ],
    [
      "sideSeamsUpright",
      "sideSeamsBack",
      [
        [0.8, true],
        [0.5, false],
        [0.5, false],
      ],
    ],
    [
      "shouldersStay",
      "strapTooFarOut",
      [
        [0.75, true],
        [0.6, false],
      ],
    ],
    [
      "shouldersStay",
      "narrowShoulder",
      [
        [0.85, false],
        [0.15, false],
      ],
    ],
  ])("%s speaks against %s by what it should show", (check, name, shows) => {
    const { usual } = ruleOf(name);
    const share = Math.min((usual - 2) / 8, 1);
    const open = inWorlds(
      ({ both }) =>
        (KNOWN - shows.length) * unseen(1, both) +
        shows.reduce((sum, [likely]) => sum + unseen(1 - likely * share, both), 0),
    );
    const against = shows.reduce((sum, [likely, isDenied]) => sum + (isDenied ? denied(1 - likely * share) : 0), 0);
    expect(scoreOf([on(name)], look([]))).toBeCloseTo(CAUSE + open, 9);
    expect(scoreOf([on(name)], look([], { [check]: true }))).toBeCloseTo(CAUSE + open + against, 9);
    expect(scoreOf([on(name)], look([], { [check]: false }))).toBeCloseTo(CAUSE + open, 9);
  });
});

describe("marks", () => {
  const at = (down: number) => readLines([line("bust", "bustPoint", { mark: { out: 6, down } })])[0];
  const shown = (name: RuleName, down: number) => {
    const one = at(down);
    return one === undefined ? null : (isShownBy(on(name), one)?.likely ?? null);
  };

  // Worth altering from 4 mm on.
  it("are shown by a cause that moves them that way by what is worth altering", () => {
    expect([shown("longAboveBust", -4), shown("longAboveBust", -3.9), shown("longAboveBust", 4)]).toEqual([
      0.6,
      null,
      null,
    ]);
    expect([shown("shortAboveBust", 4), shown("shortAboveBust", 3.9), shown("shortAboveBust", -4)]).toEqual([
      0.6,
      null,
      null,
    ]);
    expect([shown("bustPointElsewhere", 4), shown("bustPointElsewhere", -9)]).toEqual([0.8, 0.8]);
  });

  it("that lie the other way are no marks that a cause should show", () => {
    const [up, down] = [-10, 10].map((by) => look([line("bust", "bustPoint", { mark: { out: 0, down: by } })]));
    const nowhere = look([line("bust", "bustPoint", { mark: { out: 10, down: 0 } })]);
    // A short front shows a mark that is lower (0.6): one that is higher is a thing seen falsely, and not counted as missed.
    const short = on("shortAboveBust");
    const lost = (record: Look | undefined): number =>
      record === undefined ? Number.NaN : scoreOf([short], record) - scoreOf([], record);
    expect(lost(up)).toBeCloseTo(lost(nowhere), 9);
    expect(lost(down)).toBeGreaterThan(lost(up) + 3);
  });
});

describe("isShownBy", () => {
  it("goes by the halves", () => {
    const [left] = readLines([{ ...gape, half: "left" }]);
    const shownOn = (...halves: readonly Half[]) =>
      left === undefined ? undefined : (isShownBy({ rule: ruleOf("neckGapes"), halves }, left)?.likely ?? null);
    expect([shownOn("left"), shownOn("right"), shownOn("left", "right")]).toEqual([0.85, null, 0.85]);
  });
});

describe("trials before it", () => {
  const nothing = look([]);

  it("say again what they say", () => {
    const both = inWorlds(({ both: falsely }) => 2 * KNOWN * unseen(1, falsely));
    expect(scoreOf([], nothing, nothing)).toBeCloseTo(both, 9);
  });

  it("what was altered since may be left, or gone too far", () => {
    const then = (...altered: readonly Supposed[]) => look([], {}, altered);
    /** What stands of a cause where its signs were not seen then, but hidden by what was altered. */
    const told = (causes: readonly Supposed[], altered: readonly Supposed[], prior: number): number => {
      const missOf = (of: readonly Supposed[], share: number): ReadonlyMap<string, number> => {
        const miss = new Map<string, number>();
        for (const { rule } of of)
          for (const { place, sign, likely } of rule.shows)
            miss.set(`${place} ${sign}`, (miss.get(`${place} ${sign}`) ?? 1) * (1 - likely * share));
        return miss;
      };
      // All of the usual amounts here are 8: three quarters of it shows.
      const [now, before] = [missOf(causes, EIGHT), missOf(altered, 1)];
      const sum = (misses: readonly number[], falsely: number): number =>
        misses.reduce((total, miss) => total + unseen(miss, falsely), (KNOWN - misses.length) * unseen(1, falsely));
      const atThen = new Map(before);
      for (const [key, miss] of now) atThen.set(key, (atThen.get(key) ?? 1) * miss);
      return (
        prior +
        causes.length * CAUSE +
        inWorlds(({ both }) => sum([...now.values()], both) + sum([...atThen.values()], both))
      );
    };
    const [wide, narrow, neck] = [on("broadShoulder"), on("narrowShoulder"), on("neckGapes")];
    expect(scoreOf([], nothing, then(wide))).toBeCloseTo(told([], [wide], 0), 9);
    expect(scoreOf([wide], nothing, then(wide))).toBeCloseTo(told([wide], [wide], -0.7), 9);
    expect(scoreOf([narrow], nothing, then(wide))).toBeCloseTo(told([narrow], [wide], 0.5), 9);
    expect(scoreOf([neck], nothing, then(wide))).toBeCloseTo(told([neck], [wide], 0), 9);
    // A shoulder 8 wider is no chest 8 wider, though both are fits.
    expect(scoreOf([on("narrowChest")], nothing, then(wide))).toBeCloseTo(told([on("narrowChest")], [wide], 0), 9);
    expect(scoreOf([on("dartTooFull")], nothing, then(on("dartTooFlat")))).toBeCloseTo(
      told([on("dartTooFull")], [on("dartTooFlat")], 0.5),
      9,
    );
  });

  it("what was altered on the other half is another thing", () => {
    const since = (half: Half) =>
      scoreOf([on("broadShoulder", "left")], nothing, look([], {}, [on("broadShoulder", half)]));
    // What was not seen is missed as often, whether by both on one half or by each on its own.
    expect(since("left") + 0.7).toBeCloseTo(since("right"), 9);
  });

  it("what was measured then counts, where nothing that was altered since shows there", () => {
    const then = look([line("frontNeck", "gapes", { amount: 8 })]);
    const amount = (earlier: Look) => weigh([on("neckGapes")], findingsOf(look([gape]), [earlier]))?.amounts[0];
    const tie = (5 / 30) ** 2;
    // 8 of cloth now, 16 then.
    expect(amount(then)).toBeCloseTo((8 + 16 + 8 * tie) / (2 + tie), 9);
    expect(amount({ ...then, altered: [on("neckGapes")] })).toBeCloseTo(8, 9);
    expect(amount({ ...then, altered: [on("narrowShoulder")] })).toBeCloseTo((8 + 16 + 8 * tie) / (2 + tie), 9);
  });
});

it("a mark that nobody made is one not seen", () => {
  // A front too short above the bust, 10 mm: all of it shows, two of its signs as marks.
  const likely = [0.25, 0.25, 0.6, 0.4, 0.5, 0.45, 0.3, 0.25, 0.45, 0.45, 0.35, 0.15];
  expect(scoreOf([on("shortAboveBust")], look([]))).toBeCloseTo(
    CAUSE +
      inWorlds(
        ({ both }) => (KNOWN - 12) * unseen(1, both) + likely.reduce((sum, one) => sum + unseen(1 - one, both), 0),
      ),
    9,
  );
});

it("of a long record all is weighed: twelve millimetres show all of themselves", () => {
  expect(scoreOf([on("roundBack")], look([]))).toBeCloseTo(
    CAUSE +
      inWorlds(
        ({ both }) =>
          (KNOWN - 9) * unseen(1, both) +
          [0.55, 0.45, 0.45, 0.4, 0.35, 0.25, 0.25, 0.25, 0.15].reduce(
            (sum, likely) => sum + unseen(1 - likely * TWELVE, both),
            0,
          ),
      ),
    9,
  );
});
