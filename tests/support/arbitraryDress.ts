/** Any dress at all: every choice taken or left, on any style, opening and work of the demos. */
import * as fc from "fast-check";
import {
  EDGE_FINISHES,
  NECKLINE_SHAPES,
  OPACITIES,
  SKIRT_KINDS,
  STRAP_KINDS,
  TIER_CUTS,
  UNDER_NAMES,
  type Dress,
} from "../../src/core/decisions/dress";
import { STYLE_NAMES } from "../../src/core/decisions/pattern";
import type { Work } from "../../src/core/decisions/work";
import { demoWorks } from "../../src/document/demo";

const mm = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });
const optional = <T extends object>(all: { readonly [K in keyof T]: fc.Arbitrary<T[K]> }, required: (keyof T)[] = []) =>
  fc.record(all, { requiredKeys: required });

const anySkirt = optional<NonNullable<Dress["skirt"]>>(
  {
    kind: fc.constantFrom(...SKIRT_KINDS),
    length: mm(350, 900),
    peplumLength: mm(100, 250),
    ratio: fc.double({ min: 1.2, max: 2.5, noNaN: true }),
    tiers: fc.array(
      optional<{ depth: number; ratio: number }>({ depth: mm(80, 160), ratio: fc.constantFrom(1.3, 1.6) }),
      {
        minLength: 2,
        maxLength: 5,
      },
    ),
    growing: fc.boolean(),
    tierCut: fc.constantFrom(...TIER_CUTS),
    share: fc.constantFrom(0.25, 0.5, 0.75, 1),
    peplumShare: fc.constantFrom(0.5, 0.75, 1),
    panels: fc.constantFrom(2 as const, 4 as const, 6 as const),
    hipEase: mm(40, 80),
    flare: mm(4, 10),
    darts: fc.boolean(),
    vent: fc.constantFrom(0, 150, 200),
    hem: mm(10, 50),
    pockets: fc.boolean(),
  },
  ["kind"],
);

export const anyDress: fc.Arbitrary<Dress> = optional<Dress>({
  skirt: anySkirt,
  lining: optional<NonNullable<Dress["lining"]>>({
    bodice: fc.boolean(),
    skirt: fc.boolean(),
    shaping: fc.constantFrom("darts", "pleats"),
    shorter: mm(10, 40),
    freeBelow: mm(10, 40),
  }),
  neckline: optional<NonNullable<Dress["neckline"]>>(
    { shape: fc.constantFrom(...NECKLINE_SHAPES), deeper: mm(0, 40) },
    ["shape"],
  ),
  straps: optional<NonNullable<Dress["straps"]>>(
    { kind: fc.constantFrom(...STRAP_KINDS), width: mm(8, 40), elastic: fc.boolean() },
    ["kind"],
  ),
  edges: optional<NonNullable<Dress["edges"]>>({
    neck: fc.constantFrom(...EDGE_FINISHES),
    armhole: fc.constantFrom(...EDGE_FINISHES),
  }),
  zip: fc.constantFrom("invisible", "lapped"),
  opacity: fc.constantFrom(...OPACITIES),
  under: fc.constantFrom(...UNDER_NAMES),
});

/** Works that a dress is hung on: all demos, in every style, length and opening. */
export const anyDressWork: fc.Arbitrary<Work> = fc
  .record({
    work: fc.constantFrom(...demoWorks()),
    style: fc.constantFrom(...STYLE_NAMES),
    length: fc.constantFrom("waist" as const, "hip" as const),
    place: fc.constantFrom("centreBack" as const, "side" as const),
    belowWaist: fc.constantFrom(0, 120, 180),
    buttons: fc.option(mm(4, 12), { nil: undefined }),
    dress: anyDress,
  })
  .map(({ work, style, length, place, belowWaist, buttons, dress }) => ({
    ...work,
    dress,
    alterations: work.pattern.style === style ? work.alterations : [],
    pattern: {
      ...work.pattern,
      style,
      length,
      closure: { place, belowWaist, ...(buttons === undefined ? {} : { buttons }) },
    },
  }));
