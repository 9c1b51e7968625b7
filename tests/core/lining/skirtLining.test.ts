import * as fc from "fast-check";
import { expect, test } from "vitest";
import { checkLining } from "../../../src/core/dress/checkLining";
import { stepNeeded } from "../../../src/core/lining/skirtLining";
import { edgeNearest, edgePointAt } from "../../../src/core/geometry/edgeCurve";
import { pointOf, type Piece } from "../../../src/core/pattern/piece";
import { pieceIn, piecesOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { curveOf } from "../../../src/core/pattern/ring";
import { seamByBezierJs } from "../../support/independent";
import { body, closed, lined, madeOf, shellOf, waistOf } from "../../support/linings";

const frontOf = (pieces: PieceSet): Piece => pieceIn(pieces, "skirtFront");
const backOf = (pieces: PieceSet): Piece => pieceIn(pieces, "skirtBack");

const apart = (
  piece: Piece,
  from: "centreHip" | "cut1" | "centreWaist" | "sideWaist",
  to: "sideHip" | "cut1",
): number => {
  const [a, b] = [pointOf(piece, from), pointOf(piece, to)];
  return Math.hypot(a.x - b.x, a.y - b.y);
};

test("on a waist of 740 and a hip of 960 with 50 of ease, each quarter takes in 67.5, and the sides stay where the bodice's are", () => {
  const { skirt, skirtFigures } = madeOf(lined({ skirt: true }));
  const [left, right] = skirt;
  expect(right).toBe(left);
  expect(apart(frontOf(left), "centreHip", "sideHip")).toBeCloseTo(190 + 67.5, 6);
  expect(apart(backOf(left), "centreHip", "sideHip")).toBeCloseTo(180 + 67.5, 6);
  expect(skirtFigures?.hip).toBeCloseTo(960 + 50, 3);
  // 22 at the side, and what is left in two darts of less than 30 each: all of it is taken off the quarter at the waist.
  expect(frontOf(left).darts).toHaveLength(2);
  expect(backOf(left).darts).toHaveLength(2);
});

test("its waist is the shell's less 6 at each end beside the zip; without darts the two are sewn end to end", () => {
  const { skirt, skirtFigures, beside } = madeOf(lined({ skirt: true }));
  expect(seamByBezierJs(frontOf(skirt[0]), "waist")).toBeCloseTo(190, 2);
  expect(seamByBezierJs(backOf(skirt[0]), "waist")).toBeCloseTo(180 - 6, 2);
  expect(beside).toBe(6);
  expect(skirtFigures?.waist).toBe(740 - 2 * 6);
});

test("the ends are straight from 6 beside the zip's teeth at the waist to the seam 25 below the zip's end", () => {
  const back = backOf(madeOf(lined({ skirt: true })).skirt[0]);
  expect(pointOf(back, "cut1").x).toBeCloseTo(0, 6);
  expect(pointOf(back, "cut1").y).toBeCloseTo(180 + 25, 6);
  expect(pointOf(back, "centreWaist").x).toBeCloseTo(6, 1);
  const free = back.edges.find(({ from, to }) => from === "cut1" && to === "centreWaist");
  expect(free).toMatchObject({ seam: "centre", curve: null });
});

test("where the V ends just where the hip's corner is, no edge goes between", () => {
  // Her hip lies 200 below the waist along the side; the V runs 25 below an opening of 175, or all but there.
  for (const opening of [174.2, 175, 175.6]) {
    const [left] = madeOf(lined({ skirt: true }, { closure: closed("side", opening) })).skirt;
    for (const piece of [frontOf(left), backOf(left)]) {
      const along = piece.edges.filter(({ seam }) => seam === "side").map((edge) => curveOf(piece, edge));
      for (const { a, b } of along) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(2);
      expect(piece.edges.map(({ from }) => from)).toContain("sideHip");
    }
  }
});

test("at the side it is the left half that is left free, front and back alike", () => {
  const { skirt } = madeOf(lined({ skirt: true }, { closure: closed("side", 180) }));
  const [left, right] = skirt;
  expect(seamByBezierJs(frontOf(left), "waist")).toBeCloseTo(190 - 6, 2);
  expect(seamByBezierJs(backOf(left), "waist")).toBeCloseTo(180 - 6, 2);
  expect(seamByBezierJs(frontOf(right), "waist")).toBeCloseTo(190, 2);
  expect(backOf(left).centreOnFold).toBe(true);
  expect(seamByBezierJs(frontOf(left), "side")).toBeCloseTo(seamByBezierJs(backOf(left), "side"), 1);
  // It follows the hip: everywhere it stands off the seam by what is left of the 6 there, never by more.
  for (const piece of [frontOf(left), backOf(left)]) {
    const whole = pieceIn(right, piece.name);
    const own = piece.edges.findIndex(({ from }) => from === "cut1");
    expect(own).toBeGreaterThan(0);
    const shut = whole.edges.filter(({ seam }) => seam === "side").map((edge) => curveOf(whole, edge));
    for (const edge of piece.edges.filter(({ seam }) => seam === "side")) {
      for (const t of [0, 0.25, 0.5, 0.75, 1]) {
        const at = edgePointAt(curveOf(piece, edge), t);
        const off = Math.min(...shut.map((curve) => edgeNearest(curve, at).distance));
        const down = Math.min(1, Math.max(0, at.y) / 205);
        expect(Math.abs(off - 6 * (1 - down))).toBeLessThan(0.5);
      }
    }
  }
});

test("a zip that ends at the waist leaves 25 free below it, and one longer than the skirt nearly all of it", () => {
  const atWaist = backOf(madeOf(lined({ skirt: true }, { closure: closed("centreBack", 0) })).skirt[0]);
  expect(pointOf(atWaist, "cut1").y).toBeCloseTo(25, 6);
  const whole = backOf(madeOf(lined({ skirt: true }, { closure: closed("centreBack", 900) })).skirt[0]);
  const hem = pointOf(whole, "centreHem").y;
  expect(pointOf(whole, "cut1").y).toBeCloseTo(hem - 4, 6);
});

test("it is 25 shorter than the shell at the side and hangs level, or as much as is chosen", () => {
  expect(madeOf(lined({ skirt: true })).skirtFigures?.lengths.side).toBe(575);
  expect(madeOf(lined({ skirt: true, shorter: 40 })).skirtFigures?.lengths.side).toBe(560);
  const toFloor = { front: 1000, side: 1010, back: 1020 };
  const levelled = madeOf(lined({ skirt: true }, { skirt: shellOf(590, 600, 610), body: { ...body, toFloor } }));
  expect(levelled.skirtFigures?.lengths).toEqual({ front: 565, side: 575, back: 585 });
  const { skirt } = levelled;
  expect(pointOf(frontOf(skirt[0]), "centreHem").y).toBeCloseTo(565, 6);
  expect(pointOf(backOf(skirt[0]), "centreHem").y).toBeCloseTo(585, 6);
});

test("its hem lets her step: 100 over the hip from the knee on, less where it is shorter; one that is too narrow is told", () => {
  expect(stepNeeded(960, 380)).toBe(1060);
  expect(stepNeeded(960, 900)).toBe(1060);
  expect(stepNeeded(960, 190)).toBe(1010);
  const usual = madeOf(lined({ skirt: true }, { skirt: shellOf(900) }));
  expect(usual.skirtFigures?.hem).toBeGreaterThanOrEqual(1060);
  expect(usual.notes.map(({ code }) => code)).toEqual(["lining/over-hips"]);
  const narrow = madeOf(lined({ skirt: true, hemGirth: 1020 }, { skirt: shellOf(900) }));
  expect(narrow.skirtFigures?.hem).toBeCloseTo(1020, 0);
  expect(narrow.notes).toContainEqual({ code: "lining/no-step", girth: narrow.skirtFigures?.hem, needed: 1060 });
  const wide = madeOf(lined({ skirt: true, hemGirth: 1400 }));
  expect(wide.skirtFigures?.hem).toBeCloseTo(1400, 0);
});

/** What a level lets through by hand. */
const overHips = (belowWaist: number) => {
  const { notes, skirt } = madeOf(lined({ skirt: true }, { closure: closed("centreBack", belowWaist) }));
  const note = notes.find(({ code }) => code === "lining/over-hips");
  if (note?.code !== "lining/over-hips") throw new Error("no note");
  return { ...note, hipLine: pointOf(backOf(skirt[0]), "centreHip").y };
};

test("whether it passes over the hips goes by the least loop of all levels", () => {
  // Open 105 down from the waist: that loop is 740 less 12, and twice 105. Hips of 960 want 20 more.
  const short = overHips(80);
  expect(short.needed).toBe(980);
  expect(short.lets).toBeLessThanOrEqual(728 + 210 + 0.01);
  expect(short.passes).toBe(false);
  // Open past her hip line: there it is 1010 round, and twice the few mm that are left to 205, less a gap of 12 × their share.
  const long = overHips(180);
  const left = 205 - long.hipLine;
  expect(long.hipLine).toBeGreaterThan(190);
  expect(long.passes).toBe(true);
  expect(long.lets).toBeCloseTo(1010 + 2 * left - (12 * left) / 205, 1);
});

test("shut where the zip ends, nothing of it is open; the levels say what cloth goes round at each", () => {
  const { levels } = madeOf(lined({ skirt: true }, { closure: closed("centreBack", 180) }));
  expect(levels[0]).toEqual({ below: 0, girth: 740 - 12 });
  const belows = levels.map(({ below }) => below);
  expect(belows).toEqual(belows.toSorted((a, b) => a - b));
  expect(levels.find(({ below }) => Math.abs(below - 205) < 0.001)?.girth).toBeGreaterThan(1009);
});

test("pleats are folded, darts sewn; a lining that is longer than its shell, without a hip or too short is told by name", () => {
  const { skirt } = madeOf(lined({ skirt: true, shaping: "pleats" }));
  expect(frontOf(skirt[0]).darts.every(({ gathered }) => gathered === true)).toBe(true);
  expect(seamByBezierJs(frontOf(skirt[0]), "waist")).toBeCloseTo(190, 2);
  expect(madeOf(lined({ skirt: true, shorter: -10 })).notes).toContainEqual({
    code: "lining/longer-than-skirt",
    by: 10,
  });
  expect(lined({ skirt: true }, { body: { ...body, hip: null } })).toMatchObject({
    failure: { code: "lining/hip-missing" },
  });
  expect(lined({ skirt: true }, { skirt: shellOf(230) })).toMatchObject({
    failure: { code: "lining/too-short", length: 205 },
  });
  expect(lined({ skirt: true }, { body: { ...body, hip: 680 } })).toMatchObject({
    failure: { code: "lining/waist-over-hip", waist: 740, hip: 730 },
  });
});

test("a waist far smaller than the hip wants more than three darts of 30 each; pleats take it in", () => {
  // (1160 + 50 − 740) / 4 = 117.5 a quarter: 22 at the side, 95.5 in three.
  const wide = { body: { ...body, hip: 1160 } };
  const refused = lined({ skirt: true }, wide);
  expect(refused).toMatchObject({ ok: false, failure: { code: "lining/darts-too-wide", most: 30 } });
  expect(refused.ok ? 0 : refused.failure).toMatchObject({ intake: expect.closeTo(95.5 / 3, 6) });
  const { skirt, skirtFigures } = madeOf(lined({ skirt: true, shaping: "pleats" }, wide));
  expect(skirtFigures?.hip).toBeCloseTo(1210, 3);
  expect(frontOf(skirt[0]).darts).toHaveLength(2);
  expect(seamByBezierJs(frontOf(skirt[0]), "waist")).toBeCloseTo(190, 2);
});

test("without a skirt, or where it was not chosen, nothing of it is lined", () => {
  expect(madeOf(lined({ skirt: true }, { skirt: null })).parts).toEqual([]);
  expect(madeOf(lined({})).parts).toEqual([]);
});

test("its panels are cut of lining: the front once on the fold, the back twice", () => {
  const { parts } = madeOf(lined({ skirt: true }));
  expect(parts.map(({ key, cut, cloth, group }) => ({ key, cut, cloth, group }))).toEqual([
    { key: "lining-skirtFront", cut: { onFold: true, count: 1 }, cloth: "lining", group: "skirtLining" },
    { key: "lining-skirtBack", cut: { onFold: false, count: 2 }, cloth: "lining", group: "skirtLining" },
  ]);
});

const anyHalf = fc.record({ front: fc.integer({ min: 150, max: 240 }), back: fc.integer({ min: 150, max: 240 }) });

test("over random waists, hips and closures, halves alike or not: waist and sides walk, and the hip has its ease", () => {
  fc.assert(
    fc.property(
      fc.record({
        left: anyHalf,
        right: fc.option(anyHalf, { nil: undefined }),
        over: fc.integer({ min: 20, max: 320 }),
        ease: fc.integer({ min: 20, max: 100 }),
        length: fc.integer({ min: 320, max: 1200 }),
        place: fc.constantFrom("centreBack" as const, "side" as const),
        belowWaist: fc.integer({ min: 0, max: 260 }),
        beside: fc.constantFrom(0, 5, 6, 10),
      }),
      ({ left, right, over, ease, length, place, belowWaist, beside }) => {
        const waist = waistOf(left, right);
        const hip = waist.whole + over;
        const closure = closed(place, belowWaist);
        const result = lined(
          { skirt: true, hipEase: ease, freeBeside: beside },
          { waist, closure, body: { ...body, hip }, skirt: shellOf(length) },
        );
        if (!result.ok && result.failure.code === "lining/darts-too-wide") return;
        const made = madeOf(result);
        const { skirt, skirtFigures } = made;
        skirt.forEach((pieces, at) => {
          const shell = waist.halves[at === 0 ? 0 : 1];
          const opens = (side: "front" | "back") => (place === "side" ? at === 0 : side === "back");
          expect(seamByBezierJs(frontOf(pieces), "waist")).toBeCloseTo(shell.front - (opens("front") ? beside : 0), 1);
          expect(seamByBezierJs(backOf(pieces), "waist")).toBeCloseTo(shell.back - (opens("back") ? beside : 0), 1);
          expect(
            Math.abs(seamByBezierJs(frontOf(pieces), "side") - seamByBezierJs(backOf(pieces), "side")),
          ).toBeLessThan(0.05);
        });
        const round = skirt.reduce(
          (sum, pieces) =>
            sum + apart(frontOf(pieces), "centreHip", "sideHip") + apart(backOf(pieces), "centreHip", "sideHip"),
          0,
        );
        // Beside a zip that goes on below the hip line its ends are still apart there.
        const gap = place === "side" ? 2 * beside * Math.max(0, 1 - 200 / (belowWaist + 25)) : 0;
        expect(Math.abs(round - (hip + ease - gap))).toBeLessThan(0.15);
        expect(skirtFigures?.lengths.side).toBe(length - 25);
        for (const check of checkLining({ lining: made, waist, closure })) expect(check).toMatchObject({ ok: true });
        for (const piece of skirt.flatMap(piecesOf))
          expect(piece.edges.every((edge, i) => edge.to === piece.edges[(i + 1) % piece.edges.length]?.from)).toBe(
            true,
          );
      },
    ),
  );
});
