/** What the whole dress hands on from part to part: the closure is read of the dress as it is, and what cannot be made is left out. mm. */
import { describe, expect, it } from "vitest";
import type { Dress } from "../../../src/core/decisions/dress";
import type { Closure } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { dressOf } from "../../../src/core/dress/dressOf";
import type { DressPlan } from "../../../src/core/dress/dressPlan";
import { readClosure, type ClosureAsked } from "../../../src/core/opening/readClosure";
import { planOf } from "../../../src/core/plan/planOf";
import { tapesOf } from "../../../src/core/measures/tape";
import { invariant } from "../../../src/core/result";
import { testWork } from "../../support/works";

const workOf = (dress: Dress | undefined, pattern: Partial<Work["pattern"]> = {}): Work => ({
  ...testWork,
  pattern: { ...testWork.pattern, ...pattern },
  ...(dress === undefined ? {} : { dress }),
});

function dressed(work: Work): DressPlan {
  const dress = dressOf(work);
  if (!dress.ok) throw new Error(JSON.stringify(dress.failure));
  return dress.value;
}

/** Her hip 200 down; the floor 1030 at the side, 20 nearer in front and 15 further behind: a level hem of 600 is 615 long there. */
const LEVELLED: Dress = {
  measures: {
    waistToHip: 200,
    waistToFloorFront: 1010,
    waistToFloorSide: 1030,
    waistToFloorBack: 1045,
    shoulderGirth: 1000,
  },
  skirt: { kind: "straight", length: 600 },
};
const BODY = { bust: 905, hip: 1034, shoulderGirth: 1000 };

describe("the closure", () => {
  const closureAt = (place: Closure["place"], belowWaist: number): Closure => ({ place, belowWaist });
  /** The reading of a dress, and what it is of another made by hand. */
  const both = (
    dress: Dress,
    closure: Closure,
    by: Partial<ClosureAsked>,
    pattern: Partial<Work["pattern"]> = {},
  ): readonly [DressPlan["closure"], DressPlan["closure"]] => {
    const made = dressed(workOf(dress, { ...pattern, closure }));
    const levels = made.skirt?.ok === true ? made.skirt.value.levels : [];
    const lining = made.lining?.ok === true ? made.lining.value.levels : [];
    return [
      made.closure,
      readClosure({ bodice: made.bodice, closure, zip: "invisible", skirt: levels, lining, body: BODY, ...by }),
    ];
  };

  it("is read with her hip line where it lies along the seam that opens: 15 further down behind, and so of the lining", () => {
    const dress: Dress = { ...LEVELLED, lining: { skirt: true, freeBelow: 40, hipEase: 0 } };
    for (const [place, down] of [
      ["centreBack", 215],
      ["side", 200],
    ] as const) {
      for (const belowWaist of [100, 185]) {
        const closure = closureAt(place, belowWaist);
        const asked = { liningFree: 40, liningHipDepth: down, body: { ...BODY, hipDepth: down } };
        const [read, expected] = both(dress, closure, asked);
        expect(read).toEqual(expected);
      }
    }
    // Each of them counts: 100 open, the tightest of the lining is down where it is shut; 185 open, at her hip line.
    const read = (belowWaist: number, by: Partial<ClosureAsked>): DressPlan["closure"] =>
      both(dress, closureAt("centreBack", belowWaist), {
        liningFree: 40,
        liningHipDepth: 215,
        body: { ...BODY, hipDepth: 215 },
        ...by,
      })[1];
    expect(read(100, { liningFree: 0 })).not.toEqual(read(100, {}));
    expect(read(100, { liningHipDepth: 200 })).not.toEqual(read(100, {}));
    // So does that of the shell, of one without ease that is open to below it.
    const tight: Dress = { ...LEVELLED, skirt: { kind: "straight", length: 600, hipEase: 0 } };
    for (const [place, hipDepth] of [
      ["centreBack", 215],
      ["side", 200],
    ] as const) {
      const [shell, made] = both(tight, closureAt(place, 225), { body: { ...BODY, hipDepth } });
      expect(shell).toEqual(made);
    }
  });

  it("has a lining open 5 below the waist at the least, and none where there is none", () => {
    const [read, expected] = both({ ...LEVELLED, lining: { skirt: true, freeBelow: 0 } }, closureAt("side", 0), {
      liningFree: 5,
      liningHipDepth: 200,
      body: { ...BODY, hipDepth: 200 },
    });
    expect(read).toEqual(expected);
    const [plain, without] = both(LEVELLED, closureAt("side", 120), { body: { ...BODY, hipDepth: 200 } });
    expect(plain).toEqual(without);
    // The lining of a bodice alone hangs no lower.
    const [bodiceLined] = both({ ...LEVELLED, lining: { bodice: true } }, closureAt("side", 120), {});
    expect(bodiceLined).toEqual(plain);
  });

  it("without a skirt goes by the pattern's own basque, and by the zip that she chose", () => {
    for (const zip of ["lapped", "invisible"] as const) {
      const [read, expected] = both({ zip, measures: { shoulderGirth: 1000 } }, closureAt("centreBack", 150), { zip });
      expect(read).toEqual(expected);
    }
  });

  it("knows of straps that are tied, and how long others are", () => {
    const straps = (kind: "plain" | "tied", ease: number): Dress => ({ ...LEVELLED, straps: { kind, ease } });
    const at = closureAt("side", 180);
    const style = { style: "midriff" } as const;
    const body = { ...BODY, hipDepth: 200 };
    const lengthsOf = (dress: Dress): readonly [number, number] => {
      const { left, right } = invariant(dressed(workOf(dress, { ...style, closure: at })).edges.strap, "straps");
      return [left.length, right.length];
    };
    const readings = [straps("plain", 0), straps("plain", -60), straps("tied", 0)].map((dress, index) => {
      const asked = { strapLengths: lengthsOf(dress), isNeckUntied: index === 2, body };
      const [read, expected] = both(dress, at, asked, style);
      expect(read).toEqual(expected);
      return read?.ways.find(({ way }) => way === "steppingIn")?.tightest;
    });
    // Feet first it is tightest at the neck, by as much more as both straps are shorter; untied there is no neck to pass.
    expect(readings.map((tightest) => tightest?.at === "neck")).toEqual([true, true, false]);
    expect((readings[0]?.lets ?? 0) - (readings[1]?.lets ?? 0)).toBeCloseTo(2 * 60, 3);
  });

  it("is not read where the skirt cannot be made, nor does anything hang of it", () => {
    const made = dressed(workOf({ skirt: { kind: "aLine", length: 205 }, lining: { skirt: true } }));
    expect(made.skirt).toMatchObject({ ok: false, failure: { code: "skirt/length-out-of-range" } });
    expect(made.closure).toBeNull();
    expect(made.lining).toMatchObject({ ok: true, value: { parts: [], skirtFigures: null } });
    expect(new Set(made.parts.map(({ group }) => group))).toEqual(new Set(["bodice", "facing"]));
    expect(new Set(made.checks.map(({ name }) => name))).toEqual(new Set(["facingsWalk"]));
  });
});

describe("what is cut", () => {
  it("is the shell, its underlining, the lining and the edges, in that order, and the cloths as they come", () => {
    const made = dressed(
      workOf({
        ...LEVELLED,
        opacity: "clear",
        under: "underlining",
        lining: { skirt: true },
        edges: { neck: "binding", armhole: "facing" },
      }),
    );
    expect([...new Set(made.parts.map(({ group }) => group))]).toEqual([
      "bodice",
      "skirt",
      "underlining",
      "skirtLining",
      "facing",
      "binding",
    ]);
    expect(made.cloths).toEqual(["main", "underlining", "lining", "interfacing"]);
    expect(made.under).toMatchObject({ recommended: "underlining", chosen: "underlining", isThere: true });
  });

  it("is no facing where the bodice is lined, though its lining could not be made", () => {
    const lined = dressed(workOf({ lining: { bodice: true } }));
    expect(lined.edges.edges.map(({ finish }) => finish)).toEqual(lined.edges.edges.map(() => "lining"));
    expect([...new Set(lined.parts.map(({ group }) => group))]).toEqual(["bodice", "bodiceLining"]);
    // A lining of the skirt alone leaves the edges as they are.
    const half = dressed(workOf({ ...LEVELLED, lining: { skirt: true } }));
    expect(half.edges.facing).not.toBeNull();
    const tapes = tapesOf({ bustGirth: 905, waistGirth: 752 });
    const pattern = { ...testWork.pattern, length: "waist" as const };
    const failed = dressed({
      ...testWork,
      tapes,
      pattern,
      dress: { skirt: { kind: "gathered", length: 500 }, lining: { bodice: true, skirt: true } },
    });
    expect(failed.lining).toEqual({ ok: false, failure: { code: "lining/hip-missing" } });
    expect([...new Set(failed.parts.map(({ group }) => group))]).toEqual(["bodice", "skirt"]);
    expect(failed.checks.filter(({ name }) => name.startsWith("lining"))).toEqual([]);
    expect(failed.closure).not.toBeNull();
  });
});

describe("the bodice that it hangs on", () => {
  it("is the plan's, its basque but where a skirt takes its place, the very same twice where halves are alike", () => {
    const names = (dress: Dress | undefined): readonly string[] =>
      Object.keys(dressed(workOf(dress, { style: "midriff" })).bodice[0]);
    expect(names(undefined)).toContain("backBasque");
    expect(names({ skirt: { kind: "circle" } })).not.toContain("backBasque");
    expect(names({ skirt: { kind: "circle" } })).not.toContain("frontBasque");
    const even = dressed(workOf(LEVELLED));
    expect(even.bodice[1]).toBe(even.bodice[0]);
    const uneven = dressed({
      ...workOf(LEVELLED),
      alterations: [{ kind: "fit", id: "a", fit: "sideSeamWaist", amount: 14, half: "left" }],
    });
    expect(uneven.bodice[1]).not.toBe(uneven.bodice[0]);
    expect(uneven.waist.halves[0].front).not.toBeCloseTo(uneven.waist.halves[1].front, 1);
    expect(Object.keys(uneven.bodice[1])).toEqual(Object.keys(uneven.bodice[0]));
  });

  it("is decided by nothing where no dress is, and is the very same answer for the very same work", () => {
    const work = workOf(undefined);
    expect(dressOf(work)).toBe(dressOf(work));
    expect(dressed(work)).toEqual(dressed(workOf({})));
    const { skirt, lining, under } = dressed(work);
    expect([skirt, lining]).toEqual([null, null]);
    expect(under).toEqual({ recommended: "nothing", chosen: "nothing", isThere: true, showing: [], finishes: [] });
  });

  it("fails as the plan does", () => {
    const broken: Work = { ...workOf(LEVELLED), tapes: tapesOf({}) };
    const plan = planOf(broken);
    expect(plan.ok).toBe(false);
    expect(dressOf(broken)).toEqual(plan);
  });
});
