/** What taking an answer asks the work for: the whole command, on works and answers of a line, by hand. */
import { describe, expect, it } from "vitest";
import type { Alteration, FitAlteration, Half } from "../../../src/core/decisions/alteration";
import type { Decided } from "../../../src/core/decisions/decided";
import type { FitName } from "../../../src/core/decisions/fitNames";
import type { TakenAnswer, Trial } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { linesAsking } from "../../../src/core/trial/linesAsking";
import type { RuleName } from "../../../src/core/trial/rules";
import { answerCommand } from "../../../src/core/trial/takeAnswer";
import type { TrialAnswer } from "../../../src/core/trial/trialReading";
import { first, line, sewnAs, toile } from "../../support/trials";

const fit = (name: FitName, amount: number, half?: Half): FitAlteration => ({
  kind: "fit",
  id: half === undefined ? `fit-${name}` : `fit-${name}-${half}`,
  fit: name,
  amount,
  ...(half === undefined ? {} : { half }),
});
const cause = (rule: RuleName, amount: number, half?: Half): TrialAnswer["causes"][number] => ({
  rule,
  ...(half === undefined ? {} : { half }),
  amount,
  amountBy: "measured",
  explains: ["a"],
  expects: [],
  against: [],
});
const answer = (causes: TrialAnswer["causes"], more: Partial<TrialAnswer> = {}): TrialAnswer => ({
  key: "",
  causes,
  explains: ["a", "b"],
  leaves: [],
  alterations: [],
  tellsApart: [],
  ...more,
});
const GAPE = answer([cause("neckGapes", 8)], { alterations: [fit("necklineGape", 8)] });

const plain = toile("sideDart", []);
/** A trial with answers taken by the names of what they altered. */
const after = (taken: readonly (readonly [readonly string[], Half?])[], sewn: Partial<Decided> = {}): Trial => ({
  ...plain,
  sewn: { ...plain.sewn, ...sewn },
  taken: taken.map(([alterations, half]): TakenAnswer => ({
    causes: [],
    because: [],
    alterations,
    ...(half === undefined ? {} : { half }),
  })),
});
const workOf = (alterations: readonly Alteration[], more: Partial<Work> = {}): Work => ({
  ...sewnAs("sideDart"),
  alterations,
  ...more,
});
const command = (told: Readonly<Record<string, unknown>>) => ({
  kind: "takeTrialAnswer",
  trial: "t",
  answer: { causes: ["neckGapes"], because: ["a", "b"], alterations: ["fit-necklineGape"] },
  ...told,
});

describe("an answer taken", () => {
  it("is what it alters, and why", () => {
    expect(answerCommand(workOf([]), plain, GAPE, null)).toEqual(command({ alterations: [fit("necklineGape", 8)] }));
    const two = answer([cause("armholeGapes", 8, "left"), cause("swayBack", 5)], {
      alterations: [fit("armholeGape", 8, "left"), fit("swayBack", 5)],
    });
    expect(answerCommand(workOf([]), plain, two, null)).toEqual({
      kind: "takeTrialAnswer",
      trial: "t",
      answer: {
        causes: ["armholeGapes-left", "swayBack"],
        because: ["a", "b"],
        alterations: ["fit-armholeGape-left", "fit-swayBack"],
      },
      alterations: two.alterations,
    });
  });

  it("tried on one half is the same causes there", () => {
    const wide = answer([cause("neckGapes", 8), cause("narrowChest", 6)], {
      alterations: [fit("necklineGape", 8), fit("chestWidth", -12)],
    });
    for (const half of ["left", "right"] as const)
      expect(answerCommand(workOf([]), plain, wide, half)).toEqual({
        kind: "takeTrialAnswer",
        trial: "t",
        answer: {
          causes: ["neckGapes", "narrowChest"],
          half,
          because: ["a", "b"],
          alterations: [`fit-necklineGape-${half}`, `fit-chestWidth-${half}`],
        },
        alterations: [fit("necklineGape", 8, half), fit("chestWidth", -6, half)],
      });
  });

  it("of the bust holds the base size and the cup that the toile was sewn from", () => {
    const bust = answer([cause("smallBust", 10)], { bustAlteration: -20 });
    expect(answerCommand(workOf([]), plain, bust, null)).toEqual({
      kind: "takeTrialAnswer",
      trial: "t",
      answer: { causes: ["smallBust"], because: ["a", "b"], alterations: ["bust"] },
      alterations: [],
      bustAlteration: -20,
      baseSize: "12",
      cup: "C",
    });
    // What is so already is not asked for again.
    expect(answerCommand(workOf([], { picks: { bustAlteration: -20 } }), plain, bust, null)).not.toHaveProperty(
      "bustAlteration",
    );
  });

  it("of one half's bust is that half's cup", () => {
    const cup = answer([cause("fullBust", 12, "left")], { halfCups: { left: "D" } });
    expect(answerCommand(workOf([]), plain, cup, null)).toEqual({
      kind: "takeTrialAnswer",
      trial: "t",
      answer: { causes: ["fullBust-left"], because: ["a", "b"], alterations: ["halfCups"] },
      alterations: [],
      halfCups: { left: "D" },
      baseSize: "12",
      cup: "C",
    });
  });
});

describe("what earlier answers altered", () => {
  const undone = (work: Work, trial: Trial, half: Half | null = null, now: TrialAnswer = GAPE) =>
    answerCommand(work, trial, now, half);
  const alterationsOf = (work: Work, trial: Trial, half: Half | null = null, now: TrialAnswer = GAPE) => {
    const asked = undone(work, trial, half, now);
    return asked.kind === "takeTrialAnswer" ? asked.alterations : [];
  };
  const on = (one: Alteration, half: Half): Alteration => ({ ...one, half });
  const sway = fit("swayBack", 12);
  const neck = fit("necklineGape", 8);

  it("is taken out, on each half", () => {
    expect(alterationsOf(workOf([sway]), after([[["fit-swayBack"]]]))).toEqual([
      on({ ...sway, amount: 0 }, "left"),
      on({ ...sway, amount: 0 }, "right"),
      neck,
    ]);
  });

  it("stands as it was sewn, of a whole width half on each", () => {
    expect(alterationsOf(workOf([sway]), after([[["fit-swayBack"]]], { alterations: [fit("swayBack", 5)] }))).toEqual([
      on(fit("swayBack", 5), "left"),
      on(fit("swayBack", 5), "right"),
      neck,
    ]);
    const wide = workOf([fit("chestWidth", -16)]);
    expect(alterationsOf(wide, after([[["fit-chestWidth"]]], { alterations: [fit("chestWidth", -6)] }))).toEqual([
      on(fit("chestWidth", -3), "left"),
      on(fit("chestWidth", -3), "right"),
      neck,
    ]);
    const left = after([[["fit-swayBack"]]], { alterations: [fit("swayBack", 5, "left")] });
    expect(alterationsOf(workOf([sway]), left)).toEqual([
      fit("swayBack", 5, "left"),
      on({ ...sway, amount: 0 }, "right"),
      neck,
    ]);
  });

  it("is left where the answer alters it anew, or no answer did, or it is there no more", () => {
    expect(alterationsOf(workOf([fit("necklineGape", 3)]), after([[["fit-necklineGape"]]]))).toEqual([neck]);
    expect(alterationsOf(workOf([sway]), after([[["fit-roundBack"]]]))).toEqual([neck]);
    expect(alterationsOf(workOf([]), after([[["fit-swayBack"]]]))).toEqual([neck]);
    expect(alterationsOf(workOf([sway]), plain)).toEqual([neck]);
  });

  it("on one half is left on the other", () => {
    const gape = fit("necklineGape", 8, "left");
    expect(alterationsOf(workOf([sway]), after([[["fit-swayBack"]]]), "left")).toEqual([
      on({ ...sway, amount: 0 }, "left"),
      gape,
    ]);
    expect(
      alterationsOf(workOf([fit("swayBack", 12, "right")]), after([[["fit-swayBack-right"], "right"]]), "left"),
    ).toEqual([gape]);
    expect(
      alterationsOf(workOf([fit("swayBack", 12, "left")]), after([[["fit-swayBack-left"], "left"]]), "left"),
    ).toEqual([fit("swayBack", 0, "left"), gape]);
    expect(alterationsOf(workOf([fit("swayBack", 12, "left")]), after([[["fit-swayBack-left"], "left"]]))).toEqual([
      fit("swayBack", 0, "left"),
      neck,
    ]);
  });

  it("tried on each half and one for both by now goes on both", () => {
    const each = after([
      [["fit-swayBack-left"], "left"],
      [["fit-swayBack-right"], "right"],
    ]);
    expect(alterationsOf(workOf([sway]), each)).toEqual([
      on({ ...sway, amount: 0 }, "left"),
      on({ ...sway, amount: 0 }, "right"),
      neck,
    ]);
  });

  it("of darts is of no amount too; what has none stays", () => {
    const dart = { piece: "front", dart: "waistDart" } as const;
    const darts: readonly Alteration[] = [
      { kind: "dartEnd", id: "1", dart, shorten: 4, across: 5, hold: "mouth", giveBack: {}, half: "left" },
      { kind: "dartMouth", id: "2", dart, inner: 4, outer: 5, giveBack: {}, half: "left" },
      { kind: "dartPlace", id: "3", dart, by: 4, how: "redraw", giveBack: {}, half: "left" },
      { kind: "dartPivot", id: "4", dart, to: "armhole", share: 0.5, half: "left" },
      { kind: "dartLegs", id: "5", dart, bow: 2, half: "left" },
      { kind: "dartGather", id: "6", dart, half: "left" },
    ];
    expect(alterationsOf(workOf(darts), after([[darts.map(({ id }) => id)]]))).toEqual([
      { ...darts[0], shorten: 0, across: 0 },
      { ...darts[1], inner: 0, outer: 0 },
      { ...darts[2], by: 0 },
      { ...darts[3], share: 0 },
      { ...darts[4], bow: 0 },
      darts[5],
      neck,
    ]);
  });

  it("of the bust is as it was sewn, with the sizes that were held for it", () => {
    const held = workOf([], { picks: { bustAlteration: -20, baseSize: "12", cup: "C" } });
    expect(undone(held, after([[["bust"]]]))).toEqual(
      command({ alterations: [neck], bustAlteration: null, baseSize: null, cup: null }),
    );
    const sewn = { picks: { bustAlteration: 8, baseSize: "12" } };
    expect(undone(held, after([[["bust"]]], sewn))).toEqual(
      command({ alterations: [neck], bustAlteration: 8, baseSize: "12", cup: null }),
    );
    // Sizes that she picked herself since stay.
    const own = workOf([], { picks: { bustAlteration: -20, baseSize: "14", cup: "D" } });
    expect(undone(own, after([[["bust"]]]))).toEqual(command({ alterations: [neck], bustAlteration: null }));
    expect(undone(held, after([[["fit-swayBack"]]]))).toEqual(command({ alterations: [neck] }));
    const asSewn = workOf([], { picks: { bustAlteration: 8 } });
    expect(undone(asSewn, after([[["bust"]]], { picks: { bustAlteration: 8 } }))).toEqual(
      command({ alterations: [neck] }),
    );
  });

  it("of one half's cup is as it was sewn", () => {
    const held = workOf([], { picks: { halfCups: { left: "D" }, baseSize: "12", cup: "C" } });
    expect(undone(held, after([[["halfCups"]]]))).toEqual(
      command({ alterations: [neck], halfCups: null, baseSize: null, cup: null }),
    );
    expect(undone(held, after([[["halfCups"]]], { picks: { halfCups: { right: "B" } } }))).toMatchObject({
      halfCups: { right: "B" },
    });
  });
});

describe("the lines that ask for one alteration of an answer", () => {
  const lines = [
    line("backAboveWaist", "foldAcross", { amount: 6 }),
    line("backWaist", "drops", { amount: 12 }),
    line("shoulder", "endsOutside", { amount: 9 }),
  ];
  const trial = toile("sideDart", lines);
  const all = lines.map(({ id }) => id);
  const taken = (causes: readonly string[], because: readonly string[] = all): TakenAnswer => ({
    causes,
    because,
    alterations: [],
  });
  const two = taken(["swayBack", "narrowShoulder"]);

  it("are those of the cause that it is made for", () => {
    expect(first(trial).causes.map(({ rule }) => rule)).toEqual(two.causes);
    expect(linesAsking(trial, two, fit("swayBack", 12))).toEqual(all.slice(0, 2));
    expect(linesAsking(trial, two, fit("shoulderWidth", -9))).toEqual(all.slice(2));
    expect(linesAsking(trial, taken(two.causes, all.slice(1)), fit("swayBack", 12))).toEqual(all.slice(1, 2));
  });

  it("are all of the answer's where no cause of it is told to make it", () => {
    expect(linesAsking(trial, two, fit("necklineGape", 9))).toEqual(all);
    expect(linesAsking(trial, two, "bust")).toEqual(all);
    expect(linesAsking(trial, taken(["swayBack"]), fit("shoulderWidth", -9))).toEqual(all);
    expect(linesAsking(trial, taken(["narrowShoulder", "swayBack"]), fit("swayBack", 12))).toEqual(all);
    expect(linesAsking(trial, taken(["swayBack-left", "narrowShoulder"]), fit("swayBack", 12))).toEqual(all);
  });

  const dart = { piece: "front", dart: "sideDart" } as const;
  const end: Alteration = { kind: "dartEnd", id: "e", dart, shorten: 4, across: 0, hold: "mouth", giveBack: {} };
  const mouth: Alteration = { kind: "dartMouth", id: "m", dart, inner: -3, outer: -3, giveBack: {} };
  const place: Alteration = { kind: "dartPlace", id: "p", dart, by: 4, how: "offCentreSeam", giveBack: {} };
  const others: readonly Alteration[] = [
    { kind: "dartPivot", id: "1", dart, to: "armhole", share: 1 },
    { kind: "dartGather", id: "2", dart },
    { kind: "dartLegs", id: "3", dart, bow: 2 },
  ];

  it.each<readonly [RuleName, ReturnType<typeof line>, Alteration | "bust"]>([
    ["dartEndElsewhere", line("dartEnd", "dartEnds", { mark: { out: 7, down: 9 } }), end],
    ["bustPointElsewhere", line("bust", "bustPoint", { mark: { out: 12, down: 0 } }), end],
    ["dartTooFull", line("dartEnd", "pointed", { amount: 4 }), mouth],
    ["slackBetweenBusts", line("betweenBusts", "foldAlong", { amount: 7 }), place],
    ["smallBust", line("bust", "foldAlong", { amount: 7 }), "bust"],
  ])("of %s go to what is made for it, and to nothing else", (rule, one, made) => {
    const beside = line("shoulder", "endsOutside", { amount: 9 });
    const record = toile("sideDart", [one, beside]);
    const answerTaken = taken(
      first(record).causes.map((own) => own.rule),
      [one.id, beside.id],
    );
    expect(answerTaken.causes).toContain(rule);
    expect(answerTaken.causes).toContain("narrowShoulder");
    expect(linesAsking(record, answerTaken, made)).toEqual([one.id]);
    for (const other of [end, mouth, place, "bust" as const, ...others].filter((some) => some !== made))
      expect(linesAsking(record, answerTaken, other)).toEqual([one.id, beside.id]);
    expect(linesAsking(record, answerTaken, fit("shoulderWidth", -9))).toEqual([beside.id]);
  });
});
