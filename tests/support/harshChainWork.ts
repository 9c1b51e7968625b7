/**
 * Chains harsher than a wearer would make them, but within what a work file can hold: every demo and other charts, amounts
 * up to the ends of their ranges and beyond, the same dart again and again, each half on its own, sizes picked far off.
 */
import { STANDARD_CHARTS } from "../../src/core/chart/standardCharts";
import { FIT_NAMES } from "../../src/core/decisions/fitNames";
import type { Alteration, GiveBack } from "../../src/core/decisions/alteration";
import type { StyleName } from "../../src/core/decisions/pattern";
import type { Work } from "../../src/core/decisions/work";
import { demoWorks } from "../../src/document/demo";
import * as fc from "fast-check";
import { fitOf } from "../../src/core/alterations/fit/index";
import { tapesOf } from "../../src/core/measures/tape";
import { DART_HOMES, DART_NAMES } from "../../src/core/pattern/dartNames";
import type { DartRef } from "../../src/core/pattern/piece";
import { anyAmount } from "./amounts";
import { DARTS } from "./anyChainWork";
import { testWork } from "./works";

/** An amount of a dart: what fingers do, what is far too much, and now and then what only a file can hold. */
const anyLength = fc.oneof(
  { weight: 4, arbitrary: anyAmount(-20, 20) },
  { weight: 4, arbitrary: anyAmount(-150, 150) },
  { weight: 1, arbitrary: fc.constantFrom(-10_000, -1000, 1000, 10_000) },
);

const anyHarshFit = fc
  .record({
    fit: fc.constantFrom(...FIT_NAMES),
    share: fc.oneof(anyAmount(-1, 1), fc.constantFrom(-1, 1)),
    half: fc.constantFrom("left" as const, "right" as const, null),
  })
  .map(({ fit, share, half }): Alteration => {
    const { least, most } = fitOf(fit).range;
    const amount = share < 0 ? Math.abs(share) * Math.min(least, 0) : share * most;
    return { kind: "fit", id: fit, fit, amount, ...(half === null ? {} : { half }) };
  });

const anyGiveBack = fc.constantFrom<GiveBack>({}, {}, { sideSeam: 0.5, otherDart: 0.5 }, { centreSeam: 1 });

function anyHarshOnDart(dart: DartRef): fc.Arbitrary<Alteration> {
  const on = { id: fc.constant(dart.dart), dart: fc.constant(dart) };
  const redraw = { ...on, giveBack: anyGiveBack };
  return fc.oneof(
    fc.record({
      kind: fc.constant("dartEnd" as const),
      ...redraw,
      shorten: anyLength,
      across: anyLength,
      hold: fc.constantFrom("mouth" as const, "fullness" as const),
    }),
    fc.record({ kind: fc.constant("dartMouth" as const), ...redraw, inner: anyLength, outer: anyLength }),
    fc.record({
      kind: fc.constant("dartPlace" as const),
      ...redraw,
      by: anyLength,
      how: fc.constantFrom("redraw" as const, "offCentreSeam" as const),
    }),
    fc.record({
      kind: fc.constant("dartPivot" as const),
      ...on,
      to: fc.constantFrom(...DART_HOMES),
      share: fc.constantFrom(0.01, 0.3, 0.5, 1),
    }),
    fc.record({ kind: fc.constant("dartSplit" as const), ...on, into: fc.constantFrom(2 as const, 3 as const) }),
    fc.record({ kind: fc.constantFrom("dartGather" as const, "dartSeam" as const), ...on }),
    fc.record({ kind: fc.constant("dartLegs" as const), ...on, bow: anyLength }),
  );
}

/** The darts of the style, and now and then any other of the front, which alterations before may have made. */
const anyDart = (style: StyleName): fc.Arbitrary<DartRef> =>
  fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom(...DARTS[style]) },
    { weight: 1, arbitrary: fc.constantFrom(...DART_NAMES).map((dart): DartRef => ({ piece: "front", dart })) },
  );

const PATTERNS: readonly Work["pattern"][] = [
  testWork.pattern,
  ...demoWorks().map(({ pattern }) => pattern),
  ...STANDARD_CHARTS.map(({ sizes }) => ({
    ...testWork.pattern,
    chart: {
      ...testWork.pattern.chart,
      sizes: sizes.map(({ bust, waist, hip }, index) => ({ label: String(index + 1), bust, waist, hip })),
    },
  })),
];

/** Up to sixteen alterations. */
export const harshChainWork = (style: StyleName): fc.Arbitrary<Work> =>
  fc
    .record({
      pattern: fc.constantFrom(...PATTERNS),
      bust: anyAmount(740, 1300),
      out: anyAmount(-20, 200),
      waist: anyAmount(-320, 0),
      hip: anyAmount(-60, 240),
      // All on one dart, or on any.
      alterations: fc.oneof(
        anyDart(style).chain((dart) => fc.array(anyHarshOnDart(dart), { minLength: 2, maxLength: 16 })),
        fc.array(fc.oneof(anyHarshFit, anyDart(style).chain(anyHarshOnDart)), { minLength: 1, maxLength: 16 }),
      ),
      length: fc.constantFrom("waist" as const, "hip" as const),
      strap: fc.constantFrom("thin" as const, "wide" as const),
      bustAlteration: fc.option(anyAmount(-120, 150), { nil: null, freq: 3 }),
      waistPick: fc.option(anyAmount(-2, 8), { nil: null, freq: 3 }),
    })
    .map(({ pattern, bust, out, waist, hip, alterations, length, strap, bustAlteration, waistPick }) => ({
      ...testWork,
      tapes: tapesOf({
        bustGirth: bust,
        upperChestGirth: bust - out,
        waistGirth: bust + waist,
        hipGirth: bust + hip,
      }),
      pattern: { ...pattern, style, length, strap },
      picks: {
        ...(bustAlteration === null ? {} : { bustAlteration }),
        ...(waistPick === null ? {} : { waist: waistPick }),
      },
      alterations: alterations.map((a, index) => ({ ...a, id: `${index}-${a.id}` })),
    }));
