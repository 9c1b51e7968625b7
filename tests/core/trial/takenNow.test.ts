/** Which of the answers taken stand: the last for both halves takes the place of all, one on a half of what is there. */
import { describe, expect, it } from "vitest";
import type { Half } from "../../../src/core/decisions/alteration";
import type { TakenAnswer, Trial } from "../../../src/core/decisions/trial";
import { canTryOnHalf, isToTake, standsOn } from "../../../src/core/trial/takenNow";
import type { RuleName } from "../../../src/core/trial/rules";
import type { TrialAnswer } from "../../../src/core/trial/trialReading";
import { toile } from "../../support/trials";
import { testWork } from "../../support/works";

const answer = (...causes: readonly (readonly [RuleName, Half?])[]): TrialAnswer => ({
  key: "",
  causes: causes.map(([rule, half]) => ({
    rule,
    ...(half === undefined ? {} : { half }),
    amount: 8,
    amountBy: "usual",
    explains: [],
    expects: [],
    against: [],
  })),
  explains: [],
  leaves: [],
  alterations: [],
  tellsApart: [],
});

const taken = (causes: readonly string[], half?: Half): TakenAnswer => ({
  causes,
  ...(half === undefined ? {} : { half }),
  because: [],
  alterations: [],
});
const after = (...answers: readonly TakenAnswer[]): Trial => toile("sideDart", [], { taken: answers });

const GAPE = answer(["armholeGapes"]);
const LONG = answer(["narrowShoulder"]);

describe("how an answer stands", () => {
  it("not at all before it is taken", () => {
    expect(standsOn(toile("sideDart", []), GAPE)).toBeNull();
    expect(standsOn(after(taken(["narrowShoulder"])), GAPE)).toBeNull();
  });

  it("on both, until another takes its place", () => {
    expect(standsOn(after(taken(["armholeGapes"])), GAPE)).toBe("both");
    const then = after(taken(["armholeGapes"]), taken(["narrowShoulder"]));
    expect([standsOn(then, GAPE), standsOn(then, LONG)]).toEqual([null, "both"]);
  });

  it("on the half where it is tried, and on the other where another is", () => {
    expect(standsOn(after(taken(["armholeGapes"], "left")), GAPE)).toEqual(["left"]);
    const then = after(taken(["armholeGapes"]), taken(["narrowShoulder"], "left"));
    expect([standsOn(then, GAPE), standsOn(then, LONG)]).toEqual([["right"], ["left"]]);
    const other = after(taken(["armholeGapes"]), taken(["narrowShoulder"], "right"));
    expect([standsOn(other, GAPE), standsOn(other, LONG)]).toEqual([["left"], ["right"]]);
  });

  it("on each half by itself", () => {
    const each = after(taken(["armholeGapes"], "left"), taken(["armholeGapes"], "right"));
    expect(standsOn(each, GAPE)).toEqual(["left", "right"]);
    const again = after(taken(["armholeGapes"], "left"), taken(["narrowShoulder"], "left"));
    expect([standsOn(again, GAPE), standsOn(again, LONG)]).toEqual([null, ["left"]]);
    const over = after(taken(["armholeGapes"], "left"), taken(["narrowShoulder"]));
    expect([standsOn(over, GAPE), standsOn(over, LONG)]).toEqual([null, "both"]);
    const away = after(taken(["armholeGapes"]), taken(["narrowShoulder"], "left"), taken(["narrowShoulder"], "right"));
    expect([standsOn(away, GAPE), standsOn(away, LONG)]).toEqual([null, ["left", "right"]]);
  });

  it("is another answer with a cause more, with other causes, or on another half", () => {
    const two = after(taken(["armholeGapes", "swayBack"]));
    expect(standsOn(two, GAPE)).toBeNull();
    expect(standsOn(two, answer(["armholeGapes"], ["swayBack"]))).toBe("both");
    expect(standsOn(two, answer(["swayBack"], ["armholeGapes"]))).toBeNull();
    const left = after(taken(["armholeGapes-left"]));
    expect(standsOn(left, GAPE)).toBeNull();
    expect(standsOn(left, answer(["armholeGapes", "left"]))).toBe("both");
    expect(standsOn(left, answer(["armholeGapes", "right"]))).toBeNull();
    expect(standsOn(after(taken(["swayBack"])), answer(["armholeGapes"], ["swayBack"]))).toBeNull();
  });
});

describe("trying an answer on one half", () => {
  const trial = toile("sideDart", []);
  const oneCup: Trial = {
    ...trial,
    sewn: { ...trial.sewn, pattern: { ...testWork.pattern, chart: { ...testWork.pattern.chart, cups: [] } } },
  };

  it("can be where all of it is of both halves and of no centre line", () => {
    expect(canTryOnHalf(trial, GAPE)).toBe(true);
    expect(canTryOnHalf(trial, answer(["armholeGapes"], ["narrowShoulder"]))).toBe(true);
    expect(canTryOnHalf(trial, answer(["armholeGapes", "left"]))).toBe(false);
    expect(canTryOnHalf(trial, answer(["swayBack"]))).toBe(false);
    expect(canTryOnHalf(trial, answer(["armholeGapes"], ["swayBack"]))).toBe(false);
  });

  it("a bust can be only by another cup version", () => {
    expect(canTryOnHalf(trial, answer(["fullBust"]))).toBe(true);
    expect(canTryOnHalf(oneCup, answer(["fullBust"]))).toBe(false);
    expect(canTryOnHalf(oneCup, GAPE)).toBe(true);
  });

  it("what is mended by hand alone is not tried", () => {
    expect(canTryOnHalf(trial, answer(["seamPuckered"]))).toBe(false);
    expect(canTryOnHalf(trial, answer(["seamPuckered"], ["armholeGapes"]))).toBe(true);
  });
});

it("an answer is to be taken where it changes anything", () => {
  expect(isToTake(GAPE)).toBe(false);
  expect(isToTake({ ...GAPE, bustAlteration: 0 })).toBe(true);
  expect(isToTake({ ...GAPE, halfCups: {} })).toBe(true);
  expect(isToTake({ ...GAPE, alterations: [{ kind: "fit", id: "a", fit: "swayBack", amount: 5 }] })).toBe(true);
});
