/** A fitted skirt flared for a hem of so much all round, as a lining's is: found where it can be, and ended where it cannot. */
import { describe, expect, it } from "vitest";
import { pointOf, type Piece } from "../../../src/core/pattern/piece";
import { draftALine, type ALineAsked, type ALineDraft } from "../../../src/core/skirts/draftALine";
import { radians } from "../../../src/core/units";
import { seamByBezierJs } from "../../support/independent";

const half = { front: 185, back: 175 };
const ASKED: ALineAsked = {
  kind: "aLine",
  waist: [half, half],
  hip: 960,
  hipEase: 50,
  hipDepth: 200,
  lengths: { side: 600, front: 600, back: 600 },
  flare: radians(0),
  shaping: "darts",
  panels: 2,
  seams: { centreFront: false, centreBack: true },
};
function draft(more: Partial<ALineAsked> = {}): ALineDraft {
  const made = draftALine({ ...ASKED, ...more });
  if (!made.ok) throw new Error(JSON.stringify(made.failure));
  return made.value;
}
const degrees = ({ flare }: ALineDraft): number => (flare * 180) / Math.PI;
/** All round, by the pieces. */
const hemOf = ({ halves }: ALineDraft): number =>
  halves.reduce(
    (sum, set) => sum + Object.values(set).reduce((all, piece) => all + seamByBezierJs(piece, "hem"), 0),
    0,
  );

describe("a hem of so much all round", () => {
  it.each([1100, 1250, 1400])("of %s mm is found to half a millimetre", (hem) => {
    const found = draft({ flare: { hem } });
    expect(Math.abs(found.hem - hem)).toBeLessThan(0.5);
    expect(hemOf(found)).toBeCloseTo(found.hem, 3);
    // Each of four sides leans out over 400.
    expect(Math.abs(degrees(found) - (Math.atan((hem - 1010) / 1600) * 180) / Math.PI)).toBeLessThan(0.6);
  });

  it("is that of the hip where it is no more, and of twenty degrees where it is too much", () => {
    for (const hem of [500, 1010]) expect(draft({ flare: { hem } })).toEqual(draft());
    const widest = draft({ flare: radians((20 * Math.PI) / 180) });
    expect(degrees(widest)).toBeCloseTo(20, 9);
    expect(draft({ flare: { hem: widest.hem } })).toEqual(widest);
    expect(draft({ flare: { hem: 5000 } })).toEqual(widest);
    expect(draft().hem).toBeCloseTo(1010, 6);
  });
});

describe("halves", () => {
  const uneven = { front: 195, back: 165 };

  it("that are alike are one, made once, and told once", () => {
    const even = draft();
    expect(even.halves[0]).toBe(even.halves[1]);
    expect(even.suppression.map(({ quarter }) => quarter)).toEqual(["front", "back"]);
  });

  it("that differ are brought to the middle of their centres where the floor says nothing of them", () => {
    const free = { side: 600, front: null, back: null };
    const [left, right] = [half, uneven].map((one) => draft({ waist: [one, one], lengths: free }).lengths);
    const both = draft({ waist: [half, uneven], lengths: free });
    expect(both.lengths).toEqual({
      side: 600,
      front: expect.closeTo(((left?.front ?? 0) + (right?.front ?? 0)) / 2, 6),
      back: expect.closeTo(((left?.back ?? 0) + (right?.back ?? 0)) / 2, 6),
    });
    expect(left?.front).not.toBeCloseTo(right?.front ?? 0, 1);
    const centre = (piece: Piece | undefined): number => (piece === undefined ? 0 : pointOf(piece, "centreHem").y);
    for (const name of ["skirtFront", "skirtBack"] as const)
      expect(centre(both.halves[0][name])).toBeCloseTo(centre(both.halves[1][name]), 6);
    // Where it says of both, each is as it says.
    expect(draft({ waist: [half, uneven] }).lengths).toEqual({ side: 600, front: 600, back: 600 });
    const front = draft({ waist: [half, uneven], lengths: { side: 600, front: 590, back: null } });
    expect(front.suppression).toHaveLength(4);
    expect(centre(front.halves[0].skirtBack)).toBeCloseTo(centre(front.halves[1].skirtBack), 6);
  });

  it("bring half of their girths each: the hip is theirs and its ease, however they are unlike", () => {
    const { hip, levels } = draft({ waist: [half, uneven] });
    expect(hip).toBeCloseTo(1010, 6);
    expect(levels.centreBack.map(({ girth }) => girth)[0]).toBe(720);
    expect(levels.centreBack.find(({ below }) => Math.abs(below - 200) < 1e-6)?.girth).toBeCloseTo(1010, 6);
  });
});

describe("levels below the waist", () => {
  it("lie by eighths down to the hip and by quarters on to the hem, along the seam that opens", () => {
    const { levels } = draft({ lengths: { side: 600, front: 600, back: 620 } });
    // The waist is lifted by 20 at the back: the hip lies 220 below it there, and as far above the hem.
    const back = [0, ...[1, 2, 3, 4, 5, 6, 7, 8].map((at) => 27.5 * at), 320, 420, 520, 620];
    expect(levels.centreBack.map(({ below }) => below)).toEqual(back.map((below) => expect.closeTo(below, 6)));
    expect(levels.side.map(({ below }) => below).slice(-5)).toEqual(
      [200, 300, 400, 500, 600].map((below) => expect.closeTo(below, 4)),
    );
    expect(levels.side[0]).toEqual({ below: 0, girth: 720 });
    const rising = levels.side.map(({ below }) => below);
    expect(rising).toEqual(rising.toSorted((a, b) => a - b));
    expect([levels.side.at(-1), levels.centreBack.at(-1)].map((level) => level?.girth)).toEqual([
      expect.closeTo(1010, 6),
      expect.closeTo(1010, 6),
    ]);
  });
});

it("six panels shut no dart into flare, however they are to be shaped; darts that are shut do", () => {
  const into = (panels: 2 | 6) => draft({ panels, shaping: "shut" }).suppression.map(({ shutInto }) => shutInto > 0);
  expect([into(6), into(2)]).toEqual([
    [false, false],
    [true, true],
  ]);
});
