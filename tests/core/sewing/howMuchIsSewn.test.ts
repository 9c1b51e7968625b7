/** Seams, how many of each and how long, and what is bought for them: reckoned by hand from what the dress is asked to be. mm. */
import { describe, expect, it } from "vitest";
import type { Dress } from "../../../src/core/decisions/dress";
import type { StyleName } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { dressOf } from "../../../src/core/dress/dressOf";
import type { DressPlan } from "../../../src/core/dress/dressPlan";
import type { ClosureReading } from "../../../src/core/opening/gettingIn";
import { notionsOf } from "../../../src/core/sewing/notionsOf";
import type { SewingAsked } from "../../../src/core/sewing/sewingAsked";
import type { SewingStep, SewingStepName } from "../../../src/core/sewing/sewingStep";
import { invariant } from "../../../src/core/result";
import { seamByBezierJs } from "../../support/independent";
import { testWork } from "../../support/works";

const workOf = (dress: Dress, more: Partial<Work["pattern"]> = {}, rest: Partial<Work> = {}): Work => ({
  ...testWork,
  ...rest,
  pattern: { ...testWork.pattern, ...more },
  dress,
});

function dressed(work: Work): DressPlan {
  const dress = dressOf(work);
  if (!dress.ok) throw new Error(JSON.stringify(dress.failure));
  return dress.value;
}

const stepOf = ({ sewing }: DressPlan, name: SewingStepName): SewingStep =>
  invariant(
    sewing.find((step) => step.name === name),
    name,
  );

const seamsOf = (dress: DressPlan, name: SewingStepName, seam: string) =>
  stepOf(dress, name).seams.filter((one) => one.seam === seam);

/** Of a plain bodice with an opening of 400, which would have to be 520. */
function notions(reading: Partial<ClosureReading>) {
  const plan = dressed(workOf({}));
  const asked: SewingAsked = {
    dress: {},
    bodice: plan.bodice,
    waist: plan.waist,
    skirt: null,
    lining: null,
    edges: plan.edges,
    closure: testWork.pattern.closure,
    reading: { ...invariant(plan.closure, "closure"), opening: 400, leastOpening: 520, ...reading },
    under: "nothing",
    parts: plan.parts,
    allowances: {},
  };
  return notionsOf(asked);
}

describe("what is bought", () => {
  it("is a zip for the opening, or for the least that lets her in, and tape for both of its sides", () => {
    const lengths = (passes: boolean) =>
      notions({ passes }).flatMap(({ what, length }) =>
        what === "zip" || what === "washAwayTape" ? [[what, length]] : [],
      );
    expect(lengths(true)).toEqual([
      ["zip", 400],
      ["washAwayTape", 800],
    ]);
    expect(lengths(false)[0]).toEqual(["zip", 520]);
  });

  it("is elastic for both straps: nine tenths of the 100 it is worn at, and 10 at each end", () => {
    const { notions: bought } = dressed(workOf({ straps: { kind: "plain", elastic: true } }, { style: "midriff" }));
    const [elastic] = bought.filter(({ what }) => what === "elastic");
    expect([elastic?.count, elastic?.length]).toEqual([2, 110]);
  });
});

describe("how many are cut", () => {
  const countsOf = (style: StyleName, half?: "left") =>
    dressed(
      workOf(
        {},
        { style },
        half === undefined ? {} : { alterations: [{ kind: "fit", id: "a", fit: "sideSeamWaist", amount: 8, half }] },
      ),
    );

  it("four of a strap of two layers", () => {
    const [strap] = countsOf("midriff").parts.filter(({ group }) => group === "strap");
    expect(strap?.cut).toEqual({ onFold: false, count: 4 });
  });

  it("one of each where halves differ", () => {
    const apart = countsOf("sideDart", "left").parts.filter(({ group, half }) => group === "bodice" && half !== null);
    expect(apart.length).toBeGreaterThan(1);
    expect(apart.map(({ cut }) => cut.count)).toEqual(apart.map(() => 1));
  });
});

describe("seams of the skirt", () => {
  const measures = { waistToHip: 200, waistToFloorFront: 1030, waistToFloorSide: 1050, waistToFloorBack: 1060 };

  it("are both sides of a vent, and a hem of its own allowance", () => {
    const dress = dressed(workOf({ measures, skirt: { kind: "straight", length: 600, vent: 200, hem: 42 } }));
    expect(stepOf(dress, "vent").length).toBe(400);
    expect(stepOf(dress, "hemShell").allowance).toBe(42);
    expect(dress.checks.filter(({ name, ok }) => name === "hemLevel" && !ok)).toEqual([]);
  });

  it.each([
    // 1060 − 1050 longer behind than at the side.
    ["centreBack", 610 - 180],
    ["side", 600 - 180],
  ] as const)("below an opening at the %s go on to the hem there", (place, below) => {
    const dress = dressed(
      workOf(
        { measures, skirt: { kind: "gathered", length: 600, ratio: 1.8 } },
        { closure: { place, belowWaist: 180 } },
      ),
    );
    expect(stepOf(dress, "seamBelowOpening").length).toBeCloseTo(below, 6);
  });
});

describe("a shoulder with ease behind", () => {
  it("is as long as its front, on to which the back is held", () => {
    const dress = dressed(workOf({}));
    const [pieces] = dress.bodice;
    const along = (name: "front" | "back") => seamByBezierJs(invariant(pieces[name], name), "shoulder");
    expect(along("back")).toBeGreaterThan(along("front") + 1);
    const [seam] = seamsOf(dress, "shoulderSeams", "shoulder");
    expect([seam?.count, seam?.length]).toEqual([2, expect.closeTo(along("front"), 2)]);
  });
});

describe("seams of the lining", () => {
  const skirt = { kind: "gathered", length: 600, ratio: 1.8 } as const;

  it("by hand go along the zip as far as there is a lining: of the bodice alone down to the waist", () => {
    const dress = dressed(workOf({ skirt, lining: { bodice: true } }));
    expect(stepOf(dress, "handSewLining").length).toBeCloseTo(
      2 * (invariant(dress.closure, "closure").opening - 180),
      6,
    );
    const both = dressed(workOf({ skirt, lining: { bodice: true, skirt: true } }));
    expect(stepOf(both, "handSewLining").length).toBeCloseTo(2 * invariant(both.closure, "closure").opening, 6);
  });

  it("at the waist keep 6 from the zip on either side, and behind begin 25 below its end", () => {
    const dress = dressed(workOf({ skirt, lining: { skirt: true } }));
    expect(stepOf(dress, "liningSkirtToWaist").length).toBeCloseTo(dress.waist.whole - 12, 6);
    const { lining } = dress;
    if (lining?.ok !== true) throw new Error("no lining");
    const [centre] = seamsOf(dress, "liningSkirtSeams", "centre");
    const back = invariant(lining.value.skirtFigures, "lined skirt").lengths.back;
    expect(centre?.length).toBeCloseTo(back - (180 + 25), 1);
  });
});

describe("seams of facings", () => {
  it("are two of each shoulder, side and armhole where the halves are alike", () => {
    const dress = dressed(workOf({ edges: { facingDepth: 50 } }));
    // Of the neck's facing and of the armhole's.
    expect(seamsOf(dress, "facingSeams", "shoulder").map(({ count }) => count)).toEqual([2, 2]);
    const armholes = dress.sewing.flatMap(({ name, seams }) =>
      name === "faceTopEdge" || name === "faceArmholes" ? seams.filter(({ seam }) => seam === "armhole") : [],
    );
    expect(armholes.map(({ count }) => count)).toEqual([2]);
  });
});
