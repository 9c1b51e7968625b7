/**
 * Every number that a saved dress may hold, at its ends, at nothing and at next to nothing, on bodies of which nothing more is
 * known than the bodice needs: what cannot be made fails by name, and nothing comes to be no number.
 */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutRingOf } from "../../../src/core/cloth/cutRing";
import { cutListOf, prepareLay } from "../../../src/core/cloth/layCloth";
import { lengthToBuy, shrunk } from "../../../src/core/cloth/usualCloth";
import {
  CLOTH_NAMES,
  EDGE_FINISHES,
  NECKLINE_SHAPES,
  SKIRT_KINDS,
  STRAP_KINDS,
  type Cloth,
  type Dress,
} from "../../../src/core/decisions/dress";
import { LIMITS } from "../../../src/core/decisions/limits";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { dressOf } from "../../../src/core/dress/dressOf";
import { tapesOf } from "../../../src/core/measures/tape";
import { badNumbers } from "../../support/faultsOfPlan";
import { testWork } from "../../support/works";

const ENDS = [-LIMITS.length, -1, 0, 1e-9, 1, 20, 30, 400, LIMITS.length] as const;
/** Mostly as it may well be: so that little stops a dress before the awkward number is come to. */
const near = (usual: number): fc.Arbitrary<number> =>
  fc.oneof({ weight: 7, arbitrary: fc.constant(usual) }, { weight: 1, arbitrary: fc.constantFrom(...ENDS) });
const yes = fc.boolean();
/** Each left out or not. */
const some = <T extends object>(all: { readonly [K in keyof T]: fc.Arbitrary<T[K]> }, required: (keyof T)[] = []) =>
  fc.record(all, { requiredKeys: required });

const anyCloth = some<Cloth>({ width: near(1400), length: near(3000), oneWay: yes, fold: yes, shrinkage: near(5) });

const anyDress = some<Dress>({
  measures: some<NonNullable<Dress["measures"]>>({
    waistToHip: near(200),
    waistToFloorFront: near(1040),
    waistToFloorSide: near(1050),
    waistToFloorBack: near(1045),
    shoulderGirth: near(1000),
  }),
  skirt: some<NonNullable<Dress["skirt"]>>(
    {
      kind: fc.constantFrom(...SKIRT_KINDS),
      length: near(600),
      peplumLength: near(160),
      ratio: near(1.6),
      tiers: fc.array(
        some<{ depth: number; ratio: number; widths: number }>({ depth: near(200), ratio: near(1.6), widths: near(2) }),
        {
          minLength: LIMITS.tiers.least,
          maxLength: LIMITS.tiers.most,
        },
      ),
      growing: yes,
      tierCut: fc.constantFrom("even", "wholeWidths"),
      share: near(0.5),
      peplumShare: near(0.75),
      panels: fc.constantFrom(2 as const, 4 as const, 6 as const),
      hipEase: near(50),
      flare: near(7),
      darts: yes,
      vent: near(200),
      hem: near(30),
    },
    ["kind"],
  ),
  lining: some<NonNullable<Dress["lining"]>>({
    bodice: yes,
    skirt: yes,
    bodiceEase: near(10),
    hipEase: near(50),
    hemGirth: near(1150),
    shorter: near(25),
    freeBelow: near(25),
    freeBeside: near(6),
    shaping: fc.constantFrom("darts", "pleats"),
  }),
  neckline: some<NonNullable<Dress["neckline"]>>(
    { shape: fc.constantFrom(...NECKLINE_SHAPES), deeper: near(10), wider: near(5), backDeeper: near(5), pinched: yes },
    ["shape"],
  ),
  straps: some<NonNullable<Dress["straps"]>>(
    { kind: fc.constantFrom(...STRAP_KINDS), width: near(1400), braStrap: near(15), ease: near(0), elastic: yes },
    ["kind"],
  ),
  edges: some<NonNullable<Dress["edges"]>>({
    neck: fc.constantFrom(...EDGE_FINISHES),
    armhole: fc.constantFrom(...EDGE_FINISHES),
    facingDepth: near(60),
    bindingWidth: near(8),
  }),
  cloths: some<NonNullable<Dress["cloths"]>>({ main: anyCloth, lining: anyCloth }),
});

/** mm. Of her who is measured for the bodice alone, and of one who is measured for more. */
const BODIES = [
  { bustGirth: 900, waistGirth: 720 },
  { bustGirth: 900, waistGirth: 720, height: 1680 },
  { bustGirth: 900, waistGirth: 720, hipGirth: 960 },
  { bustGirth: 900, waistGirth: 720, hipGirth: 960, height: 1680 },
] as const;

const anyWork: fc.Arbitrary<Work> = fc
  .record({
    style: fc.constantFrom(...STYLE_NAMES),
    body: fc.constantFrom(...BODIES),
    dress: anyDress,
    place: fc.constantFrom("centreBack" as const, "side" as const),
    belowWaist: fc.constantFrom(0, 180, 5000),
    buttons: fc.constantFrom(undefined, 2, 20),
  })
  .map(({ style, body, dress, place, belowWaist, buttons }) => ({
    ...testWork,
    tapes: tapesOf(body),
    alterations: [],
    dress,
    pattern: {
      ...testWork.pattern,
      style,
      closure: { place, belowWaist, ...(buttons === undefined ? {} : { buttons }) },
    },
  }));

/** What is no number in all that a work comes to, each place once. */
function faultsOf(work: Work): readonly string[] {
  const made = dressOf(work);
  if (!made.ok) return [];
  const dress = made.value;
  const { skirt, lining, edges, closure, waist, body, notions, sewing, checks, parts } = dress;
  const allowances = work.allowances ?? {};
  const lines = cutListOf(parts, allowances, work.pattern.closure, work.dress?.cloths, work.unit);
  const rings = parts.map((part) => cutRingOf(part, allowances).open);
  const lays = CLOTH_NAMES.map((name) =>
    prepareLay({
      name,
      cloth: work.dress?.cloths?.[name] ?? {},
      parts,
      allowances,
      closure: work.pattern.closure,
      unit: work.unit,
    }),
  );
  const bought = Object.values(work.dress?.cloths ?? {}).map((cloth) => [
    lengthToBuy(1000, cloth, work.unit),
    shrunk(1000, cloth),
  ]);
  const all = { skirt, lining, edges, closure, waist, body, notions, sewing, checks, lines, rings, lays };
  return [
    ...new Set([
      ...badNumbers(all).map((path) => `no number: ${path.replaceAll(/\d+/gu, "n")}`),
      ...bought.flatMap(([buy = 0]) => (buy >= 1000 ? [] : [`to buy ${buy}`])),
      ...parts.flatMap((part) =>
        part.kind === "rectangle" && !(part.width > 0 && part.depth > 0) ? [`empty: ${part.key}`] : [],
      ),
      ...lines.flatMap(({ key, width, length }) =>
        width > 0 && length > 0 ? [] : [`not cut: ${key.replaceAll(/\d+/gu, "n")} ${width} ${length}`],
      ),
    ]),
  ];
}

const RUNS = Number(process.env.CHAINS ?? 120);

describe("one awkward number among sound ones", () => {
  const floors = { waistToHip: 200, waistToFloorFront: 1040, waistToFloorBack: 1045 };
  it.each<readonly [string, Dress, number]>([
    [
      "a waist lifted far beyond the hip",
      { measures: { ...floors, waistToFloorSide: 400 }, skirt: { kind: "straight", length: 600 } },
      180,
    ],
    [
      "a waist lowered to the hip",
      { measures: { ...floors, waistToFloorSide: 1235 }, skirt: { kind: "aLine", length: 600, darts: false } },
      180,
    ],
    ["a hip at the waist, fitted", { measures: { waistToHip: 0 }, skirt: { kind: "aLine", length: 600 } }, 180],
    [
      "a hip at the waist, round",
      { measures: { waistToHip: 0 }, skirt: { kind: "circle", length: 600, share: 0.25 } },
      180,
    ],
    [
      "a lining that is free no further than a closure that ends at the waist",
      { skirt: { kind: "straight", length: 600 }, lining: { skirt: true, freeBelow: 0 } },
      0,
    ],
    [
      "a lining that is free less far than that",
      { skirt: { kind: "straight", length: 600 }, lining: { skirt: true, freeBelow: -LIMITS.length } },
      180,
    ],
    [
      "cloth that is washed away",
      { skirt: { kind: "gathered", length: 600, ratio: 2 }, cloths: { main: { shrinkage: 100 } } },
      180,
    ],
  ])("%s", (_, dress, belowWaist) => {
    const closure = { place: "centreBack" as const, belowWaist };
    expect(
      faultsOf({ ...testWork, dress, pattern: { ...testWork.pattern, style: "princessArmhole", closure } }),
    ).toEqual([]);
  });
});

describe("a dress of whatever numbers", () => {
  it("is made, or fails by name", () => {
    const found = fc.sample(anyWork, { seed: 21, numRuns: RUNS }).flatMap((work) => {
      const [fault] = faultsOf(work);
      return fault === undefined ? [] : [`${fault}, of ${JSON.stringify(work.dress)}`];
    });
    expect(found).toEqual([]);
  });
});
