/** Straps of a bodice of which one half alone is altered: parts, cut list, lay, order of sewing and opening all tell the same. mm. */
import { describe, expect, it } from "vitest";
import { layCloth } from "../../../src/core/cloth/layCloth";
import { otherHalf, type Half } from "../../../src/core/decisions/alteration";
import type { Straps } from "../../../src/core/decisions/dress";
import type { FitName } from "../../../src/core/decisions/fitNames";
import type { Work } from "../../../src/core/decisions/work";
import { dressOf } from "../../../src/core/dress/dressOf";
import type { DressPlan } from "../../../src/core/dress/dressPlan";
import { invariant } from "../../../src/core/result";
import { partName } from "../../../src/words/dressParts";
import { sewingStepWords } from "../../../src/words/sewing";
import { testWork } from "../../support/works";

interface Altered {
  readonly fit: FitName;
  readonly half?: Half;
}

function dressed(straps: Straps, altered: Altered | null): DressPlan {
  const work: Work = {
    ...testWork,
    pattern: { ...testWork.pattern, style: "midriff", closure: { place: "side", belowWaist: 180 } },
    dress: { skirt: { kind: "straight", length: 600 }, measures: { waistToHip: 200 }, straps },
    alterations: altered === null ? [] : [{ kind: "fit", id: "a", amount: 10, ...altered }],
  };
  const dress = dressOf(work);
  if (!dress.ok) throw new Error(JSON.stringify(dress.failure));
  return dress.value;
}

const stripsOf = ({ parts }: DressPlan) =>
  parts.flatMap((part) =>
    part.group === "strap" && part.kind === "rectangle"
      ? [{ name: partName(part, {}), count: part.cut.count, long: part.depth, wide: part.width, key: part.key }]
      : [],
  );

const halvesOf = (half: Half) => [half, otherHalf(half)] as const;

describe.each(["left", "right"] as const)("a strap that is longer by 10 on the %s half alone", (half) => {
  const [plain, apart] = [dressed({ kind: "plain" }, null), dressed({ kind: "plain" }, { fit: "strapLength", half })];
  const [both] = stripsOf(plain);
  const own = invariant(both, "strips").long;

  it("is cut so, and the other as it was: one of each, told apart", () => {
    expect(stripsOf(plain)).toEqual([{ ...both, name: "Strap", count: 2 }]);
    const long = { [half]: own + 10, [otherHalf(half)]: own };
    expect(stripsOf(apart)).toEqual(
      (["left", "right"] as const).map((of) => ({
        name: `Strap, ${of}`,
        count: 1,
        long: expect.closeTo(long[of] ?? 0, 6),
        wide: both?.wide,
        key: `strap-strip-${of}`,
      })),
    );
  });

  it("lies on the cloth once, as the other does", () => {
    const { parts } = apart;
    const lay = layCloth({
      name: "main",
      cloth: {},
      parts,
      allowances: {},
      closure: testWork.pattern.closure,
      unit: "cm",
    });
    const strips = lay.ok ? lay.value.parts.filter(({ key }) => key.startsWith("strap")) : [];
    // A strip of 15 more at each end.
    const longer = new Map(strips.map(({ key, length }) => [key, Math.round(length - own)]));
    expect(strips).toHaveLength(2);
    expect([longer.get(`strap-strip-${half}`), longer.get(`strap-strip-${otherHalf(half)}`)]).toEqual([40, 30]);
  });

  it("is sewn by its own length", () => {
    const made = invariant(
      apart.sewing.find(({ name }) => name === "makeStraps"),
      "makeStraps",
    );
    expect(made.parts).toEqual(["strap-strip-left", "strap-strip-right"]);
    const [longer, as] = halvesOf(half).map((of) => made.seams.find((seam) => seam.half === of));
    expect(longer).toMatchObject({ count: 1, length: expect.closeTo(own + 10, 6) });
    expect(as).toMatchObject({ count: 1, length: expect.closeTo(own, 6) });
    expect(sewingStepWords(made, "cm").seams[0]).toMatch(/^Left half: /);
  });

  it("makes the neck wider by as much to get through, and by twice as much on both halves", () => {
    const lets = ({ closure }: DressPlan): number => {
      const way = closure?.ways.find(({ way: name }) => name === "steppingIn");
      expect(way?.tightest.at).toBe("neck");
      return way?.tightest.lets ?? 0;
    };
    expect(lets(apart) - lets(plain)).toBeCloseTo(10, 6);
    expect(lets(dressed({ kind: "plain" }, { fit: "strapLength" })) - lets(plain)).toBeCloseTo(20, 6);
  });
});

it("straps of which one is wider have elastic of their own widths, and are sewn on by them", () => {
  const { notions, sewing } = dressed({ kind: "plain", elastic: true }, { fit: "strapWidth", half: "right" });
  const elastics = notions.flatMap(({ what, count, length, width }) =>
    what === "elastic" ? [{ count, length, width }] : [],
  );
  const [left, right] = elastics;
  expect(elastics.map(({ count, length }) => [count, length])).toEqual([
    [1, 110],
    [1, 110],
  ]);
  expect((right?.width ?? 0) - (left?.width ?? 0)).toBeCloseTo(10, 6);
  // Both ends of each, 3 wider than its elastic.
  expect(sewing.find(({ name }) => name === "basteStraps")?.seams).toEqual([
    { seam: "strap", pieces: [], half: "left", length: expect.closeTo((left?.width ?? 0) + 3, 6), count: 2 },
    { seam: "strap", pieces: [], half: "right", length: expect.closeTo((right?.width ?? 0) + 3, 6), count: 2 },
  ]);
  expect(sewing.find(({ name }) => name === "elasticInStraps")?.parts).toEqual([
    "strap-strip-left",
    "elastic-casing-left",
    "strap-strip-right",
    "elastic-casing-right",
  ]);
});
