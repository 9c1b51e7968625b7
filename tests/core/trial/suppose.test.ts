/** Sets of causes against all there are, tried one by one: which are supposed, and in what order they are told. */
import { describe, expect, it } from "vitest";
import { HALVES, type Half } from "../../../src/core/decisions/alteration";
import type { Observation } from "../../../src/core/decisions/trial";
import { readLines } from "../../../src/core/trial/recordLines";
import { ruleOf, type RuleName } from "../../../src/core/trial/rules";
import { findingsOf, weigh, type Findings, type Supposed, type Weighed } from "../../../src/core/trial/score";
import { supposeCauses } from "../../../src/core/trial/suppose";
import { line } from "../../support/trials";

const findings = (lines: readonly Observation[]): Findings =>
  findingsOf({ lines: readLines(lines), checks: {}, altered: [] });
const supposed = (names: readonly RuleName[], lines: readonly Observation[], canBeOnOne = true) =>
  supposeCauses(names.map(ruleOf), findings(lines), () => canBeOnOne);
const keyOf = (causes: readonly Supposed[]): string =>
  causes
    .map(({ rule, halves }) => `${rule.name}${halves.length === 2 ? "" : `-${halves[0] ?? ""}`}`)
    .toSorted()
    .join("+");
/** The causes that are supposed singly. */
const singles = (names: readonly RuleName[], lines: readonly Observation[], canBeOnOne = true) =>
  [
    ...new Set(supposed(names, lines, canBeOnOne).flatMap(({ causes }) => causes.map((one) => keyOf([one])))),
  ].toSorted();

const at = (half: Half, one: Observation): Observation => ({ ...one, id: `${one.id} ${half}`, half });
const gape = line("frontNeck", "gapes", { amount: 5 });

describe("what is supposed", () => {
  it("is a row on both halves, and on one that alone shows it", () => {
    expect(singles(["neckGapes"], [gape])).toEqual(["neckGapes"]);
    expect(singles(["neckGapes"], [at("left", gape)])).toEqual(["neckGapes", "neckGapes-left"]);
    expect(singles(["neckGapes"], [at("left", gape), at("right", gape)])).toEqual(
      expect.arrayContaining(["neckGapes", "neckGapes-left", "neckGapes-right"]),
    );
    expect(singles(["neckGapes"], [at("left", gape)], false)).toEqual(["neckGapes"]);
  });

  it("is on the centre line for both halves always, and of one half never for both", () => {
    const fold = line("backAboveWaist", "foldAcross", { amount: 7 });
    expect(singles(["swayBack"], [at("left", fold), line("backWaist", "drops"), line("backHem", "drops")])).toEqual([
      "swayBack",
    ]);
    const blade = [line("blades", "pointed"), line("backArmhole", "dragLines")];
    expect(singles(["prominentBlade"], blade)).toEqual([]);
    expect(
      singles(
        ["prominentBlade"],
        blade.map((one) => at("right", one)),
      ),
    ).toEqual(["prominentBlade-right"]);
  });

  it("is nothing for no sign, nor for a lone one that the row shows seldom", () => {
    expect(supposed(["neckGapes"], [])).toEqual([]);
    expect(singles(["broadBack"], [gape])).toEqual([]);
    // A shoulder that ends outside drops at its end once in seven.
    const rows: readonly RuleName[] = ["narrowShoulder"];
    expect(singles(rows, [line("shoulder", "drops")])).toEqual([]);
  });

  it("is for a lone sign that the row shows once in four and more", () => {
    expect(singles(["neckGapes"], [line("frontNeck", "gapes")])).toEqual(["neckGapes"]);
    expect(singles(["neckGapes"], [line("frontNeck", "foldAlong")])).toEqual(["neckGapes"]);
    expect(singles(["armholeGapes"], [line("frontArmhole", "foldAcross")])).toEqual([]);
    expect(singles(["armholeGapes"], [line("frontArmhole", "foldAcross", { amount: 5 })])).toEqual(["armholeGapes"]);
  });

  it("is where it is measured, or not alone, however seldom", () => {
    expect(singles(["fullBust"], [line("betweenBusts", "tight"), line("bust", "tight"), line("bust", "flat")])).toEqual(
      ["fullBust"],
    );
    const faint = [line("frontArmhole", "cutsIn"), line("backArmhole", "cutsIn")];
    expect(weigh([{ rule: ruleOf("highArmhole"), halves: HALVES }], findings(faint))).not.toBeNull();
  });
});

describe("sets", () => {
  const RECORDS: readonly (readonly [string, readonly RuleName[], readonly Observation[]])[] = [
    ["one cause", ["neckGapes", "neckStretched", "narrowChest"], [gape]],
    [
      "three that are all there",
      ["neckGapes", "swayBack", "narrowShoulder", "roundBack"],
      [
        gape,
        line("backAboveWaist", "foldAcross", { amount: 6 }),
        line("backWaist", "drops"),
        line("shoulder", "endsOutside", { amount: 9 }),
      ],
    ],
    [
      "four that are all there, of six",
      ["neckGapes", "swayBack", "narrowShoulder", "looseHip", "flatSeat", "longBelowWaist"],
      [
        gape,
        line("backAboveWaist", "foldAcross", { amount: 6 }),
        line("shoulder", "endsOutside", { amount: 9 }),
        line("sideHip", "foldAlong", { amount: 6 }),
        line("backHip", "foldAlong"),
      ],
    ],
    [
      "of halves",
      ["armholeGapes", "narrowChest", "fullBust"],
      [
        at("left", line("frontArmhole", "gapes", { amount: 5 })),
        line("frontArmhole", "foldAlong"),
        line("bust", "flat"),
      ],
    ],
  ];

  /** All sets of up to three of these that do not overlap, and the likeliest of three with one more. */
  function allSets(causes: readonly Supposed[], of: Findings): readonly Weighed[] {
    const isApart = (a: Supposed, b: Supposed): boolean =>
      a.rule.name !== b.rule.name || !a.halves.some((half) => b.halves.includes(half));
    const sets = (size: number, from: number): readonly (readonly Supposed[])[] =>
      size === 0
        ? [[]]
        : causes.slice(from).flatMap((one, index) =>
            sets(size - 1, from + index + 1)
              .filter((rest) => rest.every((other) => isApart(one, other)))
              .map((rest) => [one, ...rest]),
          );
    const weighed = (some: readonly (readonly Supposed[])[]) =>
      some.map((set) => weigh(set, of)).filter((one) => one !== null);
    const [upToTwo, three] = [weighed([0, 1, 2].flatMap((size) => sets(size, 0))), weighed(sets(3, 0))];
    const best = three.toSorted((a, b) => b.score - a.score)[0];
    const four =
      best === undefined
        ? []
        : weighed(
            causes
              .filter((one) => best.causes.every((other) => isApart(one, other)))
              .map((one) => [...best.causes, one]),
          );
    return [...upToTwo, ...three, ...four];
  }

  it.each(RECORDS)("are all that are likelier than nothing: %s", (_, names, lines) => {
    const of = findings(lines);
    const told = supposeCauses(names.map(ruleOf), of, () => true);
    const causes = [...new Map(told.flatMap((set) => set.causes.map((one) => [keyOf([one]), one] as const))).values()];
    const all = allSets(causes, of);
    const nothing = weigh([], of)?.score ?? Number.NaN;
    const better = all.filter(({ score }) => score > nothing);
    expect(told.map((set) => keyOf(set.causes)).toSorted()).toEqual(better.map((set) => keyOf(set.causes)).toSorted());
  });

  it.each(RECORDS)("come by what they are expected to gain: %s", (_, names, lines) => {
    const of = findings(lines);
    const told = supposeCauses(names.map(ruleOf), of, () => true);
    const causes = [...new Map(told.flatMap((set) => set.causes.map((one) => [keyOf([one]), one] as const))).values()];
    const all = allSets(causes, of);
    // How probable a cause is: that of all sets that have it, among all. A wrong one costs 0.35 of what a right one gains.
    const total = all.reduce((sum, { score }) => sum + Math.exp(score), 0);
    const chance = (cause: Supposed): number =>
      all.reduce(
        (sum, set) => sum + (set.causes.some((one) => keyOf([one]) === keyOf([cause])) ? Math.exp(set.score) : 0),
        0,
      ) / total;
    const gains = told.map((set) => set.causes.reduce((sum, cause) => sum + chance(cause) - 0.35, 0));
    for (const [index, gain] of gains.entries()) expect(gain).toBeLessThanOrEqual((gains[index - 1] ?? gain) + 1e-9);
  });

  it("have four causes at the most", () => {
    const [, names, lines] = RECORDS[2] ?? ["", [], []];
    expect(
      supposed(names, lines)[0]
        ?.causes.map(({ rule }) => rule.name)
        .toSorted(),
    ).toEqual(["looseHip", "narrowShoulder", "neckGapes", "swayBack"]);
    expect(Math.max(...supposed(names, lines).map(({ causes }) => causes.length))).toBe(4);
  });

  it("never have one row twice on a half", () => {
    for (const { causes } of supposed(["neckGapes"], [at("left", gape), at("right", gape)]))
      for (const half of HALVES)
        expect(causes.filter(({ halves }) => halves.includes(half)).length).toBeLessThanOrEqual(1);
  });
});
