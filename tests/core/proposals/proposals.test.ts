/**
 * Her lengths and widths against the garment. The block's figures are those it is drafted by at bust 880 mm (common practice, no
 * source): a body with just these has nothing to alter, and what is planted is asked for by hand-reckoned amounts.
 */
import { describe, expect, it } from "vitest";
import type { FitAlteration } from "../../../src/core/decisions/alteration";
import type { FitName } from "../../../src/core/decisions/fitNames";
import { PRINTED_LENGTHS, type PrintedLengths, type StyleName } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import type { MeasureName, Measures } from "../../../src/core/measures/measure";
import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { applyCommand, type Command } from "../../../src/core/plan/commands";
import { compareMeasures } from "../../../src/core/proposals/compare";
import { garmentLength } from "../../../src/core/proposals/garmentLengths";
import { proposalsOf, type Advice, type Proposal } from "../../../src/core/proposals/proposals";
import { invariant } from "../../../src/core/result";
import { demoWorks } from "../../../src/document/demo";
import { measureServes } from "../../../src/words/measures";
import { askedSum, heldBackSentence, notAltered, proposalSentence, proposalTitle } from "../../../src/words/proposals";
import { planOf, testWork } from "../../support/works";

const BLOCK = {
  bustGirth: 880,
  upperChestGirth: 830,
  underBustGirth: 760,
  waistGirth: 700,
  hipGirth: 940,
  height: 1680,
  backWaistLength: 410,
  frontWaistLength: 432,
  neckBaseGirth: 370,
  acrossBack: 345,
  acrossFront: 325,
  shoulderLength: 122,
  bustPointWidth: 190,
  sideNeckToBustPoint: 265,
} as const satisfies Record<MeasureName, number>;

const workOf = (measures: Measures, more: Partial<Work> = {}, lengths?: PrintedLengths, style?: StyleName): Work => ({
  ...testWork,
  tapes: tapesOf(measures),
  ...more,
  pattern: {
    ...testWork.pattern,
    ...(lengths === undefined ? {} : { lengths }),
    ...(style === undefined ? {} : { style }),
  },
});

const adviceOn = (work: Work): Advice => proposalsOf(work, planOf(work));
const adviceFor = (measures: Measures): Advice => adviceOn(workOf({ ...BLOCK, ...measures }));
const only = (...names: readonly (keyof typeof BLOCK)[]): Measures => ({
  bustGirth: 880,
  upperChestGirth: 830,
  waistGirth: 700,
  hipGirth: 940,
  ...Object.fromEntries(names.map((name) => [name, BLOCK[name]])),
});

const keyOf = ({ altered }: Proposal): string => (altered.kind === "fit" ? altered.fit : altered.kind);
/** What is asked for, by name, with its amount. */
const askedIn = ({ proposals }: Advice): readonly (readonly [string, number])[] =>
  proposals.map((proposal) => [keyOf(proposal), proposal.amount]);

const fitted = (fit: FitName, amount: number): FitAlteration => ({ kind: "fit", id: `fit-${fit}`, fit, amount });
const take = (work: Work, { commands }: Proposal): Work => commands.reduce(applyCommand, work);
const firstOf = (work: Work): Proposal => invariant(adviceOn(work).proposals[0], "proposal");

describe("what the pieces give of a body's lengths", () => {
  const pieces = setOf(planOf(workOf(BLOCK)).printed);

  it.each([
    ["backWaistLength", 410],
    ["shoulderLength", 122],
    // Ease of the draft: 4 on each half of the back, 2 on each half of the front.
    ["acrossBack", 345 + 8],
    ["acrossFront", 325 + 4],
    ["bustPointWidth", 190],
    ["sideNeckToBustPoint", 265],
  ] as const)("is %s: %d mm on the block", (measure, mm) => {
    expect(garmentLength(measure, pieces)).toBeCloseTo(mm, 1);
  });

  it("runs over the bust point to the waist below it", () => {
    // From (69, −40) to the bust point at x 95, and on to 410: 18 mm of ease over the 432 of the body.
    const bustPoint = -40 + Math.sqrt(265 ** 2 - (95 - 69) ** 2);
    const straight = 265 + 410 - bustPoint;
    // At the mouth of the waist dart the seam hangs some millimetres lower: shut, it runs on smoothly.
    expect(garmentLength("frontWaistLength", pieces)).toBeGreaterThan(straight);
    expect(garmentLength("frontWaistLength", pieces)).toBeLessThan(straight + 7);
  });

  it("is nothing where they have none of it", () => {
    const strapped = setOf(planOf(workOf(BLOCK, {}, undefined, "midriff")).printed);
    for (const measure of ["shoulderLength", "acrossBack", "acrossFront", "neckBaseGirth", "height"] as const)
      expect(garmentLength(measure, strapped)).toBeNull();
    expect(garmentLength("underBustGirth", pieces)).toBeNull();
  });
});

describe("a body with the pattern's own lengths", () => {
  it.each(["sideDart", "princessArmhole", "princessShoulder"] as const)("is asked for nothing: %s", (style) => {
    const advice = adviceOn(workOf(BLOCK, {}, undefined, style));
    expect(advice.proposals).toEqual([]);
    expect(advice.unanswered).toEqual([]);
    expect(advice.agreeing.map(({ off }) => Math.abs(off) < 0.01)).toEqual(advice.agreeing.map(() => true));
    expect(advice.agreeing).toHaveLength(8);
  });
});

describe("each measure planted alone", () => {
  const planted: readonly (readonly [keyof typeof BLOCK, number, string, number])[] = [
    ["backWaistLength", 20, "roundBack", 20],
    ["backWaistLength", -20, "swayBack", 20],
    ["shoulderLength", 16, "shoulderWidth", 16],
    ["shoulderLength", -18, "shoulderWidth", -18],
    ["acrossBack", 22, "backWidth", 22],
    ["acrossBack", -22, "backWidth", -22],
    ["acrossFront", 24, "chestWidth", 24],
    ["bustPointWidth", -24, "dartsOut", -12],
    ["bustPointWidth", 24, "dartsOut", 12],
    ["sideNeckToBustPoint", 21, "bustPointLevel", 21],
  ];
  it.each(planted)("%s by %d mm asks for %s", (measure, by, name, amount) => {
    const [asked, ...others] = askedIn(adviceFor({ [measure]: BLOCK[measure] + by }));
    expect(others).toEqual([]);
    expect(asked?.[0]).toBe(name);
    // A wedge gives a little less than itself where the tape runs.
    expect(Math.abs((asked?.[1] ?? 0) - amount)).toBeLessThanOrEqual(name.endsWith("Back") ? 3 : 1);
  });

  it("front waist length asks for a wedge at the centre front, which gives what it lacks below the bust point", () => {
    const work = workOf({ ...BLOCK, frontWaistLength: 432 + 22 });
    const [proposal] = adviceOn(work).proposals;
    expect(proposal === undefined ? null : keyOf(proposal)).toBe("waistDropFront");
    const after = take(work, invariant(proposal, "proposal"));
    const longer =
      (garmentLength("frontWaistLength", setOf(planOf(after).left.pieces)) ?? 0) -
      (garmentLength("frontWaistLength", setOf(planOf(work).left.pieces)) ?? 0);
    // As much as the wedge can be made gives.
    expect(longer + 0.8 * (proposal?.missing ?? 0)).toBeGreaterThan(20);
    expect(longer).toBeLessThan(24);
  });

  it("neck base alters nothing, and says so", () => {
    const { proposals, unanswered } = adviceFor({ neckBaseGirth: 395 });
    expect(proposals).toEqual([]);
    expect(unanswered.map(({ compared, because }) => [compared.measure, because])).toEqual([
      ["neckBaseGirth", "noAlteration"],
    ]);
    expect(measureServes("neckBaseGirth")).toMatch(/alters nothing/);
  });

  it("under-bust asks for the side seams of a midriff band, and elsewhere says that it alters nothing", () => {
    const banded = (underBustGirth: number): number =>
      askedIn(adviceOn(workOf({ ...BLOCK, underBustGirth }, {}, undefined, "midriff"))).find(
        ([name]) => name === "sideSeamUnderBust",
      )?.[1] ?? 0;
    expect(banded(760)).toBeLessThan(-20);
    expect(banded(740) - banded(760)).toBe(-20);
    expect(adviceFor({}).notOnPieces).toContain("underBustGirth");
    expect(measureServes("underBustGirth")).toMatch(/^Held against a midriff band\./);
  });

  it("height asks for the back waist length where the pattern says what it is drafted for", () => {
    const lengths: PrintedLengths = { height: { all: 1680 } };
    const { backWaistLength: _none, ...others } = BLOCK;
    const because = (measures: Measures) =>
      adviceOn(workOf(measures, {}, lengths)).unanswered.map((one) => one.because);
    expect(because({ ...others, height: 1740 })).toEqual(["measureBack"]);
    expect(because({ ...others, height: 1690 })).toEqual([]);
    expect(because({ ...BLOCK, height: 1740 })).toEqual([]);
    expect(measureServes("height")).toMatch(/^Alters nothing\./);
  });

  it("girths change the plan itself", () => {
    const levels = (measures: Measures): string => {
      const { levels: found, sizing } = planOf(workOf({ ...BLOCK, ...measures }));
      return JSON.stringify([found, sizing]);
    };
    for (const girth of ["bustGirth", "upperChestGirth", "waistGirth", "hipGirth"] as const)
      expect(levels({ [girth]: BLOCK[girth] + 10 })).not.toBe(levels({}));
  });
});

describe("length, and the shape of back and front", () => {
  it("is length where both are off alike, all of it below the bust where the bust depth agrees", () => {
    expect(askedIn(adviceFor({ backWaistLength: 390, frontWaistLength: 412 }))).toEqual([["lengthBelowBust", -20]]);
  });

  it("goes above the bust as far as the bust depth says", () => {
    const measures = { backWaistLength: 380, frontWaistLength: 402, sideNeckToBustPoint: 265 - 18 };
    expect(askedIn(adviceFor(measures))).toEqual([
      ["lengthAboveBust", -18],
      ["lengthBelowBust", -12],
    ]);
  });

  it("leaves the rest of the depth to the place of the bust, and takes none the other way", () => {
    expect(askedIn(adviceFor({ backWaistLength: 390, frontWaistLength: 412, sideNeckToBustPoint: 283 }))).toEqual([
      ["lengthBelowBust", -20],
      ["bustPointLevel", 18],
    ]);
  });

  it("goes below the bust where the depth was not taken, and says that it would tell", () => {
    const work = workOf({ ...only("frontWaistLength"), backWaistLength: 390, frontWaistLength: 412 });
    expect(askedIn(adviceOn(work))).toEqual([["lengthBelowBust", -20]]);
    expect(proposalSentence(firstOf(work), "cm")).toMatch(
      /The bust depth would tell what of it belongs above the bust\./,
    );
  });

  it("is told by the back alone where the front was not taken", () => {
    const work = workOf({ ...only("sideNeckToBustPoint"), backWaistLength: 390 });
    const proposal = firstOf(work);
    expect(askedIn(adviceOn(work))).toEqual([["lengthBelowBust", -20]]);
    expect(proposalTitle(proposal, "cm")).toBe("Shorten the bodice below the bust by 20 mm");
    expect(proposalSentence(proposal, "cm")).toBe(
      "Your back waist length 39.0 cm, our draft’s 41.0 cm; your bust depth agrees. " +
        "The front waist length would tell length from a round or hollow back.",
    );
  });

  it("is parted where both are long and one is longer: the rest is the back's", () => {
    const [length, back] = askedIn(adviceFor({ backWaistLength: 410 + 46, frontWaistLength: 432 + 24 }));
    expect(length).toEqual(["lengthBelowBust", 24]);
    expect(back?.[0]).toBe("roundBack");
    expect(back?.[1]).toBeCloseTo(22, -0.7);
  });

  it("does not count what the bust adjustment lengthens", () => {
    const measures = { ...BLOCK, bustGirth: 905, frontWaistLength: 432 } as const;
    const chart = { ...testWork.pattern.chart, cups: [{ label: "B", difference: 50 }] };
    const work = (frontWaistLength: number): Work => ({
      ...workOf({ ...measures, frontWaistLength, sideNeckToBustPoint: 271 }),
      picks: { baseSize: "12", bustAlteration: 25 },
      pattern: { ...testWork.pattern, chart },
    });
    const drop = planOf(work(432)).ledger.flatMap(({ what }) => (what.kind === "bust" ? [what.drop] : []))[0] ?? 0;
    expect(drop).toBeGreaterThan(8);
    const [front] = adviceOn(work(432 + drop)).agreeing.filter(({ measure }) => measure === "frontWaistLength");
    expect(front?.changed.bust).toBeCloseTo(drop, -0.5);
    expect(Math.abs(front?.off ?? 99)).toBeLessThan(2);
    expect(adviceOn(work(432 + drop)).proposals.filter((one) => keyOf(one) !== "dartsOut")).toEqual([]);
  });
});

describe("where one of back and front agrees by itself", () => {
  // 22 and 6 mm short: nearer to each other than the tape tells apart.
  const work = workOf({ ...BLOCK, backWaistLength: 388, frontWaistLength: 426 });

  it("asks no more than both bear, which leaves what agreed in agreement", () => {
    expect(askedIn(adviceOn(work))).toEqual([["lengthBelowBust", -6]]);
    const after = adviceOn(take(work, firstOf(work)));
    expect(after.proposals).toEqual([]);
    expect(after.agreeing.find(({ measure }) => measure === "frontWaistLength")?.off).toBeCloseTo(0, 0);
  });

  it("never says off alike beside agrees", () => {
    const said = proposalSentence(firstOf(work), "cm");
    expect(said).toContain("your front waist length agrees");
    expect(said).not.toContain("off alike");
  });

  it("goes by the back alone where the front bears nothing of it", () => {
    const [back, ...others] = askedIn(adviceFor({ backWaistLength: 388, frontWaistLength: 431 }));
    expect(others).toEqual([]);
    expect(back?.[0]).toBe("swayBack");
  });
});

describe("the sum of an amount", () => {
  const figure = (text: string): number => Number(text.replace("−", "-").replace(/[^\d.-]/g, ""));
  it.each([
    { backWaistLength: 388, frontWaistLength: 426, sideNeckToBustPoint: 295 },
    { backWaistLength: 380, frontWaistLength: 402, sideNeckToBustPoint: 247 },
    { backWaistLength: 456, frontWaistLength: 456 },
    { frontWaistLength: 456, bustPointWidth: 154 },
    { shoulderLength: 162, acrossBack: 323 },
  ])("adds up line by line: %o", (measures) => {
    const { proposals } = adviceFor(measures);
    expect(proposals.length).toBeGreaterThan(0);
    for (const proposal of proposals) {
      const lines = askedSum(proposal, "cm");
      const total = figure(lines.at(-1)?.figure ?? "");
      expect(total).toBe(proposal.amount);
      const sum = lines.slice(0, -1).reduce((done, line) => done + figure(line.figure), 0);
      expect(Math.abs(sum - total)).toBeLessThanOrEqual(1);
    }
  });
});

describe("what is proposed where something stands", () => {
  const short = workOf({ ...BLOCK, backWaistLength: 390, frontWaistLength: 412 });
  const taken = take(short, firstOf(short));
  const set = (work: Work, measure: MeasureName, value: number): Work =>
    applyCommand(work, { kind: "setMeasure", measure, value });
  const both = (work: Work, back: number, front: number): Work =>
    set(set(work, "backWaistLength", back), "frontWaistLength", front);

  it("is what a work without it asks for, whatever was taken before", () => {
    for (const [back, front] of [
      [408, 430],
      [400, 422],
      [390, 412],
      [380, 402],
      [440, 462],
      [408, 412],
    ] as const) {
      const fresh = askedIn(adviceOn(both(short, back, front))).find(([name]) => name === "lengthBelowBust")?.[1] ?? 0;
      const now = adviceOn(both(taken, back, front)).proposals.find((one) => keyOf(one) === "lengthBelowBust");
      expect([back, front, now?.amount ?? -20]).toEqual([back, front, fresh]);
    }
  });

  it("is to be taken out where nothing is asked for", () => {
    const proposal = firstOf(both(taken, 408, 430));
    expect(proposalTitle(proposal, "cm")).toBe("Take out: shorten the bodice below the bust by 20 mm");
    expect(proposalSentence(proposal, "cm")).toMatch(/Your measures no longer ask for it\.$/);
    expect(take(taken, proposal).alterations).toEqual([]);
  });

  it("is said to change from what to what, and on paper alike", () => {
    const work = both(taken, 380, 402);
    expect(proposalTitle(firstOf(work), "cm")).toBe(
      "Change −20 mm to −30 mm: shorten the bodice below the bust by 30 mm",
    );
    expect(notAltered(adviceOn(work), "cm").join(" ")).toContain("change −20 mm to −30 mm");
  });

  it("holds both parts of a length against the work without either", () => {
    const work = workOf({ ...BLOCK, backWaistLength: 380, frontWaistLength: 402, sideNeckToBustPoint: 247 });
    const all = adviceOn(work).proposals.reduce(take, work);
    expect(all.alterations).toHaveLength(2);
    expect(adviceOn(set(all, "backWaistLength", 375)).proposals).toEqual([]);
  });
});

describe("a bust point that agrees, and by which a dart ends in the wrong place", () => {
  // 12 mm lower: the side dart then ends nearer to it than a check lets pass.
  const work = workOf({ ...BLOCK, sideNeckToBustPoint: 277 });

  it("is no agreement: the end is set", () => {
    const advice = adviceOn(work);
    expect(planOf(work).checks.some(({ name, ok }) => name === "dartEndShortOfBustPoint" && !ok)).toBe(true);
    expect(advice.proposals.map(keyOf)).toEqual(["dartEnds"]);
    expect(advice.agreeing.map(({ measure }) => measure)).not.toContain("sideNeckToBustPoint");
    expect(proposalSentence(firstOf(work), "cm")).not.toContain("agrees");
  });

  it("and holds once it is taken", () => {
    const after = take(work, firstOf(work));
    expect(planOf(after).checks.filter(({ name, ok }) => name === "dartEndShortOfBustPoint" && !ok)).toEqual([]);
    expect(adviceOn(after).proposals).toEqual([]);
    expect(adviceOn(after).agreeing.map(({ measure }) => measure)).toContain("sideNeckToBustPoint");
  });
});

describe("a doubted reading", () => {
  const off = { ...BLOCK, backWaistLength: 388, frontWaistLength: 426, neckBaseGirth: 420 };

  it("of the bust holds back all that goes by the base size, with one line", () => {
    const advice = adviceOn(workOf({ ...off, bustGirth: 1080 }));
    expect([advice.proposals, advice.unanswered, advice.heldBackBy]).toEqual([[], [], ["bustGirth"]]);
    expect(notAltered(advice, "cm")).toContain("Settle the doubt about your bust first.");
  });

  it("of a length holds back what rests on it alone", () => {
    const advice = adviceFor({ backWaistLength: 300, shoulderLength: 144 });
    expect(advice.proposals.map(keyOf)).toEqual(["shoulderWidth"]);
    expect(heldBackSentence(advice)).toBe("Settle the doubt about your back waist length first.");
  });

  it("holds nothing back once she says that it is right", () => {
    const work = workOf({ ...off, bustGirth: 1080 });
    const advice = adviceOn({ ...work, trusted: { bustGirth: 1080 } });
    expect([advice.heldBackBy, heldBackSentence(advice)]).toEqual([[], null]);
    expect(advice.proposals.length).toBeGreaterThan(0);
  });
});

describe("what can be made of a proposal, and what it costs", () => {
  it("is not offered where less than half of it can be made", () => {
    // 60 mm, and 25 mm of a shoulder at the most.
    const advice = adviceFor({ shoulderLength: 122 + 60 });
    expect(advice.proposals).toEqual([]);
    expect(advice.unanswered.map(({ compared, because }) => [compared.measure, because])).toEqual([
      ["shoulderLength", "littleRoom"],
    ]);
  });

  it("says by how much a girth changes", () => {
    // A princess seam is widest at the bust line: raised to a higher bust point, it lets out.
    const work = workOf({ ...BLOCK, sideNeckToBustPoint: 235 }, {}, undefined, "princessArmhole");
    const [bust] = planOf(work).levels;
    const [after] = planOf(take(work, firstOf(work))).levels;
    const gained = Math.round((after?.finished ?? 0) - (bust?.finished ?? 0));
    expect([bust?.level, gained > 5]).toEqual(["bust", true]);
    expect(proposalSentence(firstOf(work), "cm")).toContain(`It makes the bust ${gained} mm larger.`);
    expect(proposalSentence(firstOf(workOf({ ...BLOCK, shoulderLength: 138 })), "cm")).not.toContain("It makes");
  });
});

describe("what the pattern says", () => {
  const work = (lengths: PrintedLengths): Work =>
    workOf({ ...only("sideNeckToBustPoint"), backWaistLength: 410 }, {}, lengths);

  it("takes the place of our draft's figure, of the size before that of all", () => {
    expect(askedIn(adviceOn(work({ backWaistLength: { all: 430 } })))).toEqual([["lengthBelowBust", -20]]);
    expect(askedIn(adviceOn(work({ backWaistLength: { all: 430, bySize: { "12": 410 } } })))).toEqual([]);
    expect(askedIn(adviceOn(work({ backWaistLength: { all: 410, bySize: { "14": 440 } } })))).toEqual([]);
  });

  it("is surer than our draft", () => {
    const doubt = (lengths: PrintedLengths): number =>
      adviceOn(work(lengths)).agreeing.find(({ measure }) => measure === "backWaistLength")?.doubt ?? 0;
    // √((2 · 9)² + 5²) and √((2 · 9)² + 8²)
    expect(doubt({ backWaistLength: { all: 410 } })).toBeCloseTo(18.68, 2);
    expect(doubt({})).toBeCloseTo(19.7, 2);
  });

  it("is told to be its own, or our draft's", () => {
    const said = (one: Work): string => proposalSentence(firstOf(one), "cm");
    expect(said(work({ backWaistLength: { all: 430 } }))).toMatch(
      /^Your back waist length 41\.0 cm, the pattern’s 43\.0 cm;/,
    );
    expect(said(workOf({ ...only(), backWaistLength: 435 }))).toMatch(
      /^Your back waist length 43\.5 cm, our draft’s 41\.0 cm\./,
    );
  });

  it("goes into a sum for every length that charts print", () => {
    for (const measure of PRINTED_LENGTHS) {
      const own = { ...BLOCK, [measure]: BLOCK[measure] };
      const style = measure === "underBustGirth" ? "midriff" : "sideDart";
      const advice = adviceOn(workOf(own, {}, { [measure]: { all: BLOCK[measure] - 6 } }, style));
      const compared = [...advice.agreeing, ...advice.unanswered.map((one) => one.compared)].find(
        (one) => one.measure === measure,
      );
      expect([measure, compared?.from, compared?.figure]).toEqual([measure, "printed", BLOCK[measure] - 6]);
    }
  });
});

describe("a proposal that is taken", () => {
  const short = workOf({ ...only("sideNeckToBustPoint"), backWaistLength: 390 });

  it("is gone, and is counted as the garment's", () => {
    const after = take(short, firstOf(short));
    expect(after.alterations).toEqual([fitted("lengthBelowBust", -20)]);
    const advice = adviceOn(after);
    expect(advice.proposals).toEqual([]);
    expect(advice.agreeing.find(({ measure }) => measure === "backWaistLength")).toMatchObject({
      changed: { own: expect.closeTo(-20, 3) as number },
      off: expect.closeTo(0, 3) as number,
    });
  });

  it("changes the amount of one of its kind that stands, and never makes a second", () => {
    const standing: Work = { ...short, alterations: [{ ...fitted("lengthBelowBust", 10), id: "mine" }] };
    const after = take(standing, firstOf(standing));
    expect(after.alterations).toEqual([{ ...fitted("lengthBelowBust", -20), id: "mine" }]);
  });

  it("says what the measure asks for now once it has changed, and withdraws when it is cleared", () => {
    const taken = take(short, firstOf(short));
    const changed = applyCommand(taken, { kind: "setMeasure", measure: "backWaistLength", value: 385 });
    const proposal = firstOf(changed);
    expect([keyOf(proposal), proposal.stands, proposal.amount]).toEqual(["lengthBelowBust", -20, -25]);
    expect(proposalSentence(proposal, "cm")).toContain("You have −20 mm; your measures now ask for −25 mm.");
    const cleared = applyCommand(changed, { kind: "clearMeasure", measure: "backWaistLength" });
    expect(adviceOn(cleared).proposals).toEqual([]);
    expect(adviceOn(applyCommand(short, { kind: "clearMeasure", measure: "backWaistLength" })).proposals).toEqual([]);
  });

  it("takes an alteration out where nothing of it is left to ask for", () => {
    const taken: Work = { ...workOf(only("backWaistLength")), alterations: [fitted("lengthBelowBust", -20)] };
    const proposal = firstOf(taken);
    expect(proposal).toMatchObject({ stands: -20, amount: 0 });
    expect(take(taken, proposal).alterations).toEqual([]);
  });

  it("is made less before its opposite is asked for: a back is round or hollow, never both", () => {
    const ofBack = (backWaistLength: number): Work => workOf({ ...only("frontWaistLength"), backWaistLength });
    for (const [by, own, opposite] of [
      [20, "roundBack", "swayBack"],
      [-20, "swayBack", "roundBack"],
    ] as const) {
      const { alterations } = take(ofBack(410 + by), firstOf(ofBack(410 + by)));
      expect(alterations).toMatchObject([{ fit: own }]);
      // Half as much is within what tape and draft are good to: nothing of it is asked for any more.
      const half: Work = { ...ofBack(410 + by / 2), alterations };
      expect(askedIn(adviceOn(half)).map(([name]) => name)).toEqual([own]);
      expect(take(half, firstOf(half)).alterations).toEqual([]);
      const none: Work = { ...ofBack(410), alterations };
      expect(firstOf(none)).toMatchObject({ amount: 0, missing: 0 });
      expect(take(none, firstOf(none)).alterations).toEqual([]);
      // Off the other way: first none of the one, then the other.
      const other: Work = { ...ofBack(410 - by), alterations };
      expect(firstOf(other)).toMatchObject({ amount: 0, missing: 0 });
      const without = take(other, firstOf(other));
      expect(without.alterations).toEqual([]);
      expect(askedIn(adviceOn(without)).map(([name]) => name)).toEqual([opposite]);
    }
  });

  it("counts what she altered on one half by half", () => {
    const work: Work = {
      ...workOf(only("shoulderLength")),
      alterations: [{ ...fitted("shoulderWidth", 10), id: "a", half: "left" }],
    };
    expect(adviceOn(work).agreeing.find(({ measure }) => measure === "shoulderLength")?.changed.own).toBeCloseTo(5, 2);
  });

  it("is no more than can be made, and says what is missing", () => {
    const work = workOf({ ...only(), shoulderLength: 122 + 40 });
    expect(firstOf(work)).toMatchObject({ amount: 25, missing: 15 });
    expect(proposalSentence(firstOf(work), "cm")).toMatch(/15 mm more is asked for than can be made here\.$/);
  });

  it("is made where it stands among the others, though darts redrawn after it give more room", () => {
    // Of the first demo the front is ready for more than can be made of it before its darts are redrawn.
    const demo = invariant(
      demoWorks().find(({ alterations }) => alterations.some(({ kind }) => kind === "dartEnd")),
      "demo",
    );
    const depth = invariant(
      compareMeasures(demo, planOf(demo)).compared.find(({ measure }) => measure === "sideNeckToBustPoint"),
      "depth",
    );
    for (const off of [-14, -16, -20, -28]) {
      const work: Work = {
        ...demo,
        tapes: tapesOf({ ...measuresOf(demo.tapes), sideNeckToBustPoint: depth.garment + off }),
      };
      for (const proposal of adviceOn(work).proposals) {
        const { ledger } = planOf(take(work, proposal));
        expect(ledger.filter(({ outcome }) => !outcome.ok)).toEqual([]);
      }
    }
  });

  it("is rounded to the marks of the wearer's tape", () => {
    const work = workOf({ ...only("sideNeckToBustPoint"), backWaistLength: 389.3 }, { unit: "in" });
    // 20.7 mm are 13.04 sixteenths.
    expect(firstOf(work).amount).toBeCloseTo((-13 * 25.4) / 16, 3);
    expect(firstOf(workOf({ ...only("sideNeckToBustPoint"), backWaistLength: 389.3 })).amount).toBe(-21);
  });
});

describe("what a toile showed", () => {
  // Of this body the tape asks for no sway back: 24 mm of it leave the back waist length off.
  const sewn = workOf(BLOCK, { alterations: [fitted("swayBack", 24)] });
  const run = (work: Work, ...commands: readonly Command[]): Work => commands.reduce(applyCommand, work);
  const begun = run(sewn, { kind: "beginTrial", id: "t1", day: "2026-11-20" });
  const answer = { causes: ["swayBack"], because: ["l1"], alterations: ["fit-swayBack"] };
  const answered = run(begun, { kind: "takeTrialAnswer", trial: "t1", answer, alterations: [] });
  const kept = run(begun, { kind: "setVerdict", trial: "t1", verdict: "keep" });

  it.each([
    ["an open trial has taken it", answered],
    ["it was sewn and is kept", kept],
    ["it came with a base", { ...sewn, begunFrom: { name: "Blue dress" } }],
  ])("outweighs the tape where %s, and the difference is told", (_why, work) => {
    const advice = adviceOn(work);
    expect(advice.proposals).toEqual([]);
    expect(advice.unanswered.map(({ compared, because }) => [compared.measure, because])).toEqual([
      ["backWaistLength", "toile"],
    ]);
    expect(advice.agreeing.map(({ measure }) => measure)).not.toContain("backWaistLength");
  });

  it("is nothing where a toile was only sewn, is to be tried again, or has no such alteration", () => {
    const again = run(begun, { kind: "setVerdict", trial: "t1", verdict: "again" });
    const without = run(workOf(BLOCK), { kind: "beginTrial", id: "t1", day: "2026-11-20" });
    const later = run(
      without,
      { kind: "setVerdict", trial: "t1", verdict: "keep" },
      { kind: "putAlteration", alteration: fitted("swayBack", 24) },
    );
    for (const work of [sewn, begun, again, later]) expect(askedIn(adviceOn(work))).toEqual([["swayBack", 0]]);
  });

  it("goes by the body it was sewn to: measured anew, the tape speaks again", () => {
    const longer = run(kept, { kind: "setMeasure", measure: "backWaistLength", value: 412 });
    expect(askedIn(adviceOn(longer))).toEqual([["swayBack", 0]]);
    const waist = run(kept, { kind: "setMeasure", measure: "waistGirth", value: 704 });
    expect(askedIn(adviceOn(waist))).toEqual([]);
  });
});

describe("the bust point", () => {
  it("counts by each of its two measures alone, the other as the pattern has it", () => {
    const { own: wide, printed } = planOf(workOf({ ...only(), bustPointWidth: 154 })).bustPoint;
    expect(wide).toEqual({ x: 77, y: printed.y });
    const { own: low } = planOf(workOf({ ...only(), sideNeckToBustPoint: 286 })).bustPoint;
    // From (69, −40), 286 mm away at x 95.
    expect(low?.x).toBe(printed.x);
    expect(low?.y).toBeCloseTo(-40 + Math.sqrt(286 ** 2 - 26 ** 2), 6);
    expect(planOf(workOf(only())).bustPoint.own).toBeNull();
  });

  it("is brought nearer by the ends of both bust darts, in one step", () => {
    const work = workOf({ ...only(), bustPointWidth: 190 - 36 });
    const before = planOf(work).left.darts;
    const after = take(work, firstOf(work));
    expect(after.alterations.map(({ kind }) => kind)).toEqual(["dartEnd", "dartEnd"]);
    const moved = planOf(after).left.darts.map(({ drawn }, at) => drawn.apex.x - (before[at]?.drawn.apex.x ?? 0));
    // Both ends of the front come 18 mm nearer the centre; the back's dart stays. The side dart leans a little.
    expect(moved.filter((by) => Math.abs(by + 18) < 1)).toHaveLength(2);
    expect(moved.filter((by) => by === 0).length).toBeGreaterThan(0);
    expect(adviceOn(after).proposals).toEqual([]);
  });

  it("counts the redraws that she made herself", () => {
    const end = { kind: "dartEnd", id: "a", dart: { piece: "front", dart: "waistDart" }, hold: "mouth" } as const;
    const work: Work = {
      ...workOf({ ...only(), bustPointWidth: 190 - 36 }),
      alterations: [{ ...end, shorten: 7, across: 4, giveBack: {} }],
    };
    const proposal = firstOf(work);
    expect(proposal).toMatchObject({ stands: -4, amount: -18 });
    expect(take(work, proposal).alterations.find(({ id }) => id === "a")).toMatchObject({ shorten: 7, across: 18 });
    // Ends that lie well, within what a tape is good to, are not asked for the rest.
    const nearly: Work = { ...work, alterations: [{ ...end, shorten: 7, across: 10, giveBack: {} }] };
    expect(adviceOn(nearly).proposals).toEqual([]);
  });

  it("is given in words, and what was not taken beside it", () => {
    const work = workOf({ ...only(), bustPointWidth: 154, sideNeckToBustPoint: 286 });
    const said = notAltered(adviceOn(work), "cm");
    expect(said.map((one) => one.split(".")[0])).toEqual([
      "Not taken: lower the bust shaping by 21 mm",
      "Not taken: redraw the ends of the bust darts 18 mm nearer the centre",
    ]);
  });
});

describe("straps and bands", () => {
  const { underBustGirth: _asksByItself, ...others } = BLOCK;
  const midriff = (measures: Measures): Advice =>
    adviceOn(workOf({ ...others, ...measures }, {}, undefined, "midriff"));

  it("takes length at the band", () => {
    expect(askedIn(midriff({ backWaistLength: 390, frontWaistLength: 412 }))).toEqual([["bandDepth", -20]]);
  });

  it("takes the band in at the side seams to her under-bust, and the girth of the band is then hers and its ease", () => {
    const work = workOf({ ...BLOCK }, {}, undefined, "midriff");
    const proposal = firstOf(work);
    expect(keyOf(proposal)).toBe("sideSeamUnderBust");
    expect(proposal.missing).toBe(0);
    const after = take(work, proposal);
    expect(adviceOn(after).proposals).toEqual([]);
    // The ease of the waist, which the band runs down to, is 40; amounts are whole millimetres.
    const band = garmentLength("underBustGirth", setOf(planOf(after).left.pieces)) ?? 0;
    expect(Math.abs(band - (760 + 40))).toBeLessThanOrEqual(0.5);
    expect(proposalTitle(proposal, "cm")).toMatch(/^Take the side seams in at the under-bust, \d+ mm all round$/);
    expect(proposalSentence(proposal, "cm")).toMatch(/^Your under-bust 76\.0 cm, our draft’s \d+\.\d cm\.$/);
  });

  it("takes in no more than the side seam stays smooth with, says what is missing, and does not ask for it again", () => {
    // Out of keeping with her other girths, and said to be right.
    const work = {
      ...workOf({ ...BLOCK, underBustGirth: 640 }, {}, undefined, "midriff"),
      trusted: { underBustGirth: 640 },
    };
    const proposal = firstOf(work);
    expect(proposal.missing).toBeLessThan(-10);
    const advice = adviceOn(take(work, proposal));
    expect(advice.proposals).toEqual([]);
    expect(advice.unanswered.map(({ compared, because }) => [compared.measure, because])).toEqual([
      ["underBustGirth", "noRoom"],
    ]);
    expect(proposalSentence(proposal, "cm")).toContain("more is asked for than can be made here.");
  });

  it("asks anew, for what can be made, where the amount that stands is refused", () => {
    const work: Work = {
      ...workOf({ ...BLOCK }, {}, undefined, "midriff"),
      alterations: [fitted("sideSeamUnderBust", -400)],
    };
    const proposal = firstOf(work);
    expect(proposal.amount).toBe(firstOf(workOf({ ...BLOCK }, {}, undefined, "midriff")).amount);
    expect(take(work, proposal).alterations).toEqual([fitted("sideSeamUnderBust", proposal.amount)]);
  });

  it("lets the bust down by longer straps, which is part of the front's length", () => {
    expect(askedIn(midriff({ frontWaistLength: 432 + 22, sideNeckToBustPoint: 265 + 22 }))).toEqual([
      ["strapLength", 22],
    ]);
    expect(
      midriff({ sideNeckToBustPoint: 243, frontWaistLength: 410 }).unanswered.map(({ because }) => because),
    ).toContain("straps");
  });
});
