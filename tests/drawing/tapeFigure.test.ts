import { describe, expect, it } from "vitest";
import { MEASURE_NAMES, type MeasureName } from "../../src/core/measures/measure";
import { figureLandmarks, tapeFigure, type FigureView } from "../../src/drawing/tapeFigure";

/** End and control points: a curve lies within their hull, so what holds of them holds of it. */
const pointsOf = (path: string): readonly { readonly x: number; readonly y: number }[] => {
  expect(path).toMatch(/^M[-\d. MLCZ]+$/);
  const numbers = (path.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);
  expect(numbers.length % 2).toBe(0);
  return numbers.flatMap((x, index) => (index % 2 === 0 ? [{ x, y: numbers[index + 1] ?? NaN }] : []));
};

const ends = (path: string) => {
  const points = pointsOf(path);
  return [points[0], points.at(-1)] as const;
};

const seen = (measure: MeasureName, side: FigureView["side"]): FigureView => {
  const found = tapeFigure(measure).views.find((view) => view.side === side);
  if (found === undefined) throw new Error(`${measure} is not drawn from the ${side}`);
  return found;
};

describe("tapeFigure", () => {
  it.each(MEASURE_NAMES)("lays the tape and its landmarks of %s within the picture", (measure) => {
    const { box, views } = tapeFigure(measure);
    expect(views.length).toBeGreaterThan(0);
    for (const { shift, near, far, landmarks } of views) {
      const points = [
        ...pointsOf(near),
        ...(far === undefined ? [] : pointsOf(far)),
        ...landmarks,
        ...landmarks.map(({ letter }) => letter),
      ];
      for (const { x, y } of points) {
        expect(x + shift).toBeGreaterThan(box.x);
        expect(x + shift).toBeLessThan(box.x + box.width);
        expect(y).toBeGreaterThan(box.y);
        expect(y).toBeLessThan(box.y + box.height);
      }
    }
  });

  it.each(MEASURE_NAMES)("letters each landmark of %s once, from a on", (measure) => {
    const landmarks = figureLandmarks(measure);
    expect(landmarks.length).toBeGreaterThan(0);
    expect(landmarks.map(({ letter }) => letter.text).join("")).toBe("abcd".slice(0, landmarks.length));
    expect(new Set(landmarks.map(({ name }) => name)).size).toBe(landmarks.length);
  });

  it("keeps the letters clear of each other", () => {
    for (const measure of MEASURE_NAMES) {
      const letters = tapeFigure(measure).views.flatMap(({ shift, landmarks }) =>
        landmarks.map(({ letter }) => ({ x: letter.x + shift, y: letter.y })),
      );
      letters.forEach((one, index) => {
        // A letter is 12 high and about 7 wide.
        for (const other of letters.slice(index + 1))
          expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(12);
      });
    }
  });

  it.each(MEASURE_NAMES)("draws well-formed bodies for %s", (measure) => {
    for (const { body } of tapeFigure(measure).views) {
      expect(body.some(({ kind }) => kind === "skin")).toBe(true);
      for (const { d } of body) expect(d).toMatch(/^M(?:[MLCAZ ]|-?\d+(?:\.\d+)?)+$/);
    }
  });

  it.each(["bustGirth", "underBustGirth", "waistGirth", "hipGirth"] as const)(
    "shows %s level from the side, and behind the body too",
    (measure) => {
      const [from, to] = ends(seen(measure, "side").near);
      expect(from?.y).toBe(to?.y);
      expect(seen(measure, "front").far).toBeDefined();
    },
  );

  it("shows the upper chest higher at the back than above the breast", () => {
    // Side views look to the right: the back comes first.
    const [back, chest] = ends(seen("upperChestGirth", "side").near);
    expect(back?.x).toBeLessThan(chest?.x ?? NaN);
    // The slant of some 15 degrees is our own choice: enough to be seen in a drawing 3 cm wide.
    expect((chest?.y ?? NaN) - (back?.y ?? NaN)).toBeGreaterThan(10);
    // Above the breast: higher than the tape of the bust.
    expect(chest?.y).toBeLessThan(ends(seen("bustGirth", "side").near)[0]?.y ?? NaN);
  });

  it("takes widths from crease to crease, alike on both sides", () => {
    for (const [measure, side] of [
      ["acrossBack", "back"],
      ["acrossFront", "front"],
      ["bustPointWidth", "front"],
    ] as const) {
      const [from, to] = ends(seen(measure, side).near);
      expect(from?.x).toBe(-(to?.x ?? NaN));
      expect(from?.y).toBe(to?.y);
      expect(seen(measure, side).landmarks[0]?.mirrored).toBe(true);
    }
  });

  it("ends each length at its landmarks", () => {
    for (const [measure, side] of [
      ["sideNeckToBustPoint", "front"],
      ["backWaistLength", "back"],
      ["frontWaistLength", "front"],
      ["shoulderLength", "front"],
      ["height", "standing"],
    ] as const) {
      const { near, landmarks } = seen(measure, side);
      const [first, last] = [landmarks[0], landmarks.at(-1)];
      expect(ends(near)).toEqual([
        { x: first?.x, y: first?.y },
        { x: last?.x, y: last?.y },
      ]);
    }
  });

  it("takes the front waist over the bust point", () => {
    const { near, landmarks } = seen("frontWaistLength", "front");
    const bustPoint = landmarks.find(({ name }) => name === "bustPoint");
    expect(pointsOf(near)).toContainEqual({ x: bustPoint?.x, y: bustPoint?.y });
  });
});
