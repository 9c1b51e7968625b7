/**
 * Every skirt on random bodies and on the bodices of random plans: it is made as asked or refused by name. What is made is
 * measured on what is cut by a library that shares no code with it.
 */
import type { Skirt } from "../../../src/core/decisions/dress";
import { SKIRT_KINDS } from "../../../src/core/decisions/dress";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import { dressOf } from "../../../src/core/dress/dressOf";
import type { FinishedWaist } from "../../../src/core/parts/dressBody";
import { cutWidth, type Part } from "../../../src/core/parts/part";
import { piecesOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import type { PieceName, SeamName } from "../../../src/core/pattern/piece";
import { draftSkirt } from "../../../src/core/skirts/draftSkirt";
import type { SkirtAsked, SkirtDraft } from "../../../src/core/skirts/skirtDraft";
import { SELVAGE } from "../../../src/core/skirts/skirtPractice";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyAmount } from "../../support/amounts";
import { anyChainWork } from "../../support/anyChainWork";
import { crossesItself, seamByBezierJs } from "../../support/independent";
import { sectorWidthByChords, waistByChords } from "../../support/skirts";

const RUNS = 250;
const PLANS = 15;
/** ms. A busy machine is slow. */
const PATIENCE = 120_000;
/** Claims about the skirt; what she gets into is held elsewhere. */
const OURS: ReadonlySet<string> = new Set(["waistWalks", "skirtSidesWalk", "tiersGather", "hemLevel"]);
/** mm. What is sewn together agrees to this, and a hem is level to the second. */
const SEWN = 0.05;
const LEVEL = 2;
/** mm. A round skirt is as wide as the hip at its depth where it is of one length all round; a level hem moves that a little. */
const ROUND_SLACK = 40;

const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });

const anySkirt: fc.Arbitrary<Skirt> = fc
  .record({
    kind: fc.constantFrom(...SKIRT_KINDS),
    length: maybe(anyAmount(300, 1100)),
    peplumLength: maybe(anyAmount(60, 380)),
    ratio: maybe(anyAmount(1, 3.5)),
    tiers: maybe(
      fc.array(
        fc.record({
          ratio: maybe(anyAmount(1, 2.5)),
          depth: maybe(anyAmount(60, 400)),
          widths: maybe(fc.integer({ min: 1, max: 6 })),
        }),
        {
          minLength: 2,
          maxLength: 5,
        },
      ),
    ),
    growing: maybe(fc.boolean()),
    tierCut: maybe(fc.constantFrom("even" as const, "wholeWidths" as const)),
    share: maybe(anyAmount(0.25, 2)),
    peplumShare: maybe(anyAmount(0.25, 2)),
    panels: maybe(fc.constantFrom(2 as const, 4 as const, 6 as const)),
    hipEase: maybe(anyAmount(20, 120)),
    flare: maybe(anyAmount(0, 20)),
    darts: maybe(fc.boolean()),
    vent: maybe(anyAmount(0, 300)),
    hem: maybe(anyAmount(10, 60)),
  })
  .map((skirt): Skirt => {
    const { tiers, ...given } = defined(skirt);
    return tiers === undefined ? given : { ...given, tiers: tiers.map(defined) };
  });

type Defined<T> = { [K in keyof T]: Exclude<T[K], undefined> };

/** What is undefined is not there at all. */
function defined<T extends object>(value: T): Defined<T>;
function defined(value: object): object {
  return Object.fromEntries(Object.entries(value).filter(([, given]) => given !== undefined));
}

const anyFloor = maybe(
  fc.record({ side: anyAmount(900, 1150), front: anyAmount(-35, 35), back: anyAmount(-35, 35) }),
).map((floor) =>
  floor === undefined ? null : { side: floor.side, front: floor.side + floor.front, back: floor.side + floor.back },
);

const anyWaist: fc.Arbitrary<FinishedWaist> = fc
  .record({ quarter: anyAmount(140, 300), off: anyAmount(-25, 25), uneven: maybe(anyAmount(-12, 12)) })
  .map(({ quarter, off, uneven }) => {
    const left = { front: quarter + off, back: quarter - off };
    const right = uneven === undefined ? left : { front: left.front + uneven, back: left.back - uneven / 3 };
    return { halves: [left, right], whole: left.front + left.back + right.front + right.back };
  });

const anyAsked: fc.Arbitrary<SkirtAsked> = fc
  .record({
    skirt: anySkirt,
    waist: anyWaist,
    overWaist: anyAmount(-40, 420),
    hipDepth: anyAmount(150, 260),
    toFloor: anyFloor,
    place: fc.constantFrom("centreBack" as const, "side" as const),
    belowWaist: anyAmount(0, 300),
    clothWidth: fc.constantFrom(900, 1100, 1140, 1400, 1500),
  })
  .map(({ skirt, waist, overWaist, hipDepth, toFloor, place, belowWaist, clothWidth }) => ({
    skirt,
    waist,
    body: {
      waist: waist.whole - 30,
      bust: 900,
      hip: waist.whole + overWaist,
      height: 1650,
      hipDepth,
      isHipDepthUsual: false,
      toFloor,
      shoulderGirth: null,
    },
    closure: { place, belowWaist },
    allowances: {},
    clothWidth,
  }));

const along = (set: PieceSet, names: readonly PieceName[], seam: SeamName): number =>
  names.reduce((sum, name) => sum + (set[name] === undefined ? 0 : seamByBezierJs(set[name], seam)), 0);

const FRONT = ["skirtFront", "skirtSideFront"] as const;
const BACK = ["skirtBack", "skirtSideBack"] as const;

/** All that is wrong with a skirt, in words. */
function faultsOf(draft: SkirtDraft, { waist, body, clothWidth, skirt, closure }: SkirtAsked): readonly string[] {
  const faults: string[] = [];
  const hold = (what: string, measured: number, expected: number, within: number) => {
    if (!(Math.abs(measured - expected) <= within)) faults.push(`${what}: ${measured}, not ${expected}`);
  };
  const atLeast = (what: string, measured: number, least: number) => {
    if (!(measured >= least - SEWN)) faults.push(`${what}: ${measured}, less than ${least}`);
  };
  const isFitted = draft.kind === "aLine" || draft.kind === "straight";
  if (isFitted) {
    for (const [at, set] of draft.halves.entries()) {
      const half = waist.halves[at] ?? waist.halves[0];
      hold("front waist", along(set, FRONT, "waist"), half.front, SEWN);
      hold("back waist", along(set, BACK, "waist"), half.back, SEWN);
      hold("sides", along(set, FRONT, "side"), along(set, BACK, "side"), SEWN);
      hold("front panels", along(set, ["skirtFront"], "panel"), along(set, ["skirtSideFront"], "panel"), SEWN);
      hold("back panels", along(set, ["skirtBack"], "panel"), along(set, ["skirtSideBack"], "panel"), SEWN);
      hold("centre front", along(set, ["skirtFront"], "centre"), draft.lengths.front, SEWN);
      hold("centre back", along(set, ["skirtBack"], "centre") + (draft.vent ?? 0), draft.lengths.back, SEWN);
      hold("side", along(set, FRONT, "side"), draft.lengths.side, SEWN);
      for (const piece of piecesOf(set)) if (crossesItself(piece)) faults.push(`${piece.name} crosses itself`);
    }
    if ((draft.halves[0] === draft.halves[1]) !== (waist.halves[0] === waist.halves[1])) faults.push("halves alike");
    hold(
      "hem",
      draft.halves.reduce(
        (sum, set) => sum + piecesOf(set).reduce((all, piece) => all + seamByBezierJs(piece, "hem"), 0),
        0,
      ) - (draft.vent === undefined ? 0 : 100),
      draft.hem,
      1,
    );
  } else hold("waist", roundWaist(draft), waist.whole, SEWN);
  if (body.toFloor !== null && draft.kind !== "peplum") {
    const { front, side, back } = body.toFloor;
    hold("hem in front", front - draft.lengths.front, side - draft.lengths.side, LEVEL);
    hold("hem behind", back - draft.lengths.back, side - draft.lengths.side, LEVEL);
  }
  // At the hip line, which is level, it goes round her with its ease, but for one that ends above it.
  const last = draft.levels.at(-1)?.below ?? 0;
  const hip = body.hipDepth + (closure.place === "centreBack" ? draft.lengths.back - draft.lengths.side : 0);
  const at = hip + (isFitted ? 0 : ROUND_SLACK);
  if (last >= at && body.hip !== null) atLeast("hip", girthAt(draft, at), body.hip + (skirt.hipEase ?? 50));
  hold("girth at the waist", draft.levels[0]?.girth ?? 0, waist.whole, SEWN);
  hold("girth at the hem", draft.levels.at(-1)?.girth ?? 0, draft.hem, SEWN);
  for (const [i, { below }] of draft.levels.entries()) {
    if (below < (draft.levels[i - 1]?.below ?? 0)) faults.push("levels out of order");
  }
  for (const part of draft.parts) {
    const across = widthOf(part);
    if (across > clothWidth - 2 * SELVAGE + SEWN) faults.push(`${part.key} is ${across} wide`);
  }
  if (new Set(draft.parts.map(({ key }) => key)).size !== draft.parts.length) faults.push("one key twice");
  return faults;
}

function roundWaist({ parts, tiers }: SkirtDraft): number {
  if (tiers !== undefined) return tiers[0]?.gatheredTo ?? 0;
  return parts.reduce(
    (sum, part) => sum + (part.kind === "sector" ? part.cut.count * waistByChords(part) - 2 * (part.slash ?? 0) : 0),
    0,
  );
}

/** Of what does not go through the paper. */
const widthOf = (part: Part): number =>
  part.kind === "rectangle" ? cutWidth(part) : part.kind === "sector" ? sectorWidthByChords(part) : 0;

/** The least at a depth, even between two levels. */
function girthAt({ levels }: SkirtDraft, below: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [i, to] of levels.entries()) {
    const from = levels[i - 1];
    if (from === undefined || below < from.below || below > to.below) continue;
    const share = to.below === from.below ? 1 : (below - from.below) / (to.below - from.below);
    least = Math.min(least, from.girth + share * (to.girth - from.girth));
  }
  return least;
}

describe("any skirt on any body", () => {
  it(
    "has the bodice's waist, seams that meet, a level hem and parts that the cloth has room for, or is refused by name",
    () => {
      let made = 0;
      fc.assert(
        fc.property(anyAsked, (asked) => {
          const draft = draftSkirt(asked);
          if (!draft.ok) return;
          made += 1;
          expect(faultsOf(draft.value, asked)).toEqual([]);
        }),
        { numRuns: RUNS },
      );
      // Bodies and choices are drawn wide; still most can be made.
      expect(made).toBeGreaterThan(RUNS / 2);
    },
    PATIENCE,
  );

  it.each(STYLE_NAMES)(
    "hangs on the finished bodice of any plan: %s",
    (style) => {
      fc.assert(
        fc.property(
          anyChainWork(style),
          anySkirt,
          fc.constantFrom("centreBack" as const, "side" as const),
          (work, skirt, place) => {
            const closure = { place, belowWaist: 180 };
            const dress = dressOf({ ...work, pattern: { ...work.pattern, closure }, dress: { skirt } });
            if (!dress.ok || dress.value.skirt?.ok !== true) return;
            const { waist, body, bodice, checks } = dress.value;
            const asked = { skirt, waist, body, closure, allowances: {}, clothWidth: 1400 };
            expect(faultsOf(dress.value.skirt.value, asked)).toEqual([]);
            expect(checks.filter(({ name, ok }) => !ok && OURS.has(name))).toEqual([]);
            // The waist is the bodice's own, measured apart.
            for (const [at, set] of bodice.entries()) {
              const half = waist.halves[at] ?? waist.halves[0];
              expect(along(set, ["front", "centreFront", "sideFront", "frontBand"], "waist")).toBeCloseTo(
                half.front,
                2,
              );
              expect(along(set, ["back", "backBand"], "waist")).toBeCloseTo(half.back, 2);
            }
          },
        ),
        { numRuns: PLANS },
      );
    },
    PATIENCE,
  );
});
