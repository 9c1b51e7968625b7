/** What a skirt, its lining and its cloth know of each other, and checks that fail on either side of what is right. mm. */
import { describe, expect, it } from "vitest";
import { prepareLay } from "../../../src/core/cloth/layCloth";
import type { Dress } from "../../../src/core/decisions/dress";
import type { Work } from "../../../src/core/decisions/work";
import { checkLining } from "../../../src/core/dress/checkLining";
import { checkSkirt } from "../../../src/core/dress/checkSkirt";
import { dartPlaces } from "../../../src/core/dress/dartPlaces";
import { dressOf } from "../../../src/core/dress/dressOf";
import type { DressPlan } from "../../../src/core/dress/dressPlan";
import { mouth, named, straight } from "../../../src/core/pattern/namedEdges";
import type { Piece } from "../../../src/core/pattern/piece";
import type { WaistHalf } from "../../../src/core/parts/dressBody";
import { testWork } from "../../support/works";

const { closure } = testWork.pattern;
const workOf = (dress: Dress, belowWaist = 180): Work => ({
  ...testWork,
  pattern: { ...testWork.pattern, closure: { ...closure, belowWaist } },
  dress,
});

function dressed(work: Work): DressPlan {
  const dress = dressOf(work);
  if (!dress.ok) throw new Error(JSON.stringify(dress.failure));
  return dress.value;
}

describe("getting in through the lining", () => {
  it("is open as much further as its V, and no more: one without ease is too tight at the hip", () => {
    // Open to 150 and 25: from there to her hip, 200 down, it is closed, and no wider than she is where 20 more are needed.
    const { closure: read } = dressed(
      workOf(
        {
          measures: { waistToHip: 200 },
          skirt: { kind: "gathered", length: 600, ratio: 1.8 },
          lining: { skirt: true, hipEase: 0 },
        },
        150,
      ),
    );
    const stepping = read?.ways.find(({ way }) => way === "steppingIn");
    expect(stepping).toMatchObject({ passes: false, tightest: { of: "lining" } });
    expect(stepping?.tightest.lets).toBeLessThan(1034);
    expect(stepping?.tightest.lets).toBeGreaterThan(1020);
  });
});

describe("a circle for folded cloth", () => {
  it("is divided so that it goes on the fold", () => {
    const cloths = { main: { width: 1400, fold: true } };
    const work = workOf({ skirt: { kind: "circle", share: 0.5, length: 600 }, cloths });
    const { parts } = dressed(work);
    const lay = prepareLay({ name: "main", cloth: cloths.main, parts, allowances: {}, closure, unit: "cm" });
    expect(lay.ok ? null : lay.failure).toBeNull();
  });
});

describe("a waist that is off by three tenths of a millimetre", () => {
  const by = (half: WaistHalf, mm: number): WaistHalf => ({ front: half.front + mm, back: half.back + mm });
  const moved = (waist: DressPlan["waist"], mm: number): DressPlan["waist"] => {
    const [left] = waist.halves;
    const half = by(left, mm);
    return { halves: [half, half], whole: waist.whole + 4 * mm };
  };

  it.each([-0.3, 0.3])("by %i fails, of the skirt and of the lining", (mm) => {
    const plan = dressed(
      workOf({ skirt: { kind: "gathered", length: 600, ratio: 1.8 }, lining: { bodice: true, skirt: true } }),
    );
    const { skirt, lining, body, edges, bodice, parts } = plan;
    if (skirt?.ok !== true || lining?.ok !== true) throw new Error("not made");
    const waist = moved(plan.waist, mm);
    const asked = {
      dress: {},
      bodice,
      waist,
      skirt: skirt.value,
      lining: lining.value,
      edges,
      closure,
      reading: plan.closure,
      under: "nothing" as const,
      parts,
      allowances: {},
    };
    expect(checkSkirt(asked, body).find(({ name }) => name === "waistWalks")?.ok).toBe(false);
    const walks = checkLining(asked).filter(({ name }) => name === "liningWaistWalks");
    expect(walks.map(({ ok }) => ok)).toEqual(walks.map(() => false));
    expect(walks.length).toBeGreaterThan(0);
  });
});

describe("where darts of a bodice end at the waist", () => {
  it("is along it from the centre, those before sewn shut", () => {
    // 70, a dart of 30, 50, a dart of 20, 40.
    const at = (x: number, y = 0) => named(x, y, "waist");
    const dart = (name: "waistDart" | "waistDart2") => ({
      name,
      seam: "waist" as const,
      inner: `${name}Inner` as const,
      outer: `${name}Outer` as const,
      apex: `${name}Apex` as const,
      aimsAt: null,
    });
    const piece: Piece = {
      name: "front",
      points: {
        centreNeck: at(0, -300),
        underarm: at(210, -300),
        sideWaist: at(210),
        waistDart2Outer: at(170),
        waistDart2Inner: at(150),
        waistDart2Apex: at(160, -80),
        waistDartOuter: at(100),
        waistDartInner: at(70),
        waistDartApex: at(85, -100),
        centreWaist: at(0),
      },
      edges: [
        straight("centreNeck", "underarm", "neck"),
        straight("underarm", "sideWaist", "side"),
        straight("sideWaist", "waistDart2Outer", "waist"),
        mouth("waistDart2Outer", "waistDart2Inner", "waist", "waistDart2"),
        straight("waistDart2Inner", "waistDartOuter", "waist"),
        mouth("waistDartOuter", "waistDartInner", "waist", "waistDart"),
        straight("waistDartInner", "centreWaist", "waist"),
        straight("centreWaist", "centreNeck", "centre"),
      ],
      darts: [dart("waistDart"), dart("waistDart2")],
      levelLines: [],
      centreOnFold: true,
    };
    const set = { front: piece };
    expect(dartPlaces([set, set])[0].front).toEqual([70, 120]);
  });
});
