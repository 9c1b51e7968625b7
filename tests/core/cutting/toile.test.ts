/** Pieces of a toile: tried two ways on one garment, tacked so that its halves are told apart, and wide enough to be let out. */
import { Point, Segment } from "@flatten-js/core";
import { describe, expect, it } from "vitest";
import type { Allowances } from "../../../src/core/decisions/allowances";
import type { Alteration } from "../../../src/core/decisions/alteration";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import { toileAllowances } from "../../../src/core/cutting/usualAllowances";
import { truePartsOf } from "../../../src/core/cutting/trueParts";
import type { TruePiece } from "../../../src/core/cutting/truePiece";
import { truePiecesOf } from "../../../src/core/cutting/truePieces";
import type { Work } from "../../../src/core/decisions/work";
import { dressOf } from "../../../src/core/dress/dressOf";
import { edgeFlatten, edgePointAt } from "../../../src/core/geometry/edgeCurve";
import type { Piece } from "../../../src/core/pattern/piece";
import { PIECE_ORDER } from "../../../src/core/pattern/pieceSet";
import { stretchesOf } from "../../../src/core/cutting/stretches";
import type { Plan } from "../../../src/core/plan/plan";
import { polygonOf } from "../../support/independent";
import { planOf, ref, testWork, withAlterations } from "../../support/works";

const { closure } = testWork.pattern;

const made = (plan: Plan, allowances = {}): readonly TruePiece[] => {
  const pieces = truePiecesOf(plan, { names: PIECE_ORDER, size: null, allowances, closure });
  return pieces.ok ? pieces.value : [];
};

/** One dart, shortened a little on the left half and much on the right: nothing else differs. */
const twoWays: readonly Alteration[] = (
  [
    ["left", 8, "mouth"],
    ["right", 28, "fullness"],
  ] as const
).map(([half, shorten, hold]): Alteration => ({
  kind: "dartEnd",
  id: `end-${half}`,
  dart: ref("front", "waistDart"),
  shorten,
  across: 0,
  hold,
  giveBack: {},
  half,
}));

describe("a dart that is sewn another way on each half", () => {
  const plan = planOf(withAlterations(...twoWays));
  const pieces = made(plan);
  const front = (half: "left" | "right") => pieces.find(({ name, half: of }) => name === "front" && of === half);

  it("gives a piece for each half; of the front the right one is the plan's own, turned over", () => {
    const ends = (piece: Piece | undefined) =>
      piece?.edges.map(({ from }) => piece.points[from]?.at).filter((at) => at !== undefined) ?? [];
    const right = plan.right.pieces.find(({ name }) => name === "front");
    const left = plan.left.pieces.find(({ name }) => name === "front");
    const has = (piece: TruePiece | undefined, x: number, y: number) =>
      piece?.stitch.some(({ a }) => Math.hypot(a.x - x, a.y - y) < 1e-6) === true;
    expect(ends(right).length).toBeGreaterThan(6);
    for (const { x, y } of ends(right)) expect(has(front("right"), -x, y)).toBe(true);
    for (const { x, y } of ends(left)) expect(has(front("left"), x, y)).toBe(true);
    // And its dart is the right half's: 28 mm shorter, its fullness held, where the left half's is 8 mm shorter.
    const end = (half: "left" | "right") =>
      plan[half].darts.find(({ ref: { piece, dart } }) => piece === "front" && dart === "waistDart")?.drawn.apex;
    const drawn = (half: "left" | "right") => front(half)?.darts.find(({ name }) => name === "waistDart")?.end;
    expect((end("right")?.y ?? 0) - (end("left")?.y ?? 0)).toBeGreaterThan(19);
    expect(drawn("right")?.x).toBeCloseTo(-(end("right")?.x ?? 0), 6);
    expect(drawn("right")?.y).toBeCloseTo(end("right")?.y ?? 0, 6);
    expect(drawn("left")?.x).toBeCloseTo(end("left")?.x ?? 0, 6);
  });

  it("leaves what is alike on both halves one piece, without tacking", () => {
    expect(pieces.filter(({ name }) => name === "back")).toHaveLength(1);
    expect(pieces.filter(({ half }) => half === null).flatMap(({ tacking }) => tacking)).toEqual([]);
  });
});

describe.each(STYLE_NAMES)("tacking, %s", (style) => {
  const even: Alteration = { kind: "fit", id: "s", fit: "sideSeamWaist", amount: 6, half: "left" };
  const work = { ...withAlterations(even), pattern: { ...testWork.pattern, style } };
  const halves = made(planOf(work)).filter(({ half }) => half !== null);

  it("is one line on her left half and two on her right, upright, on the piece and clear of its darts and grain", () => {
    expect(halves.length).toBeGreaterThan(0);
    for (const piece of halves) {
      expect(piece.tacking).toHaveLength(piece.half === "left" ? 1 : 2);
      const polygon = polygonOf(
        piece.stitch.flatMap((edge) => Array.from({ length: 40 }, (_, i) => edgePointAt(edge, i / 40))),
      );
      const others = [
        ...piece.darts.flatMap(({ legs }) => legs.flatMap((leg) => edgeFlatten(leg, 0.1))),
        ...piece.grain,
      ];
      for (const [from, to] of piece.tacking) {
        expect(from.x).toBe(to.x);
        expect(to.y - from.y).toBeGreaterThanOrEqual(14);
        for (const { x, y } of [from, to]) expect(polygon.contains(new Point(x, y))).toBe(true);
        const row = new Segment(new Point(from.x, from.y), new Point(to.x, to.y));
        const near = Math.min(...others.map(({ x, y }) => new Point(x, y).distanceTo(row)[0]));
        expect(near).toBeGreaterThan(0.9);
      }
    }
  });
});

describe("allowances of a toile", () => {
  it("are 30 mm at least where it may have to be let out, 1 1/4 in in inches, and as they are elsewhere", () => {
    const wide = toileAllowances({ side: 40, armhole: 8 }, "cm");
    expect(wide).toEqual({ side: 40, armhole: 8, shoulder: 30, waist: 30, centre: 30 });
    const inches = toileAllowances({}, "in");
    expect(inches.side).toBeCloseTo(1.25 * 25.4, 0);
  });

  it("lie outside the stitch line by as much: every side seam is cut 30 mm off, the armhole 15 mm", () => {
    const plan = planOf(testWork);
    for (const piece of plan.left.pieces.filter(({ name }) => name === "front" || name === "back")) {
      const [drawn] = made(plan, toileAllowances({}, "cm")).filter(({ name }) => name === piece.name);
      const cut = polygonOf(drawn?.cutting.map(({ at }) => at) ?? []);
      for (const seam of ["side", "armhole"] as const) {
        // The longest: near a corner the cutting line of the next seam may be nearer.
        const own = stretchesOf(piece, {}).filter((stretch) => stretch.seam === seam && !stretch.cap);
        const chord = ({ a, b }: (typeof own)[number]["curve"]) => Math.hypot(a.x - b.x, a.y - b.y);
        const curve = own.map((stretch) => stretch.curve).toSorted((p, q) => chord(q) - chord(p))[0];
        if (curve === undefined) throw new Error(`no ${seam}`);
        const middle = edgePointAt(curve, 0.5);
        const [off] = new Point(middle.x, middle.y).distanceTo(cut);
        expect(off).toBeCloseTo(seam === "side" ? 30 : 15, 0);
      }
    }
  });

  it("lie outside the skirt as well, which has a hem of its own: side and waist are cut 30 mm off, its hem 42 mm", () => {
    const work: Work = {
      ...testWork,
      allowances: { side: 12, waist: 10 },
      dress: { skirt: { kind: "straight", length: 600, hem: 42 } },
    };
    const dress = dressOf(work);
    if (!dress.ok) throw new Error("no dress");
    const { parts } = dress.value;
    const cutBy = (allowances: Allowances): readonly number[] => {
      const drawn = truePartsOf({ parts, ids: ["skirtFront"], allowances, closure, liningOpen: null });
      const [front] = drawn.ok ? drawn.value : [];
      const cut = polygonOf(front?.cutting.map(({ at }) => at) ?? []);
      return (["side", "waist", "hem"] as const).map((seam) => {
        const edges = front?.seams.find((run) => run.seam === seam)?.edges ?? [];
        const chord = ({ a, b }: (typeof edges)[number]) => Math.hypot(a.x - b.x, a.y - b.y);
        const [longest] = edges.toSorted((p, q) => chord(q) - chord(p));
        if (longest === undefined) throw new Error(`no ${seam}`);
        const { x, y } = edgePointAt(longest, 0.5);
        return Math.round(new Point(x, y).distanceTo(cut)[0]);
      });
    };
    expect(cutBy(toileAllowances(work.allowances ?? {}, "cm"))).toEqual([30, 30, 42]);
    expect(cutBy(work.allowances ?? {})).toEqual([12, 10, 42]);
    // Its own is the hem alone.
    const own = parts.flatMap((part) => (part.kind === "piece" && part.group === "skirt" ? [part.allowances] : []));
    expect(own).toEqual(own.map(() => ({ hem: 42 })));
    expect(own.length).toBeGreaterThan(0);
  });
});
