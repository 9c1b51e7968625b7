import { describe, expect, it } from "vitest";
import { precedencesIn, type OrderCase, type Precedence } from "../../../src/core/sewing/precedence";

/** What is left when names that nothing comes before any more are taken away, again and again: a circle, or nothing. */
function circleIn(pairs: readonly Precedence[]): readonly string[] {
  const names = new Set(pairs.flatMap(({ before, after }) => [before, after]));
  for (;;) {
    const free = [...names].filter((name) => !pairs.some(({ before, after }) => after === name && names.has(before)));
    if (free.length === 0) return [...names];
    for (const name of free) names.delete(name);
  }
}

const CLOSES: readonly OrderCase[] = ["invisible", "lapped", "buttons"];
const BOUND: readonly OrderCase[] = ["boundAtBack", "boundAtSide"];
/** One upper edge is sewn before the sides or after them, never both. */
const SIDES: readonly (readonly OrderCase[])[] = [[], ["turnedThroughSides"], ["asOneRing"]];

const BANDS: readonly (readonly OrderCase[])[] = [
  ["bandAcrossFront", "bandInTwoBack"],
  ["bandInTwoFront", "bandInTwoBack"],
  ["bandAcrossFront", "bandAcrossBack"],
];
const OWN: ReadonlySet<string> = new Set(["faceNeck", "faceArmholes", "bindNeck", "bindArmholes"]);

describe("what has to come before what", () => {
  const cases = CLOSES.flatMap((closes) =>
    BOUND.flatMap((bound) => SIDES.flatMap((sides) => BANDS.map((bands) => [closes, bound, ...sides, ...bands]))),
  );

  it.each(cases.map((some) => [some.join(", "), some] as const))("goes in no circle: %s", (_, some) => {
    // Where one lining or facing closes all upper edges, none has a finish of its own.
    const isOne = some.includes("turnedThroughSides");
    const there = ({ before, after }: Precedence): boolean => !isOne || ![before, after].some((name) => OWN.has(name));
    expect(circleIn(precedencesIn(some).filter(there))).toEqual([]);
  });

  it("is seen to, where there is one", () => {
    expect(
      circleIn([
        { before: "hang", after: "hemShell" },
        { before: "hemShell", after: "hang" },
        { before: "hang", after: "press" },
      ]),
    ).toContain("hang");
  });
});
