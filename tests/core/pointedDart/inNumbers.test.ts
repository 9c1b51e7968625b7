/**
 * The pointed dart's own sums on one planted dart: 40 mm wide and 160 long on its axis, seen 20 past the bust point and 15 too far
 * to the side. Costs by the weights as they are written (our own choice, no source).
 */
import { describe, expect, it } from "vitest";
import type { DartRedraw, GiveBack, Hold } from "../../../src/core/decisions/alteration";
import { moveMouthEnd } from "../../../src/core/dart/mouthEnd";
import { trueSeamAtDart } from "../../../src/core/dart/trueSeam";
import { draftBasque } from "../../../src/core/draft/basque";
import { draftBackBlock } from "../../../src/core/draft/backBlock";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { piecePoint } from "../../../src/core/geometry/point";
import { pointOf, type Piece } from "../../../src/core/pattern/piece";
import type { PieceSet } from "../../../src/core/pattern/pieceSet";
import {
  answerPointedDart,
  answersForCup,
  seenAsSewn,
  type DartAnswer,
  type PointedDartContext,
  type SeenAtDart,
} from "../../../src/core/pointedDart/pointedDart";
import { angleForFullness } from "../../../src/core/pointedDart/pointedDartAnswer";
import { sideDartFront } from "../../../src/core/style/sideDartStyle";
import { seamByBezierJs } from "../../support/independent";
import { ref } from "../../support/works";

const measures = draftMeasuresFor(
  { label: "x", bust: 880, waist: 700, hip: 940 },
  { sizes: [], draftedDifference: 50, cups: [] },
  { bust: 80, waist: 40, hip: 50 },
);
function planted(intake: number, axis: number): Piece {
  const made = sideDartFront(draftFrontBlock(measures), 50);
  if (!made.ok) throw new Error(made.failure.code);
  const front = made.value;
  const [a, b] = [pointOf(front, "waistDartInner"), pointOf(front, "waistDartOuter")];
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const inner = moveMouthEnd(front, "waistDartInner", piecePoint(middle.x - intake / 2, middle.y));
  const outer = moveMouthEnd(inner, "waistDartOuter", piecePoint(middle.x + intake / 2, middle.y));
  const end = { at: piecePoint(middle.x, middle.y - axis), level: "bust" as const };
  return trueSeamAtDart({ ...outer, points: { ...outer.points, waistDartApex: end } }, "waistDart");
}
const front = planted(40, 160);
const bodice: PieceSet = { front, back: draftBackBlock(measures) };
const waist = ref("front", "waistDart");
const context: PointedDartContext = {
  bustPoint: pointOf(front, "bustPoint"),
  wantedFullness: 20,
  radius: 80,
  existing: [],
};
const seen: SeenAtDart = { pastBustPoint: 20, tooFarToSide: 15, pointed: "pointed" };

const answered = (pieces: PieceSet, more: Partial<PointedDartContext> = {}, what = seen) => {
  const done = answerPointedDart(pieces, waist, what, { ...context, ...more });
  if (!done.ok) throw new Error(done.failure.code);
  return done.value;
};
const refused = (pieces: PieceSet, dart: typeof waist, what = seen, more: Partial<PointedDartContext> = {}) => {
  const done = answerPointedDart(pieces, dart, what, { ...context, ...more });
  if (done.ok) throw new Error("answered");
  return done.failure;
};
const found = (answers: readonly DartAnswer[], key: DartAnswer["key"]): DartAnswer => {
  const one = answers.find((answer) => answer.key === key);
  if (one === undefined) throw new Error(key);
  return one;
};
const end = pointOf(front, "waistDartApex");

describe("the answers to it", () => {
  const value = answered(bodice);

  it("say where it should end: 20 short of the bust point seen, so 40 shorter and 15 across", () => {
    expect(value).toMatchObject({ wantedFullness: 20, shorten: 40, across: 15, stop: 20 });
    // Down towards the mouth by 20, to the centre by 15.
    expect(value.bustPointSeen).toEqual({ x: expect.closeTo(end.x - 15, 6), y: expect.closeTo(end.y + 20, 6) });
  });

  it("cost what they miss of fullness four times, five a seam, the farthest that one moves, and half of the bust lost", () => {
    const gives = ({ given }: DartAnswer, at: number): number => given[at]?.amount ?? NaN;
    const missed = ({ fullnessOff }: DartAnswer): number => 4 * Math.abs(fullnessOff);
    const side = found(value.answers, "sideSeam");
    expect(side.given.map(({ place }) => place)).toEqual(["sideSeam"]);
    expect(side.cost).toBeCloseTo(missed(side) + 5 + Math.abs(gives(side, 0)), 9);
    const shared = found(value.answers, "sharedWithOther");
    expect(shared.given.map(({ place }) => place)).toEqual(["sideSeam", "otherDart"]);
    // The other dart's two legs count as two seams.
    expect(shared.cost).toBeCloseTo(missed(shared) + 15 + Math.max(gives(shared, 0), gives(shared, 1)), 9);
    const off = found(value.answers, "offCentre");
    // The side, and the centre front that is no fold any more; 15 mm off it, and of the bust 30.
    expect(off.given.map(({ place }) => place)).toEqual(["sideSeam"]);
    expect(off.notes.map(({ code }) => code)).toContain("centreNowSeam");
    expect(off.cost).toBeCloseTo(missed(off) + 10 + 15 + 15, 6);
    expect(off.bustLoses).toBeCloseTo(30, 6);
    for (const { cost } of [side, shared]) expect(cost).toBeLessThan(off.cost);
    const costs = value.answers.map(({ cost }) => cost);
    expect(costs).toEqual(costs.toSorted((a, b) => a - b));
  });

  it("add up: what was, what the mouth sets free, what is given, what drawing smooth takes, is what is sewn", () => {
    for (const { sum, freed, given, figures, fullnessOff } of value.answers) {
      const last = sum.at(-1);
      expect([sum[0]?.kind, sum[1]?.kind, sum.at(-2)?.kind, last?.kind]).toEqual([
        "before",
        "mouth",
        "smoothed",
        "after",
      ]);
      expect(sum.slice(0, -1).reduce((all, { amount }) => all + amount, 0)).toBeCloseTo(last?.amount ?? NaN, 9);
      expect(Math.abs((last?.amount ?? NaN) - (sum[0]?.amount ?? NaN))).toBeLessThan(0.05);
      expect(sum.filter(({ kind }) => kind === "given").map(({ amount }) => -amount)).toEqual(
        given.map(({ amount }) => amount),
      );
      const offCentre = sum.find(({ kind }) => kind === "offCentre")?.amount ?? 0;
      expect(freed).toBeCloseTo((sum[1]?.amount ?? NaN) + offCentre, 9);
      expect(sum[1]).toMatchObject({ from: expect.closeTo(40, 6), to: expect.closeTo(figures.after.intake, 6) });
      expect(fullnessOff).toBeCloseTo(figures.after.fullness - 20, 9);
      expect(figures.wantedFullness).toBe(20);
      // From the bust point seen: 20 past it and 15 beside, then 20 short and on it.
      expect(figures.before.end).toEqual({ along: expect.closeTo(-20, 6), across: expect.closeTo(15, 6) });
      expect(figures.after.end).toEqual({ along: expect.closeTo(20, 0), across: expect.closeTo(0, 0) });
    }
  });

  it("stand beside shortening alone: 40 with the mouth held, nothing given back", () => {
    expect(value.naive).toMatchObject({
      shorten: 40,
      alterations: [
        {
          kind: "dartEnd",
          id: "dartEnd-front-waistDart",
          dart: waist,
          shorten: 40,
          across: 0,
          hold: "mouth",
          giveBack: {},
        },
      ],
      figures: { before: { intake: expect.closeTo(40, 6) }, after: { intake: expect.closeTo(40, 1) } },
    });
  });

  it("are shared at the centre where there is no other dart, and come off the centre front to 20 mm", () => {
    expect(answered({ front }).answers.map(({ key }) => key)).toEqual(["sideSeam", "sharedAtCentre", "offCentre"]);
    const keys = (tooFarToSide: number): readonly string[] =>
      answered(bodice, {}, { ...seen, tooFarToSide }).answers.map(({ key }) => key);
    expect(keys(19.5)).toContain("offCentre");
    expect(keys(20.5)).not.toContain("offCentre");
    expect(keys(20.5)).toContain("sharedAtCentre");
    expect(keys(-5)).not.toContain("offCentre");
    expect(keys(0.4)).not.toContain("offCentre");
  });

  it("move a basque's dart only where there is one: 15 nearer the centre, and 8 back as the mouth narrows from 40 to 24", () => {
    for (const { basqueDartOff } of value.answers) expect(basqueDartOff).toBe(0);
    const basque = draftBasque(measures, 190, { side: "front", dartLess: 6 });
    const off = found(answered({ ...bodice, frontBasque: basque }).answers, "sideSeam").basqueDartOff;
    expect(Math.abs(off - 7)).toBeLessThan(0.7);
    const plain: Piece = { ...basque, darts: [] };
    expect(found(answered({ ...bodice, frontBasque: plain }).answers, "sideSeam").basqueDartOff).toBe(0);
    const behind = draftBasque(measures, 180, { side: "back", dartLess: 6 });
    expect(found(answered({ ...bodice, backBasque: behind }).answers, "sideSeam").basqueDartOff).toBe(0);
  });

  it("of a side dart give back at the waist's end, at the underarm or at both", () => {
    const side = ref("front", "sideDart");
    const done = answerPointedDart(bodice, side, { pastBustPoint: -20, tooFarToSide: 4, pointed: "right" }, context);
    if (!done.ok) throw new Error(done.failure.code);
    const places = done.value.answers.map(({ key, given }) => [key, given.map(({ place }) => place)]);
    expect(new Map(places.map(([key, at]) => [String(key), at]))).toEqual(
      new Map([
        ["sideSeam", ["waistEnd"]],
        ["sharedAtEnds", ["waistEnd", "underarm"]],
        ["underarm", ["underarm"]],
      ]),
    );
    // 30 short (common practice: 20 to 40, at a cup difference of 50).
    expect(done.value).toMatchObject({ stop: 30, shorten: 10, across: 4 });
    // A lower underarm cuts the armhole too: two seams, and both ends three.
    const missed = ({ fullnessOff }: DartAnswer): number => 4 * Math.abs(fullnessOff);
    const most = ({ given }: DartAnswer): number => Math.max(...given.map(({ amount }) => Math.abs(amount)));
    for (const [key, seams] of [
      ["sideSeam", 1],
      ["sharedAtEnds", 3],
      ["underarm", 2],
    ] as const) {
      const answer = found(done.value.answers, key);
      expect(answer.cost).toBeCloseTo(missed(answer) + 5 * seams + most(answer), 9);
    }
  });
});

describe("for the cup", () => {
  it("a dart is made as full as it asks and ended 20 short of the plan's bust point", () => {
    const { x, y } = end;
    const at = { ...context, bustPoint: piecePoint(x - 5, y + 10) };
    const [best] = answersForCup(bodice, waist, at);
    expect(best?.figures.after.fullness).toBeCloseTo(20, 0);
    expect(best?.figures.after.end?.along).toBeCloseTo(20, 0);
    expect(best?.figures.before.end).toEqual({ along: expect.closeTo(-10, 6), across: expect.closeTo(5, 6) });
  });

  it("no dart that serves no bust, is gathered or opens on the shoulder", () => {
    expect(answersForCup(bodice, ref("back", "waistDart"), context)).toEqual([]);
    const gathered = { ...front, darts: front.darts.map((dart) => ({ ...dart, gathered: true }) as const) };
    expect(answersForCup({ ...bodice, front: gathered }, waist, context)).toEqual([]);
    expect(refused({ ...bodice, front: gathered }, waist)).toEqual({ code: "pointedDart/not-this-dart", dart: waist });
    const block = draftFrontBlock(measures);
    const shoulder = ref("front", "shoulderDart");
    expect(refused({ front: block }, shoulder)).toEqual({ code: "pointedDart/not-this-dart", dart: shoulder });
    expect(refused({}, waist)).toEqual({ code: "pointedDart/no-such-dart", dart: waist });
  });
});

describe("what is too much", () => {
  it("is told with the most of it that works, to a thousandth of what was asked", () => {
    const failure = refused(bodice, waist, { pastBustPoint: 300, tooFarToSide: 0, pointed: "right" });
    if (failure.code !== "pointedDart/too-much") throw new Error(failure.code);
    expect(failure).toMatchObject({ what: "length", asked: 320 });
    // At the least 25 mm of dart are left, of 160.
    expect(failure.most).toBeGreaterThan(60);
    expect(failure.most).toBeLessThanOrEqual(135.1);
    const works = (shorten: number): boolean =>
      answerPointedDart(bodice, waist, { pastBustPoint: shorten - 20, tooFarToSide: 0, pointed: "right" }, context).ok;
    expect([works(failure.most), works(failure.most + (2 * 320) / 1024)]).toEqual([true, false]);
  });

  it("of fullness, the fullest that a dart gives: more than was sewn, and a little more is too much", () => {
    const failure = refused(
      bodice,
      waist,
      { ...seen, pastBustPoint: 0, tooFarToSide: 0, pointed: "flat" },
      { wantedFullness: 70 },
    );
    if (failure.code !== "pointedDart/too-much") throw new Error(failure.code);
    expect(failure).toMatchObject({ what: "fullness", asked: 70 });
    expect(failure.most).toBeGreaterThan(24.3);
    const works = (wantedFullness: number): boolean =>
      answerPointedDart(
        bodice,
        waist,
        { pastBustPoint: 0, tooFarToSide: 0, pointed: "flat" },
        { ...context, wantedFullness },
      ).ok;
    expect([works(failure.most), works(failure.most + 0.2)]).toEqual([true, false]);
  });

  it("of all together, the share", () => {
    const failure = refused(bodice, waist, { pastBustPoint: 500, tooFarToSide: 400, pointed: "right" });
    if (failure.code !== "pointedDart/together-too-much") throw new Error(failure.code);
    expect(failure.share).toBeGreaterThan(0);
    expect(failure.share).toBeLessThan(135 / 520);
  });
});

describe("the alterations of an answer", () => {
  const altered = (pieces: PieceSet, more: Partial<PointedDartContext> = {}, what = seen) =>
    Object.fromEntries(answered(pieces, more, what).answers.map(({ key, alterations }) => [key, alterations] as const));
  const place = (by: number, giveBack: GiveBack, how: "redraw" | "offCentreSeam" = "redraw") => ({
    kind: "dartPlace",
    id: "dartPlace-front-waistDart",
    dart: waist,
    by,
    how,
    giveBack,
  });
  const mouth = (each: number, giveBack: GiveBack) => ({
    kind: "dartMouth",
    id: "dartMouth-front-waistDart",
    dart: waist,
    inner: each,
    outer: each,
    giveBack,
  });
  const endOf = (shorten: number, giveBack: GiveBack, hold: Hold = "fullness") => ({
    kind: "dartEnd",
    id: "dartEnd-front-waistDart",
    dart: waist,
    shorten,
    across: 0,
    hold,
    giveBack,
  });

  it("are its place, its mouth and its end, each with where it gives back", () => {
    // 20 mm of fullness are 360° · (1 − √(1 − (20/80)²)) = 11.431°: 32.03 wide at 160, so 3.98 less at each side.
    const all = (how: "redraw" | "offCentreSeam", giveBack: GiveBack) => [
      place(15, giveBack, how),
      mouth(-4, giveBack),
      endOf(40, giveBack),
    ];
    expect(altered(bodice)).toEqual({
      sideSeam: all("redraw", { sideSeam: 1 }),
      sharedWithOther: all("redraw", { sideSeam: 0.5, otherDart: 0.5 }),
      offCentre: all("offCentreSeam", { sideSeam: 1 }),
    });
    const further = altered(bodice, {}, { ...seen, tooFarToSide: -14 });
    expect(further.sharedAtCentre?.[0]).toEqual(place(-14, { sideSeam: 0.5, centreSeam: 0.5 }));
    expect(altered({ front }).sharedAtCentre?.[0]).toEqual(place(15, { sideSeam: 0.5, centreSeam: 0.5 }));
  });

  it("are no more than are needed: the place alone, the mouth alone, the end alone", () => {
    const one = (pastBustPoint: number, tooFarToSide: number, pointed: SeenAtDart["pointed"]) =>
      altered(bodice, {}, { pastBustPoint, tooFarToSide, pointed }).sideSeam;
    // A little way along the seam, where its bend does not show.
    expect(one(-20, 4, "right")).toEqual([place(4, { sideSeam: 1 })]);
    expect(one(-20, 0, "pointed")).toEqual([mouth(-4, { sideSeam: 1 })]);
    expect(one(0, 0, "right")).toEqual([endOf(20, { sideSeam: 1 })]);
  });

  it("of a side dart give back at the lower end, at the upper or at both by halves", () => {
    const side = ref("front", "sideDart");
    const done = answerPointedDart(bodice, side, { pastBustPoint: -20, tooFarToSide: 0, pointed: "right" }, context);
    if (!done.ok) throw new Error(done.failure.code);
    const moved = { ...endOf(10, {}), id: "dartEnd-front-sideDart", dart: side };
    expect(Object.fromEntries(done.value.answers.map(({ key, alterations }) => [key, alterations]))).toEqual({
      sideSeam: [{ ...moved, giveBack: { waistEnd: 1 } }],
      sharedAtEnds: [{ ...moved, giveBack: { waistEnd: 0.5, underarm: 0.5 } }],
      underarm: [{ ...moved, giveBack: { underarm: 1 } }],
    });
  });

  it("of a dart that is to become far shorter hold its fullness: a seventh of its length, a seventh of its width", () => {
    // Legs and mouth alike come to 25.5/160; the dart was 40 wide.
    const value = answered(bodice, {}, { pastBustPoint: 114.5, tooFarToSide: 0, pointed: "right" });
    const side = found(value.answers, "sideSeam");
    expect(side.alterations).toEqual([endOf(134.5, { sideSeam: 1 })]);
    expect(side.figures.after.intake).toBeCloseTo((40 * 25.5) / 160, 1);
  });

  it("of a short one that would be too narrow meanwhile set the mouth that it will have, and hold that", () => {
    // 12 mm of fullness are 4.073°: at 26 long 1.85 wide, which nobody can sew; at 120 long 8.53, that is 1.27 more at each side than 6.
    const value = answered(
      { ...bodice, front: planted(6, 26) },
      { wantedFullness: 12 },
      { pastBustPoint: -114, tooFarToSide: 0, pointed: "pointed" },
    );
    const side = found(value.answers, "sideSeam");
    expect(side.alterations).toEqual([mouth(1.3, { sideSeam: 1 }), endOf(-94, { sideSeam: 1 }, "mouth")]);
    expect(side.figures.after.intake).toBeCloseTo(8.6, 1);
    // It takes 2.6 mm of seam, let out at the side.
    expect(side.freed).toBeCloseTo(-2.6, 1);
    expect(Math.abs((side.given[0]?.amount ?? NaN) + 2.6)).toBeLessThan(0.2);
  });

  it("bring it to the angle wanted to a tenth at the end of a leg, where a wide mouth runs round the bent seam, too", () => {
    // Half of the radius: 360° · (1 − √(3/4)) = 48.231°.
    const value = answered(bodice, { wantedFullness: 40 }, { pastBustPoint: 0, tooFarToSide: 0, pointed: "flat" });
    const { after } = found(value.answers, "sideSeam").figures;
    expect(Math.abs(after.angle - (48.231 * Math.PI) / 180) * after.legInner).toBeLessThan(0.1);
    expect(after.end).toEqual({ along: expect.closeTo(20, 1), across: expect.closeTo(0, 1) });
  });
});

describe("the seam's sum", () => {
  it("has the centre front only where something comes off it, and a term for each place that gives", () => {
    const terms = ({ sum }: DartAnswer) => sum.map((term) => ("place" in term ? term.place : term.kind));
    const { answers } = answered(bodice);
    expect(terms(found(answers, "sideSeam"))).toEqual(["before", "mouth", "sideSeam", "smoothed", "after"]);
    expect(terms(found(answers, "sharedWithOther"))).toEqual([
      "before",
      "mouth",
      "sideSeam",
      "otherDart",
      "smoothed",
      "after",
    ]);
    expect(terms(found(answers, "offCentre"))).toEqual([
      "before",
      "mouth",
      "offCentre",
      "sideSeam",
      "smoothed",
      "after",
    ]);
    expect(found(answers, "offCentre").sum[2]).toEqual({ kind: "offCentre", amount: expect.closeTo(-15, 6) });
  });

  it("begins and ends with both waists, as bezier-js measures them", () => {
    const before = seamByBezierJs(front, "waist") + seamByBezierJs(draftBackBlock(measures), "waist");
    for (const { sum } of answered(bodice).answers) expect(sum[0]?.amount).toBeCloseTo(before, 3);
    // No back: the front's alone.
    const [alone] = answered({ front }).answers;
    expect(alone?.sum[0]?.amount).toBeCloseTo(seamByBezierJs(front, "waist"), 3);
  });
});

describe("answers that are nearly one", () => {
  const keys = (pastBustPoint: number, tooFarToSide = 0) =>
    answered(bodice, {}, { pastBustPoint, tooFarToSide, pointed: "right" }).answers.map(({ key }) => key);

  it("where no place gives more than half a millimetre, the usual one stands for them", () => {
    // Shortened by 1 of 160 the mouth of 40 sets a quarter free, by 1.6 four tenths.
    expect(keys(-19)).toEqual(["sideSeam"]);
    expect(keys(-18.4)).toEqual(["sideSeam"]);
    // By 3, three quarters: more at the side alone, less where it is shared; those two stand for each other.
    expect(keys(-17)).toEqual(["sideSeam", "sharedWithOther"]);
    // By 4.8, 1.2: shared, each gives more than half.
    expect(new Set(keys(-15.2))).toEqual(new Set(["sideSeam", "sharedWithOther", "sharedAtCentre"]));
  });

  it("off the centre front is another answer even so: 16 of the 16 set free come off there", () => {
    const { answers } = answered(bodice, {}, { ...seen, tooFarToSide: 16 });
    expect(answers.map(({ key }) => key)).toEqual(["sideSeam", "sharedWithOther", "offCentre"]);
    expect(Math.abs(found(answers, "offCentre").given[0]?.amount ?? NaN)).toBeLessThan(0.5);
    // Nothing to share anywhere, and 10 to come off.
    expect(new Set(keys(-20, 10))).toEqual(new Set(["sideSeam", "offCentre"]));
  });
});

describe("shortening alone", () => {
  const naive = (pastBustPoint: number) =>
    answered(bodice, {}, { pastBustPoint, tooFarToSide: 15, pointed: "right" }).naive;

  it("is told from half a millimetre on, shorter or longer", () => {
    expect([naive(-19.6), naive(-20), naive(-20.4)]).toEqual([null, null, null]);
    expect([naive(-19.5)?.shorten, naive(-20.5)?.shorten]).toEqual([0.5, -0.5]);
  });

  it("ends at the stop, as far to the side as before: 40 over 120 is 18.925°, 25.60 mm of fullness", () => {
    const { before, after } = naive(20)?.figures ?? {};
    expect(before).toMatchObject({ intake: expect.closeTo(40, 6), legInner: expect.closeTo(Math.hypot(160, 20), 6) });
    expect(before?.end).toEqual({ along: expect.closeTo(-20, 6), across: expect.closeTo(15, 6) });
    expect(after?.end).toEqual({ along: expect.closeTo(20, 1), across: expect.closeTo(15, 1) });
    expect(((after?.angle ?? NaN) * 180) / Math.PI).toBeCloseTo(18.925, 1);
    expect(after?.fullness).toBeCloseTo(25.6, 1);
  });
});

it("what the plan sees of it: the bust point 5 to the centre and 10 down from its end is 10 past and 5 too far to the side", () => {
  const bustPoint = piecePoint(end.x - 5, end.y + 10);
  expect(seenAsSewn(bodice, waist, { ...context, bustPoint })).toEqual({
    pastBustPoint: expect.closeTo(10, 9),
    tooFarToSide: expect.closeTo(5, 9),
    pointed: "right",
  });
});

describe("redrawn before", () => {
  const own = (how: "redraw" | "offCentreSeam", by: number): DartRedraw => ({
    kind: "dartPlace",
    id: "dartPlace-front-waistDart",
    dart: waist,
    by,
    how,
    giveBack: { sideSeam: 1 },
  });
  const what: SeenAtDart = { pastBustPoint: 0, tooFarToSide: 4, pointed: "right" };

  it("what is seen is seen from the dart as sewn, and reckoned from the dart before it", () => {
    for (const existing of [own("redraw", 8), own("offCentreSeam", 8)]) {
      const value = answered(bodice, { existing: [existing] }, what);
      const side = found(value.answers, "sideSeam");
      expect(side.figures.before.end).toEqual({ along: expect.closeTo(0, 6), across: expect.closeTo(4, 6) });
      expect(side.figures.after.end).toEqual({ along: expect.closeTo(20, 0), across: expect.closeTo(0, 0) });
      // 8 and 4 to the centre; off the seam, the dart stayed where it was and the centre came to it: from the fold it is as far.
      expect(side.alterations[0]).toEqual(own("redraw", 12));
    }
  });

  it("what could not be made was not sewn", () => {
    const value = answered(bodice, { existing: [own("redraw", 400), own("redraw", 8)] }, what);
    expect(found(value.answers, "sideSeam").alterations[0]).toEqual(own("redraw", 12));
    expect(answered(bodice, { existing: [own("redraw", 400)] }, what)).toEqual(answered(bodice, {}, what));
  });
});

describe("the most that works", () => {
  const most = (what: SeenAtDart, more: Partial<PointedDartContext> = {}) => {
    const failure = refused(bodice, waist, what, more);
    if (failure.code === "pointedDart/no-such-dart" || failure.code === "pointedDart/not-this-dart")
      throw new Error(failure.code);
    return failure;
  };
  const works = (what: SeenAtDart): boolean => answerPointedDart(bodice, waist, what, context).ok;

  it("aside, is found by ten halvings; what stands in the way is the end of the seam", () => {
    const failure = most({ pastBustPoint: 0, tooFarToSide: 160, pointed: "right" });
    if (failure.code !== "pointedDart/too-much") throw new Error(failure.code);
    expect(failure).toMatchObject({ what: "aside", asked: 160, because: { code: "alteration/off-the-seam" } });
    const steps = (failure.most / 160) * 1024;
    expect(steps).toBeCloseTo(Math.round(steps), 9);
    const aside = (tooFarToSide: number) => works({ pastBustPoint: 0, tooFarToSide, pointed: "right" });
    expect([aside(failure.most), aside(failure.most + 160 / 1024)]).toEqual([true, false]);
  });

  it("in length, comes to 25 mm of dart left; in thousandths of what was asked", () => {
    const failure = most({ pastBustPoint: 300, tooFarToSide: 5, pointed: "right" });
    if (failure.code !== "pointedDart/too-much") throw new Error(failure.code);
    expect(failure).toMatchObject({ what: "length", asked: 320 });
    const steps = (failure.most / 320) * 1024;
    expect(steps).toBeCloseTo(Math.round(steps), 9);
    expect(135 - failure.most).toBeLessThan(0.5);
  });

  it("together, is the share of length, place and fullness", () => {
    const what = (share: number): SeenAtDart => ({
      pastBustPoint: 520 * share - 20,
      tooFarToSide: 400 * share,
      pointed: "right",
    });
    const failure = most(what(1));
    if (failure.code !== "pointedDart/together-too-much") throw new Error(failure.code);
    expect(failure.share * 1024).toBe(Math.round(failure.share * 1024));
    expect(failure.because).not.toBeNull();
    expect([works(what(failure.share)), works(what(failure.share + 1 / 1024))]).toEqual([true, false]);
  });
});

it("a basque's dart is moved by the waist dart alone, as far as its inner end is nearer the centre", () => {
  const frontBasque = draftBasque(measures, 190, { side: "front", dartLess: 6 });
  const withBasque: PieceSet = { ...bodice, frontBasque };
  const what: SeenAtDart = { pastBustPoint: -20, tooFarToSide: 12, pointed: "right" };
  // Moved along the seam, its mouth as wide: the inner end comes 12 nearer.
  expect(found(answered(withBasque, {}, what).answers, "sideSeam").basqueDartOff).toBeCloseTo(12, 0);
  const done = answerPointedDart(withBasque, ref("front", "sideDart"), what, context);
  if (!done.ok) throw new Error(done.failure.code);
  expect(done.value.answers.map(({ basqueDartOff }) => basqueDartOff)).toEqual([0, 0, 0]);
});

it("no dart is as full as √3/2 of the radius: it would open to half a turn", () => {
  // 80 · √3/2 = 69.282: 1 − θ/2π = 1/2.
  expect(angleForFullness(69.29, 80)).toBeNull();
  expect(angleForFullness(69.28, 80)).toBeCloseTo(Math.PI, 3);
});
