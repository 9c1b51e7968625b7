/** Random bodies, styles and chains of up to eight alterations: works as a wearer could make them, for property tests. */
import type { StyleName } from "../../src/core/decisions/pattern";
import type { Alteration } from "../../src/core/decisions/alteration";
import { FIT_NAMES } from "../../src/core/decisions/fitNames";
import * as fc from "fast-check";
import { fitOf } from "../../src/core/alterations/fit/index";
import { tapesOf } from "../../src/core/measures/tape";
import { DART_HOMES } from "../../src/core/pattern/dartNames";
import type { DartName, DartRef, PieceName } from "../../src/core/pattern/piece";
import type { Work } from "../../src/core/decisions/work";
import { anyAmount } from "./amounts";
import { testWork } from "./works";

export const DARTS: Readonly<Record<StyleName, readonly DartRef[]>> = {
  sideDart: darts(
    ["front", "sideDart"],
    ["front", "waistDart"],
    ["back", "waistDart"],
    ["front", "armholeDart"],
    ["front", "frenchDart"],
    ["front", "sideDart2"],
    ["front", "shoulderDart"],
  ),
  midriff: darts(
    ["cup", "underBustDart"],
    ["cup", "underBustDart2"],
    ["cup", "sideDart"],
    ["back", "underBustDart"],
    ["frontBasque", "waistDart"],
  ),
  princessArmhole: darts(["back", "waistDart"], ["backBasque", "waistDart"]),
  princessShoulder: darts(["back", "waistDart"], ["frontBasque", "waistDart"]),
};

function darts(...refs: readonly (readonly [PieceName, DartName])[]): readonly DartRef[] {
  return refs.map(([piece, dart]) => ({ piece, dart }));
}

/** Small mostly, now and then up to the ends of what is ever sensible. */
const share = fc.oneof({ weight: 3, arbitrary: anyAmount(-0.3, 0.3) }, { weight: 1, arbitrary: anyAmount(-1, 1) });

export const anyFit = fc
  .record({
    fit: fc.constantFrom(...FIT_NAMES),
    share,
    half: fc.constantFrom("left" as const, "right" as const, null, null, null),
  })
  .map(({ fit, share: of, half }): Alteration => {
    const { least, most } = fitOf(fit).range;
    const amount = of < 0 ? Math.abs(of) * Math.min(least, 0) : of * most;
    return { kind: "fit", id: `${fit}-${half ?? "both"}`, fit, amount, ...(half === null ? {} : { half }) };
  });

export const anyOnDart = (dart: DartRef): fc.Arbitrary<Alteration> => {
  const on = { dart: fc.constant(dart), giveBack: fc.constant({}) };
  const id = fc.constantFrom("a", "b", "c", "d", "e", "f").map((name) => `${name}-${dart.piece}-${dart.dart}`);
  return fc.oneof(
    fc.record({
      kind: fc.constant("dartEnd" as const),
      id,
      ...on,
      shorten: anyAmount(-20, 40),
      across: anyAmount(-12, 12),
      hold: fc.constantFrom("mouth" as const, "fullness" as const),
    }),
    fc.record({ kind: fc.constant("dartMouth" as const), id, ...on, inner: anyAmount(-6, 8), outer: anyAmount(-6, 8) }),
    fc.record({
      kind: fc.constant("dartPlace" as const),
      id,
      ...on,
      by: anyAmount(-12, 12),
      how: fc.constantFrom("redraw" as const, "offCentreSeam" as const),
    }),
    fc.record({
      kind: fc.constant("dartPivot" as const),
      id,
      dart: fc.constant(dart),
      to: fc.constantFrom(...DART_HOMES),
      share: fc.constantFrom(0.3, 0.5, 1),
    }),
    fc.record({
      kind: fc.constant("dartSplit" as const),
      id,
      dart: fc.constant(dart),
      into: fc.constantFrom(2 as const, 3 as const),
    }),
    fc.record({ kind: fc.constantFrom("dartGather" as const, "dartSeam" as const), id, dart: fc.constant(dart) }),
    fc.record({ kind: fc.constant("dartLegs" as const), id, dart: fc.constant(dart), bow: anyAmount(-7, 7) }),
  );
};

const anyBody = fc.record({
  bust: anyAmount(780, 1140),
  out: anyAmount(20, 150),
  waist: anyAmount(-280, -60),
  hip: anyAmount(-20, 190),
});

export const anyChainWork = (style: StyleName): fc.Arbitrary<Work> =>
  fc
    .record({
      body: anyBody,
      alterations: fc.array(
        fc.oneof(
          { weight: 3, arbitrary: anyFit },
          { weight: 2, arbitrary: fc.constantFrom(...DARTS[style]).chain(anyOnDart) },
        ),
        {
          maxLength: 8,
        },
      ),
      length: fc.constantFrom("waist" as const, "hip" as const),
      strap: fc.constantFrom("thin" as const, "wide" as const),
    })
    .map(({ body, alterations, length, strap }) => ({
      ...testWork,
      tapes: tapesOf({
        bustGirth: body.bust,
        upperChestGirth: body.bust - body.out,
        waistGirth: body.bust + body.waist,
        hipGirth: body.bust + body.hip,
      }),
      pattern: { ...testWork.pattern, style, length, strap },
      alterations: alterations.map((a, index) => ({ ...a, id: `${index}-${a.id}` })),
    }));
