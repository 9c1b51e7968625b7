/** From the paper of one version to that of another: nothing that a hand can draw is passed over, and what was decided otherwise is said. */
import { describe, expect, it } from "vitest";
import type { Alteration, Half } from "../../../src/core/decisions/alteration";
import type { Work } from "../../../src/core/decisions/work";
import { checklistSince, type Since } from "../../../src/core/versions/checklistSince";
import { planOf, ref, testWork, withAlterations } from "../../support/works";

const since = (from: Work, to: Work): Since => checklistSince(planOf(from), planOf(to));
const fit = (name: "swayBack" | "shoulderSlope", amount: number, half?: Half): Alteration => ({
  kind: "fit",
  id: `${name} ${half ?? "both"}`,
  fit: name,
  amount,
  ...(half === undefined ? {} : { half }),
});
const end = (shorten: number): Alteration => ({
  kind: "dartEnd",
  id: "end",
  dart: ref("front", "waistDart"),
  shorten,
  across: 0,
  hold: "mouth",
  giveBack: {},
});
const legs = (bow: number): Alteration => ({ kind: "dartLegs", id: "legs", dart: ref("front", "waistDart"), bow });

/** Kinds of steps on a piece, of whichever half. */
const stepsOn = ({ changed }: Since, name: string): readonly string[] =>
  changed.filter(({ piece }) => piece === name).flatMap(({ items }) => items.map(({ step }) => step.kind));

describe("a change of a dart alone", () => {
  it("is told however little its end moves, as long as a hand can draw it", () => {
    const made = since(withAlterations(end(10)), withAlterations(end(12)));
    expect(stepsOn(made, "front")).toEqual(expect.arrayContaining(["takeUp", "altered", "dart"]));
    expect(made.changed.map(({ piece }) => piece)).toEqual(["front"]);
  });

  it("is told where its legs are bowed and no point moves", () => {
    const made = since(withAlterations(legs(2)), withAlterations(legs(4)));
    expect(stepsOn(made, "front")).toEqual(expect.arrayContaining(["takeUp", "altered", "dart"]));
    expect(stepsOn(since(withAlterations(legs(4)), testWork), "front")).toContain("dart");
  });
});

describe("what was decided otherwise", () => {
  it("is said of a bust that is altered by more: half of it on a half", () => {
    const picked = (bustAlteration: number): Work => ({
      ...testWork,
      picks: { baseSize: "14", cup: "B", bustAlteration },
    });
    const { changed } = since(picked(10), picked(18));
    const said = changed.flatMap(({ items }) => items.filter(({ step }) => step.kind === "bustAltered"));
    expect(said.map(({ piece, amount }) => [piece, amount])).toContainEqual(["front", 4]);
    expect(said[0]?.step).toMatchObject({ before: 10, after: 18 });
  });

  it("is said of a waist line that lies elsewhere, on each piece that has it", () => {
    const picked = (waist: number): Work => ({ ...testWork, picks: { waist, baseSize: "12" } });
    const made = since(picked(1), picked(1.5));
    const lines = made.changed.flatMap(({ piece, items }) =>
      items.flatMap(({ step }) => (step.kind === "lineMoved" && step.after.level === "waist" ? [piece] : [])),
    );
    expect(lines).toEqual(expect.arrayContaining(["front", "back"]));
  });
});

describe("seams", () => {
  it("are walked again where a side of theirs changed, and no others", () => {
    const { walks } = since(testWork, withAlterations(fit("swayBack", 8)));
    const pieces = walks.map(({ step }) => (step.kind === "walk" ? [...step.first, ...step.second] : []));
    expect(pieces.length).toBeGreaterThan(0);
    for (const sides of pieces) expect(sides.some((piece) => piece === "back" || piece === "backBasque")).toBe(true);
    expect(since(testWork, testWork).walks).toEqual([]);
  });
});

describe("a piece that was one for both halves", () => {
  const twice = ({ changed }: Since) =>
    changed.flatMap(({ piece, half, items }) =>
      items.flatMap(({ step }) => (step.kind === "takeUp" ? [[piece, half, step.isTwice]] : [])),
    );

  it("is taken up for the half that changes, and is one for each from then on", () => {
    const [left, right] = [fit("shoulderSlope", 6, "left"), fit("shoulderSlope", 4, "right")];
    const first = twice(since(testWork, withAlterations(left)));
    expect(first).toContainEqual(["front", "left", true]);
    expect(first).not.toContainEqual(["front", "right", true]);
    // Each half has its own paper already.
    expect(twice(since(withAlterations(left), withAlterations(left, right)))).toContainEqual(["front", "right", false]);
  });
});
