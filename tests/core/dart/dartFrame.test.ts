/** A dart's own axes: what is said in them comes back as it was, whichever way the dart lies on the paper. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { apexAfter, apexOffset, axisLength, mouthOffset, mouthPointAt } from "../../../src/core/dart/dartFrame";
import { piecePoint } from "../../../src/core/geometry/point";
import { anyAmount } from "../../support/amounts";

// A waist dart 30 wide and 120 long along its axis: mouth below, end above, inner end nearer the centre line.
const dart = { apex: piecePoint(100, 0), inner: piecePoint(85, 120), outer: piecePoint(115, 120) };

describe("a waist dart's axes", () => {
  it("has its axis from the end to the middle of the mouth", () => {
    expect(axisLength(dart)).toBeCloseTo(120, 9);
  });

  it("shortens towards the mouth and moves across towards the centre line", () => {
    expect(apexAfter(dart, { shorten: 30, across: 0 })).toEqual(piecePoint(100, 30));
    expect(apexAfter(dart, { shorten: 0, across: 12 })).toEqual(piecePoint(88, 0));
  });

  it("widens outward, away from the dart's middle, at either end", () => {
    expect(mouthPointAt(dart, "inner", 4)).toEqual(piecePoint(81, 120));
    expect(mouthPointAt(dart, "outer", 4)).toEqual(piecePoint(119, 120));
    expect(mouthOffset(dart, "outer", piecePoint(119, 131))).toBeCloseTo(4, 9);
  });
});

it("a side dart moves across upwards, its inner mouth end being the upper one", () => {
  const side = { apex: piecePoint(120, 240), inner: piecePoint(240, 230), outer: piecePoint(240, 260) };
  const up = apexAfter(side, { shorten: 0, across: 10 });
  expect(up.y).toBeLessThan(240 - 9);
});

it("reading an offset is the inverse of making it, for darts lying any way", () => {
  const at = anyAmount(-300, 300);
  fc.assert(
    fc.property(
      at,
      at,
      anyAmount(-Math.PI, Math.PI),
      anyAmount(30, 200),
      anyAmount(3, 80),
      at,
      at,
      (x, y, turn, length, width, shorten, across) => {
        const [c, s] = [Math.cos(turn), Math.sin(turn)];
        const place = (u: number, v: number) => piecePoint(x + u * c - v * s, y + u * s + v * c);
        const any = { apex: place(0, 0), inner: place(length, width / 2), outer: place(length, -width / 2) };
        const back = apexOffset(any, apexAfter(any, { shorten, across }));
        expect(back.shorten).toBeCloseTo(shorten, 6);
        expect(back.across).toBeCloseTo(across, 6);
        expect(mouthOffset(any, "inner", mouthPointAt(any, "inner", across))).toBeCloseTo(across, 6);
        // Moved by what was asked, no more: the two axes are square and of unit length.
        const moved = apexAfter(any, { shorten, across });
        expect(Math.hypot(moved.x - x, moved.y - y)).toBeCloseTo(Math.hypot(shorten, across), 6);
      },
    ),
  );
});
