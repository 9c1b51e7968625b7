/** The side let out and taken in at the bust, on straight pieces with a dart in the side and with a corner in it. */
import { describe, expect, it } from "vitest";
import { sideSeamBust } from "../../../../src/core/alterations/fit/sideSeamBust";
import { piecePoint } from "../../../../src/core/geometry/point";
import { pieceIn, setOf } from "../../../../src/core/pattern/pieceSet";
import { pointOf, type Piece, type PointName } from "../../../../src/core/pattern/piece";
import { cornerPiece, dartFor, type CornerOf } from "../../../support/cornerPiece";
import { seamByBezierJs } from "../../../support/independent";

const bustLine: Piece["levelLines"] = [{ level: "bust", along: { points: ["centreBust", "sideBust"] } }];
const pieceOf = (name: "front" | "back", side: readonly CornerOf[], dart = false, gathered?: true): Piece =>
  cornerPiece({
    name,
    corners: [
      ["centreNeck", 0, 0, "neck"],
      ["underarm", 200, 100, "side"],
      ["sideBust", 200, 150, "side"],
      ...side,
      ["sideWaist", 200, 320, "waist"],
      ["centreWaist", 0, 320, "centre"],
      ["centreBust", 0, 150, "centre"],
    ],
    inside: dart ? { sideDartApex: [130, 200] } : {},
    darts: dart ? [{ ...dartFor("sideDart", "side"), ...(gathered === undefined ? {} : { gathered }) }] : [],
    levelLines: bustLine,
  });
const MOUTH: readonly CornerOf[] = [
  ["sideDartInner", 200, 190, "side", "sideDart"],
  ["sideDartOuter", 200, 210, "side"],
];
const context = { bustPoint: piecePoint(100, 150) };
const back = pieceOf("back", []);
function letOut(front: Piece, amount: number) {
  const done = sideSeamBust.apply(setOf([front, back]), amount, context);
  if (!done.ok) throw new Error(JSON.stringify(done.failure));
  return done.value;
}
const place = (piece: Piece, name: PointName): readonly number[] => [pointOf(piece, name).x, pointOf(piece, name).y];
const apart = (piece: Piece, a: PointName, b: PointName): number =>
  Math.hypot(pointOf(piece, a).x - pointOf(piece, b).x, pointOf(piece, a).y - pointOf(piece, b).y);

describe("a side with a dart in it", () => {
  it.each([24, -24])(
    "by %d mm: a quarter at the bust line, and along its legs what runs out to the waist",
    (amount) => {
      const { pieces, values, girths } = letOut(pieceOf("front", MOUTH, true), amount);
      const piece = pieceIn(pieces, "front");
      const quarter = amount / 4;
      expect([values, girths]).toEqual([{ quarter: 6 }, { bust: amount }]);
      expect(place(piece, "sideBust")).toEqual([200 + quarter, 150]);
      // The underarm goes up or down its side so that both sides stay alike.
      expect(pointOf(piece, "underarm").x).toBeCloseTo(200 + quarter, 1);
      expect(place(piece, "sideWaist")).toEqual([200, 320]);
      expect(place(piece, "sideDartApex")).toEqual([130, 200]);
      // 40 of the 150 mm that are sewn below the bust line lie above the dart: eleven fifteenths of the quarter are left.
      const leg = Math.hypot(70, 10) + (quarter * 11) / 15;
      for (const end of ["sideDartInner", "sideDartOuter"] as const)
        expect(Math.abs(apart(piece, "sideDartApex", end) - leg)).toBeLessThan(0.6);
      expect(apart(piece, "sideDartApex", "sideDartInner")).toBeCloseTo(
        apart(piece, "sideDartApex", "sideDartOuter"),
        4,
      );
      // Smooth over the shut dart: the angles to its two legs are straight together.
      const at = (end: "sideDartInner" | "sideDartOuter"): number => {
        const edge = piece.edges.find(({ from, to, mouthOf }) => mouthOf === null && (from === end || to === end));
        const control = edge?.to === end ? edge.curve?.c2 : edge?.curve?.c1;
        const [x, y] = place(piece, end);
        const [dx, dy] = [(control?.x ?? 0) - (x ?? 0), (control?.y ?? 0) - (y ?? 0)];
        const turn = Math.atan2(dy, dx) - Math.atan2(200 - (y ?? 0), 130 - (x ?? 0));
        return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn)));
      };
      expect(at("sideDartInner") + at("sideDartOuter")).toBeCloseTo(Math.PI, 3);
      expect(seamByBezierJs(piece, "side")).toBeCloseTo(seamByBezierJs(pieceIn(pieces, "back"), "side") - 20, 3);
    },
  );

  it("that is gathered has the ends of its mouth moved, and nothing trued", () => {
    const { pieces } = letOut(pieceOf("front", MOUTH, true, true), 24);
    const piece = pieceIn(pieces, "front");
    const [x, y] = [(70 / Math.hypot(70, 10)) * 4.4, (10 / Math.hypot(70, 10)) * 4.4];
    expect(place(piece, "sideDartInner")).toEqual([expect.closeTo(200 + x, 9), expect.closeTo(190 - y, 9)]);
    expect(place(piece, "sideDartOuter")).toEqual([expect.closeTo(200 + x, 9), expect.closeTo(210 + y, 9)]);
  });
});

describe("a side with a corner in it", () => {
  it("has it moved as the bust line's end is, by what is left there", () => {
    const cornered = pieceOf("front", [["corner01", 200, 252, "side"]]);
    const piece = pieceIn(letOut(cornered, 40).pieces, "front");
    // 102 of 170 mm: four tenths are left.
    expect(place(piece, "corner01")).toEqual([expect.closeTo(204, 9), 252]);
    expect(place(piece, "sideWaist")).toEqual([200, 320]);
    for (const from of ["sideBust", "corner01"] as const)
      expect(piece.edges.find((edge) => edge.from === from)?.curve).not.toBeNull();
    expect(piece.edges.find((edge) => edge.from === "sideWaist")?.curve).toBeNull();
  });

  it("is taken in by no more than 15 in 100 of the narrower piece, and needs a bust line on both", () => {
    const narrow = cornerPiece({
      name: "front",
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["underarm", 180, 100, "side"],
        ["sideBust", 180, 150, "side"],
        ["sideWaist", 180, 320, "waist"],
        ["centreWaist", 0, 320, "centre"],
        ["centreBust", 0, 150, "centre"],
      ],
      levelLines: bustLine,
    });
    const set = setOf([narrow, back]);
    expect(sideSeamBust.apply(set, -109, context)).toEqual({
      ok: false,
      failure: { code: "alteration/too-much", most: expect.closeTo(-108, 9) },
    });
    expect(sideSeamBust.apply(set, -107.9, context).ok).toBe(true);
    const applies = (front: Piece): boolean => sideSeamBust.applies(setOf([front, back]));
    expect([applies(narrow), sideSeamBust.applies(setOf([narrow]))]).toEqual([true, false]);
    expect(applies({ ...narrow, levelLines: [] })).toBe(false);
    expect(applies({ ...narrow, levelLines: [{ level: "bust", along: { seam: "waist" } }] })).toBe(false);
    expect(
      applies({ ...narrow, levelLines: [{ level: "waist", along: { points: ["centreBust", "sideBust"] } }] }),
    ).toBe(false);
    expect(applies({ ...narrow, levelLines: [{ level: "bust", along: { points: ["sideBust"] } }] })).toBe(false);
    expect(applies({ ...narrow, levelLines: [{ level: "bust", along: { points: ["sideBust", "centreBust"] } }] })).toBe(
      false,
    );
  });
});
