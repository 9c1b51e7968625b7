/** What is said of a dart, which answer to it stands, and what the toile was sewn with: worked through by hand on one dart. */
import { describe, expect, it } from "vitest";
import type { Alteration, DartRedraw, Half } from "../../../src/core/decisions/alteration";
import {
  answeredOf,
  compareSeen,
  isSeenOf,
  redrawsOf,
  redrawsOn,
  sewnWith,
  standingAnswer,
  type SeenOfDart,
} from "../../../src/core/decisions/seenAtDart";
import type { DartRef } from "../../../src/core/pattern/piece";

const waist: DartRef = { piece: "front", dart: "waistDart" };
const side: DartRef = { piece: "front", dart: "sideDart" };
const behind: DartRef = { piece: "back", dart: "waistDart" };

const end = (dart: DartRef, shorten: number, half?: Half, id = "end"): DartRedraw => ({
  kind: "dartEnd",
  id,
  dart,
  shorten,
  across: 0,
  hold: "mouth",
  giveBack: {},
  ...(half === undefined ? {} : { half }),
});
const bowed: Alteration = { kind: "dartLegs", id: "legs", dart: waist, bow: 2 };
const said = (half: Half, more: Partial<SeenOfDart> = {}, dart: DartRef = waist): SeenOfDart => ({
  ...dart,
  half,
  pastBustPoint: 0,
  tooFarToSide: 0,
  pointed: "right",
  ...more,
});
const taken = (...redraws: readonly DartRedraw[]): Partial<SeenOfDart> => ({
  taken: { answer: "sideSeam", redraws },
});

describe("the redraws of a dart", () => {
  const ledger = [end(waist, 5, "left"), bowed, end(side, 7), end(waist, 9, "right"), end(behind, 3)];

  it("are those of that dart alone, in the order of the ledger, and nothing else made of it", () => {
    expect(redrawsOf(ledger, waist)).toEqual([end(waist, 5, "left"), end(waist, 9, "right")]);
    expect(redrawsOf(ledger, side)).toEqual([end(side, 7)]);
  });

  it("on a half are those made there, said of no half", () => {
    expect(redrawsOn(ledger, waist, "left")).toEqual([end(waist, 5)]);
    expect(redrawsOn(ledger, waist, "right")).toEqual([end(waist, 9)]);
    // What is for both already is the very same record.
    expect(redrawsOn(ledger, side, "right")[0]).toBe(ledger[2]);
    expect(redrawsOn(ledger, waist, "left").every((one) => !("half" in one))).toBe(true);
  });
});

describe("an answer that was taken", () => {
  it("stands while the ledger has its redraws and no others, by whatever names", () => {
    const seen = said("left", taken(end(waist, 5, undefined, "a")));
    const on = (...alterations: readonly Alteration[]) => standingAnswer(seen, { alterations });
    expect(on(end(waist, 5, undefined, "b"))).toBe("sideSeam");
    expect(on(end(waist, 5, "left", "b"))).toBe("sideSeam");
    expect(on(bowed, end(side, 1), end(waist, 5))).toBe("sideSeam");
    expect(on(end(waist, 6))).toBeNull();
    expect(on(end(waist, 5, "right"))).toBeNull();
    expect(on()).toBeNull();
    expect(on(end(waist, 5), { kind: "dartMouth", id: "m", dart: waist, inner: 1, outer: 1, giveBack: {} })).toBeNull();
  });

  it("is asked of its own half unless another is named, and of a dart without one there is none", () => {
    const left = said("left", taken(end(waist, 5)));
    const alterations = [end(waist, 5, "left"), end(waist, 8, "right")];
    expect(standingAnswer(left, { alterations })).toBe("sideSeam");
    expect(standingAnswer(left, { alterations }, "right")).toBeNull();
    expect(standingAnswer(said("left"), { alterations: [] })).toBeNull();
  });

  it("answers for the other half too where nothing is said of it and it is redrawn alike", () => {
    const left = said("left", taken(end(waist, 5)));
    const [right, other] = [said("right"), said("left", taken(end(side, 5)), side)];
    const alike = [end(waist, 5)];
    expect(answeredOf({ seen: [other, left], alterations: alike }, waist, "left")).toBe(left);
    expect(answeredOf({ seen: [other, left], alterations: alike }, waist, "right")).toBe(left);
    expect(answeredOf({ seen: [left, right], alterations: alike }, waist, "right")).toBeNull();
    expect(answeredOf({ seen: [left], alterations: [end(waist, 5, "left")] }, waist, "right")).toBeNull();
    expect(answeredOf({ seen: [left], alterations: alike }, side, "left")).toBeNull();
    expect(answeredOf({ alterations: alike }, waist, "left")).toBeNull();
  });
});

describe("what the toile was sewn with", () => {
  const now = [end(waist, 5)];

  it("is what was kept beside what is said of that half, else what the answer that stands was given to, else the ledger", () => {
    const kept = said("left", { sewn: [end(waist, 1)] });
    expect(sewnWith({ seen: [kept], alterations: now }, waist, "left")).toEqual([end(waist, 1)]);
    // Nothing stands as an answer, so the other half is as the ledger has it.
    expect(sewnWith({ seen: [kept], alterations: now }, waist, "right")).toEqual(now);
    const answered = said("left", { sewn: [], ...taken(end(waist, 5)) });
    expect(sewnWith({ seen: [answered], alterations: now }, waist, "right")).toEqual([]);
    expect(sewnWith({ seen: [answered], alterations: [end(waist, 6)] }, waist, "right")).toEqual([end(waist, 6)]);
    expect(sewnWith({ alterations: now }, waist, "left")).toEqual(now);
    expect(sewnWith({ seen: [said("left", taken(end(waist, 5)))], alterations: now }, waist, "left")).toEqual(now);
  });
});

describe("what is said of darts", () => {
  it("is of one dart of one half", () => {
    const found = (dart: DartRef, half: Half) => isSeenOf(said("left"), dart, half);
    expect([found(waist, "left"), found(waist, "right"), found(side, "left"), found(behind, "left")]).toEqual([
      true,
      false,
      false,
      false,
    ]);
  });

  it("is kept in one order: the front before the back, side before waist, left before right", () => {
    const inOrder = [side, waist, behind].flatMap((dart) => [said("left", {}, dart), said("right", {}, dart)]);
    const signs = inOrder.map((a) => inOrder.map((b) => Math.sign(compareSeen(a, b))));
    expect(signs).toEqual(inOrder.map((_, a) => inOrder.map((__, b) => Math.sign(a - b) + 0)));
  });
});
