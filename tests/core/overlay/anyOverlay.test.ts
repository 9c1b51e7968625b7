/**
 * Strips of random bodies, styles and alterations, judged by libraries of others: nothing that changed is left out, all
 * of a strip lies on its paper, and it is laid on by points that are printed.
 */
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import type { Alteration, Half } from "../../../src/core/decisions/alteration";
import { FIT_NAMES } from "../../../src/core/decisions/fitNames";
import { Point, Polygon } from "@flatten-js/core";
import { Bezier } from "bezier-js";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitOf } from "../../../src/core/alterations/fit/index";
import { dartCapOf } from "../../../src/core/dart/dartCap";
import { legsOf } from "../../../src/core/dart/bowedLegs";
import type { EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import { tapesOf } from "../../../src/core/measures/tape";
import { overlayOf } from "../../../src/core/overlay/overlayOf";
import type { Overlay, Patch } from "../../../src/core/overlay/overlay";
import { pointOf, type Piece } from "../../../src/core/pattern/piece";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import type { Plan } from "../../../src/core/plan/plan";
import type { Work } from "../../../src/core/decisions/work";
import { demoWorks } from "../../../src/document/demo";
import { anyAmount } from "../../support/amounts";
import { testWork } from "../../support/works";

/** How many plans of each style; more by hand, to look for what is rare. */
const RUNS = Number(process.env.CHAINS ?? 10);

/** Longer side of what a printer that leaves 10 mm white puts on Letter, A4 and A3. */
const PAGES = [259.4, 277, 400];

const TOLERANCE = 0.5;
/** What looking for the nearest place may be out, mm. */
const LOOKED = 0.02;

interface Place {
  readonly x: number;
  readonly y: number;
}
type Curve = EdgeCurve<"piece">;

/**
 * Distance from a place to a line or a curve: bezier-js for curves, looked at again in ever smaller steps about what it
 * finds, since its own steps are a tenth of a millimetre; the foot of the square for straight ones.
 */
function distanceTo({ a, b, curve }: Curve, p: Place): number {
  if (curve !== null) {
    const bezier = new Bezier(a, curve.c1, curve.c2, b);
    let { t = 0, d = Infinity } = bezier.project(p);
    for (let step = 0.002; step > 1e-6; step /= 2) {
      for (const near of [t - step, t + step].filter((one) => one >= 0 && one <= 1)) {
        const at = bezier.get(near);
        const off = Math.hypot(at.x - p.x, at.y - p.y);
        if (off < d) [t, d] = [near, off];
      }
    }
    return d;
  }
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
  return Math.hypot(a.x + t * dx - p.x, a.y + t * dy - p.y);
}

/** No more than the distance to a curve: that to the box of its ends and controls, which it does not leave. */
function atLeast({ a, b, curve }: Curve, { x, y }: Place): number {
  const [c1, c2] = curve === null ? [a, b] : [curve.c1, curve.c2];
  const dx = Math.max(Math.min(a.x, b.x, c1.x, c2.x) - x, 0, x - Math.max(a.x, b.x, c1.x, c2.x));
  const dy = Math.max(Math.min(a.y, b.y, c1.y, c2.y) - y, 0, y - Math.max(a.y, b.y, c1.y, c2.y));
  return Math.hypot(dx, dy);
}

const nearest = (curves: readonly Curve[], p: Place): number =>
  curves.reduce(
    (least, curve) => (atLeast(curve, p) >= least ? least : Math.min(least, distanceTo(curve, p))),
    Infinity,
  );

function placesAlong({ a, b, curve }: Curve, count = 24): readonly Place[] {
  const bezier = curve === null ? null : new Bezier(a, curve.c1, curve.c2, b);
  return Array.from(
    { length: count + 1 },
    (_, i) => bezier?.get(i / count) ?? { x: a.x + ((b.x - a.x) * i) / count, y: a.y + ((b.y - a.y) * i) / count },
  );
}

const seamsOf = (piece: Piece) =>
  piece.edges
    .filter(({ mouthOf }) => mouthOf === null)
    .map((edge) => ({
      seam: edge.seam,
      curve: { a: pointOf(piece, edge.from), b: pointOf(piece, edge.to), curve: edge.curve },
    }));

const capsOf = (piece: Piece) =>
  piece.darts.flatMap(({ name, seam }) =>
    dartCapOf(piece, name)
      .halves.flat()
      .map((curve) => ({ seam, curve })),
  );

const legsIn = (piece: Piece) =>
  piece.darts
    .filter(({ gathered }) => gathered !== true)
    .flatMap(({ name }) => {
      const { inner, outer } = legsOf(piece, name);
      return [inner, outer].map(({ curve }) => ({ dart: name, curve }));
    });

/** Every place of the final seams, caps and legs that is off the same seam or dart as printed and on no strip. */
function leftOut(final: Piece, printed: Piece, patches: readonly Patch[]): readonly Place[] {
  const drawn = patches.flatMap(({ changed }) => changed.flatMap(({ edges }) => edges));
  const printedSeams = [...seamsOf(printed), ...capsOf(printed)];
  const printedLegs = legsIn(printed);
  const missing = (curve: Curve, old: readonly Curve[]): readonly Place[] =>
    placesAlong(curve).filter((p) => nearest(old, p) > TOLERANCE + LOOKED && nearest(drawn, p) > LOOKED);
  return [
    ...[...seamsOf(final), ...capsOf(final)].flatMap(({ seam, curve }) =>
      missing(
        curve,
        printedSeams.filter((one) => one.seam === seam).map((one) => one.curve),
      ),
    ),
    ...legsIn(final).flatMap(({ dart, curve }) =>
      missing(
        curve,
        printedLegs.filter((one) => one.dart === dart).map((one) => one.curve),
      ),
    ),
  ];
}

const finals = (plan: Plan): readonly { readonly final: Piece; readonly halves: readonly (Half | null)[] }[] => [
  ...plan.left.pieces.map((final) => ({ final, halves: [null, "left"] as const })),
  ...plan.right.pieces.map((final) => ({ final, halves: [null, "right"] as const })),
];

const printedFor = (plan: Plan, { tissue }: Pick<Patch, "tissue">): Piece | undefined =>
  plan.printed.find(({ name }) => name === tissue);

/** What is wrong with the strips of a plan, a line each; none where all is well. */
function faultsOf(plan: Plan, overlay: Overlay, longest: number): readonly string[] {
  const { patches, same, tooMuch } = overlay;
  const unseen = finals(plan).flatMap(({ final, halves }) => {
    const isOf = (one: { readonly piece: string; readonly half: Half | null }): boolean =>
      one.piece === final.name && halves.includes(one.half);
    const own = patches.filter(isOf);
    if (tooMuch.some(isOf)) return own.length === 0 ? [] : [`${final.name} is too much and has strips`];
    if (own.length === 0 && !same.some(isOf)) return [`${final.name} is not told`];
    const printed =
      plan.printed.find(({ name }) => name === (own[0]?.tissue ?? final.name)) ??
      plan.printed.find(({ name }) => name === "front");
    if (printed === undefined) return [`${final.name} is not printed`];
    return leftOut(final, printed, own).map(({ x, y }) => `${final.name} left out at ${x.toFixed(1)}, ${y.toFixed(1)}`);
  });
  return [...unseen, ...patches.flatMap((patch) => stripFaults(plan, patch, longest))];
}

function stripFaults(plan: Plan, patch: Patch, longest: number): readonly string[] {
  const { key, ring, layOn, changed, baseSize, neighbours, title } = patch;
  const paper = new Polygon(ring.map(({ x, y }): [number, number] => [x, y]));
  const isOn = (p: Place): boolean =>
    paper.contains(new Point(p.x, p.y)) || paper.distanceTo(new Point(p.x, p.y))[0] < 1e-3;
  const lines = [...changed, ...baseSize, ...neighbours].flatMap(({ edges }) =>
    edges.flatMap((edge) => placesAlong(edge)),
  );
  const printed = printedFor(plan, patch);
  const [xs, ys] = [ring.map(({ x }) => x), ring.map(({ y }) => y)];
  const reach = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
  const apart = Math.max(
    ...layOn.flatMap(({ at }) => layOn.map((other) => Math.hypot(at.x - other.at.x, at.y - other.at.y))),
  );
  const [cos, sin] = [Math.cos(title.turn), Math.sin(title.turn)];
  const inTitle = ({ x, y }: Place): boolean => {
    const [dx, dy] = [x - title.centre.x, y - title.centre.y];
    return Math.abs(dx * cos + dy * sin) < title.width / 2 && Math.abs(dy * cos - dx * sin) < title.height / 2;
  };
  return [
    ...(lines.every(isOn) ? [] : [`${key}: a line runs off its paper`]),
    ...(layOn.every(({ at }) => isOn(at)) ? [] : [`${key}: a lay-on point is off its paper`]),
    ...(layOn.every(({ name, at }) => printed?.points[name]?.at.x === at.x && printed.points[name].at.y === at.y)
      ? []
      : [`${key}: a lay-on point is not printed`]),
    ...(layOn.length >= 2 && apart >= 60 ? [] : [`${key}: it can turn, its points are ${apart} apart`]),
    ...(reach <= longest + 1e-6 ? [] : [`${key}: it is ${reach} long`]),
    ...(lines.some(inTitle) || layOn.some(({ at }) => inTitle(at)) ? [`${key}: a line runs through its words`] : []),
  ];
}

const share = fc.oneof({ weight: 3, arbitrary: anyAmount(-0.3, 0.3) }, { weight: 1, arbitrary: anyAmount(-1, 1) });

const anyFit = fc
  .record({
    fit: fc.constantFrom(...FIT_NAMES),
    share,
    half: fc.constantFrom("left" as const, "right" as const, null, null),
  })
  .map(({ fit, share: of, half }): Alteration => {
    const { least, most } = fitOf(fit).range;
    const amount = of < 0 ? Math.abs(of) * Math.min(least, 0) : of * most;
    return { kind: "fit", id: `${fit}-${half ?? "both"}`, fit, amount, ...(half === null ? {} : { half }) };
  });

const anyWaistDart = fc.record({
  piece: fc.constantFrom("front" as const, "back" as const),
  dart: fc.constantFrom("waistDart" as const, "sideDart" as const),
});
const anyOnDart = fc.oneof(
  fc.record({
    kind: fc.constant("dartMouth" as const),
    id: fc.constant("m"),
    dart: anyWaistDart,
    inner: anyAmount(-6, 8),
    outer: anyAmount(-6, 8),
    giveBack: fc.constant({}),
  }),
  fc.record({
    kind: fc.constant("dartLegs" as const),
    id: fc.constant("l"),
    dart: anyWaistDart,
    bow: anyAmount(-6, 6),
  }),
  fc.record({ kind: fc.constant("dartGather" as const), id: fc.constant("g"), dart: anyWaistDart }),
  fc.record({
    kind: fc.constant("dartEnd" as const),
    id: fc.constant("e"),
    dart: anyWaistDart,
    shorten: anyAmount(-20, 40),
    across: anyAmount(-12, 12),
    hold: fc.constantFrom("mouth" as const, "fullness" as const),
    giveBack: fc.constant({}),
  }),
);

const anyWork = fc
  .record({
    style: fc.constantFrom(...STYLE_NAMES),
    body: fc.record({
      bust: anyAmount(780, 1140),
      out: anyAmount(20, 150),
      waist: anyAmount(-280, -60),
      hip: anyAmount(-20, 190),
    }),
    alterations: fc.array(fc.oneof({ weight: 3, arbitrary: anyFit }, { weight: 2, arbitrary: anyOnDart }), {
      maxLength: 3,
    }),
    length: fc.constantFrom("waist" as const, "hip" as const),
    bustLeft: fc.boolean(),
  })
  .map(({ style, body, alterations, length, bustLeft }): Work => ({
    ...testWork,
    tapes: tapesOf({
      bustGirth: body.bust,
      upperChestGirth: body.bust - body.out,
      waistGirth: body.bust + body.waist,
      hipGirth: body.bust + body.hip,
    }),
    pattern: { ...testWork.pattern, style, length },
    picks: bustLeft ? { bustAlteration: 0 } : {},
    alterations: alterations.map((a, index) => ({ ...a, id: `${index}-${a.id}` })),
  }));

const allNames = (plan: Plan) => [...new Set([...plan.left.pieces, ...plan.right.pieces].map(({ name }) => name))];

describe("strips of any plan", () => {
  it("show all that changed, on their paper, by points that are printed", () => {
    let strips = 0;
    fc.assert(
      fc.property(anyWork, fc.constantFrom(...PAGES), (work, longest) => {
        const plan = derivePlan(work);
        const overlay = plan.ok ? overlayOf(plan.value, allNames(plan.value), longest) : null;
        strips += overlay?.patches.length ?? 0;
        expect(plan.ok && overlay !== null ? faultsOf(plan.value, overlay, longest) : []).toEqual([]);
      }),
      { numRuns: RUNS * STYLE_NAMES.length },
    );
    expect(strips).toBeGreaterThan(RUNS);
  }, 300_000);
});

describe("strips of the demo works", () => {
  it.each(demoWorks().map((work) => [work.name, work] as const))(
    "%s: all is shown and held, on every page",
    (_name, work) => {
      const plan = derivePlan(work);
      const faults = PAGES.flatMap((longest) =>
        plan.ok ? faultsOf(plan.value, overlayOf(plan.value, allNames(plan.value), longest), longest) : ["no plan"],
      );
      expect(faults).toEqual([]);
    },
    240_000,
  );
});
