/** Upper edges that have to be turned, and what is caught in them, on dresses of the test pattern. By the trade's common practice, no source. */
import { describe, expect, it } from "vitest";
import type { Dress } from "../../../src/core/decisions/dress";
import type { Closure, StyleName } from "../../../src/core/decisions/pattern";
import { dressOf } from "../../../src/core/dress/dressOf";
import type { SewingStepName } from "../../../src/core/sewing/sewingStep";
import { sewingStepWords } from "../../../src/words/sewing";
import { testWork } from "../../support/works";

const BACK: Closure = { place: "centreBack", belowWaist: 180 };
const SIDE: Closure = { place: "side", belowWaist: 180 };

function sewn(dress: Dress, closure: Closure, style: StyleName = "sideDart") {
  const made = dressOf({ ...testWork, dress, pattern: { ...testWork.pattern, style, closure } });
  if (!made.ok) throw new Error(made.failure.code);
  const { sewing, notions } = made.value;
  const stepOf = (name: SewingStepName) => sewing.find((step) => step.name === name);
  const textOf = (name: SewingStepName): string => {
    const step = stepOf(name);
    return step === undefined ? "" : sewingStepWords(step, "cm").text;
  };
  return { stepOf, textOf, notions };
}

const lined: Dress = { skirt: { kind: "gathered" }, lining: { bodice: true } };

describe("a bodice with shoulders, closed at neck and armholes", () => {
  it.each([
    ["liningTopEdge", lined],
    ["faceTopEdge", { skirt: { kind: "gathered" } }],
  ] as const)("%s: backs that open are drawn through the shoulders; one that does not is rolled", (name, dress) => {
    expect(sewn(dress, BACK).textOf(name)).toMatch(/draw each back through its shoulder/);
    expect(sewn(dress, SIDE).textOf(name)).toMatch(/neck edge; .* roll the bodice up/);
    expect(sewn(dress, SIDE).textOf(name)).not.toMatch(/through its shoulder/);
    for (const closure of [BACK, SIDE]) expect(sewn(dress, closure).textOf(name)).toMatch(/short of the opening/);
  });

  it("of the sides only the one that does not open is sewn", () => {
    expect(sewn(lined, SIDE).textOf("bodiceSides")).toMatch(/right side seam of both.*The left one opens/);
    expect(sewn(lined, BACK).textOf("bodiceSides")).toMatch(/the side seams of both in one go\.$/);
  });

  it("a facing stops short of the opening on the edge that it cuts, and only there", () => {
    const dress: Dress = { edges: { neck: "facing", armhole: "binding" } };
    expect(sewn(dress, BACK).textOf("faceNeck")).toMatch(/short of the opening/);
    expect(sewn(dress, SIDE).textOf("faceNeck")).not.toMatch(/opening/);
    expect(sewn(dress, BACK).textOf("bindArmholes")).toMatch(/the join under the arm/);
    expect(sewn(dress, SIDE).textOf("bindArmholes")).toMatch(/the left one turned in at the opening/);
    const bound: Dress = { edges: { neck: "binding", armhole: "facing" } };
    expect(sewn(bound, BACK).textOf("bindNeck")).toMatch(/turned in at the opening/);
    expect(sewn(bound, SIDE).textOf("bindNeck")).toMatch(/the join at a shoulder/);
  });
});

describe("cups on straps", () => {
  it("are one ring, turned at once, straps of their own width caught in it", () => {
    const dress: Dress = { ...lined, straps: { kind: "plain", width: 10 } };
    const { stepOf, textOf } = sewn(dress, BACK, "midriff");
    expect(textOf("liningTopEdge")).not.toMatch(/through its shoulder|roll/);
    expect(stepOf("basteStraps")?.length).toBe(4 * 10);
    // The ring runs on over the seams that the straps are set in.
    expect(stepOf("liningTopEdge")?.seams.map(({ seam }) => seam)).toEqual(["neck", "strap", "armhole"]);
  });

  it("bound, the binding of the neck takes in the ends of the straps", () => {
    const { textOf } = sewn({ edges: { neck: "binding" } }, SIDE, "midriff");
    expect(textOf("bindNeck")).toMatch(/over the strap seams/);
    expect(textOf("bindNeck")).not.toMatch(/opening/);
  });

  it("casings of elastic are sewn, and sewn to the straps", () => {
    const { stepOf, textOf } = sewn({ straps: { kind: "plain", elastic: true } }, BACK, "midriff");
    // Two straps, and two casings one and a half times the 100 that are elastic as worn.
    expect(stepOf("makeStraps")?.seams.map(({ length, count }) => [Math.round(length), count])[1]).toEqual([150, 2]);
    expect(textOf("elasticInStraps")).toMatch(/casing to the back end of its strap/);
  });
});

describe("the lining of a basque", () => {
  it("has its centre back seam where the opening is at the side, and what is left of it below one at the back", () => {
    const dress: Dress = { lining: { bodice: true } };
    const of = (closure: Closure) => sewn(dress, closure).stepOf("liningBasque")?.seams ?? [];
    expect(of(SIDE).some(({ seam, pieces }) => seam === "centre" && pieces[0] === "backBasque")).toBe(true);
    expect(of({ ...BACK, belowWaist: 0 }).some(({ seam }) => seam === "centre")).toBe(true);
    expect(of(BACK).some(({ seam }) => seam === "centre")).toBe(false);
    const below = sewn(dress, BACK).stepOf("seamBelowOpening")?.length;
    expect(below).toBeGreaterThan(0);
    expect(of(BACK).some(({ length }) => length === below)).toBe(true);
  });
});

describe("a zip", () => {
  it("that does not part comes to no length where no opening lets her in, and parts where the bodice opens whole", () => {
    const closed = sewn({}, { place: "side", belowWaist: 0 }).notions.find(({ what }) => what === "zip");
    expect(closed).toMatchObject({ length: null });
    const whole = sewn({}, { place: "centreBack", belowWaist: 400 }).notions.find(({ what }) => what === "zip");
    expect(whole).toMatchObject({ comesApart: true });
  });
});
