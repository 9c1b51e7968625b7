/** The ink of overlay strips: nothing runs off the paper, words keep clear of one another, and it cannot be laid wrong way up. */
import { Point, Polygon, Segment } from "@flatten-js/core";
import { describe, expect, it } from "vitest";
import { overlayOf } from "../../src/core/overlay/overlayOf";
import type { Patch } from "../../src/core/overlay/overlay";
import { derivePlan } from "../../src/core/plan/derivePlan";
import { invariant } from "../../src/core/result";
import { demoWorks } from "../../src/document/demo";
import type { Work } from "../../src/core/decisions/work";
import { ref, testWork } from "../support/works";
import type { Ink, InkLine, InkText } from "../../src/drawing/ink";
import { overlayInk } from "../../src/drawing/overlayInk";

const A4_LONG = 277;

/** Mean width of a letter of plain type, as a share of its size (common practice, no source). */
const LETTER = 0.5;
/** Height of a capital and depth of a tail below the foot, likewise. */
const CAPITAL = 0.7;
const TAIL = 0.2;

/** Halves that differ by cup version and by a dart: their strips say the most. */
const UNEVEN: Work = {
  ...testWork,
  name: "Uneven",
  picks: { cup: "B", halfCups: { right: "D" } },
  alterations: [
    {
      kind: "dartEnd",
      id: "end",
      dart: ref("front", "waistDart"),
      shorten: 20,
      across: 0,
      hold: "fullness",
      giveBack: { sideSeam: 0.5, centreSeam: 0.5 },
      half: "right",
    },
    { kind: "fit", id: "slope", fit: "shoulderSlope", amount: 8, half: "right" },
  ],
};

const strips = [...demoWorks(), UNEVEN].flatMap((work) => {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(`${work.name}: ${plan.failure.code}`);
  const { patches, baseSize } = overlayOf(
    plan.value,
    plan.value.left.pieces.map(({ name }) => name),
    A4_LONG,
  );
  return patches.map((patch) => ({ patch, baseSize, ink: overlayInk(patch, baseSize, work.unit) }));
});

const isText = (ink: Ink<"piece">): ink is InkText<"piece"> => ink.kind === "text";
const isLine = (ink: Ink<"piece">): ink is InkLine<"piece"> => ink.kind === "line";

const paperOf = ({ ring }: Patch): Polygon => new Polygon(ring.map(({ x, y }): [number, number] => [x, y]));

/** Corners of the words, from the start of their foot. */
function cornersOf({ at, text, size, turn }: InkText<"piece">): [number, number][] {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [width, up, down] = [text.length * size * LETTER, -size * CAPITAL, size * TAIL];
  return [
    [0, up],
    [width, up],
    [width, down],
    [0, down],
  ].map(([dx = 0, dy = 0]) => [at.x + dx * cos - dy * sin, at.y + dx * sin + dy * cos]);
}

const isOn = (paper: Polygon, x: number, y: number): boolean =>
  paper.contains(new Point(x, y)) || paper.distanceTo(new Point(x, y))[0] < 1e-3;

/** Filled triangles (arrow heads): the way from the middle of the two near corners to the tip. */
const headsOf = (ink: readonly Ink<"piece">[]) =>
  ink
    .filter(isLine)
    .filter(({ filled, role, edges }) => filled === true && role === "mark" && edges.length === 3)
    .map(({ edges }) => {
      const [tip, left, right] = edges.map(({ a }) => a);
      const [t, l, r] = [invariant(tip, "tip"), invariant(left, "left"), invariant(right, "right")];
      return { dx: t.x - (l.x + r.x) / 2, dy: t.y - (l.y + r.y) / 2 };
    });

describe("the ink of the demo works' strips", () => {
  it("has strips to judge", () => {
    expect(strips.length).toBeGreaterThan(15);
  });

  it.each(strips.map((strip) => [`${strip.patch.key} on ${strip.baseSize.label}`, strip] as const))(
    "%s",
    (_key, { patch, ink, baseSize }) => {
      const paper = paperOf(patch);
      const words = ink.filter(isText);
      const offPaper = [
        ...words.flatMap(cornersOf).filter(([x, y]) => !isOn(paper, x, y)),
        ...ink
          .filter(isLine)
          .flatMap(({ edges }) => edges.flatMap(({ a, b }) => [a, b]))
          .filter(({ x, y }) => !isOn(paper, x, y)),
      ];
      expect(offPaper).toEqual([]);

      const boxes = words.map((one) => ({ text: one.text, box: new Polygon(cornersOf(one)) }));
      const crossing = boxes.flatMap((one, index) =>
        boxes
          .slice(index + 1)
          .flatMap((other) =>
            one.box.intersect(other.box).length > 0 || one.box.contains(other.box)
              ? [`${one.text} × ${other.text}`]
              : [],
          ),
      );
      expect(crossing).toEqual([]);

      const leaders = ink
        .filter(isLine)
        .filter(({ role }) => role === "note")
        .flatMap(({ edges }) => edges);
      const struckOut = leaders.flatMap(({ a, b }) =>
        boxes.filter(({ box }) => box.intersect(new Segment(new Point(a.x, a.y), new Point(b.x, b.y))).length > 1),
      );
      expect(struckOut.map(({ text }) => text)).toEqual([]);

      expect(Math.min(...words.map(({ size }) => size))).toBeGreaterThanOrEqual(2.8);

      // One arrow up the piece, one to the centre line.
      const heads = headsOf(ink);
      expect(heads).toHaveLength(2);
      expect(heads[0]?.dx).toBeCloseTo(0, 9);
      expect(heads[0]?.dy).toBeLessThan(0);
      expect(heads[1]?.dy).toBeCloseTo(0, 9);
      expect(heads[1]?.dx).toBeLessThan(0);

      const said = words.map(({ text }) => text).join("\n");
      expect(said).toContain(baseSize.label);
      expect(said).toMatch(/up, to the (?:neck|waist|bust)/);
      expect(said).toMatch(/centre (?:front|back) this way/);
      // A name at every cross.
      expect(words.filter(({ role }) => role === "layOn")).toHaveLength(patch.layOn.length);
      // All lines of the wearer's own, and only those, are heavy.
      expect(ink.filter(isLine).filter(({ role, closed }) => role === "changed" && !closed)).toHaveLength(
        patch.changed.length,
      );
      expect(ink.filter(isLine).filter(({ role }) => role === "layOn")).toHaveLength(
        patch.baseSize.filter(({ kind }) => kind !== "level").length,
      );
    },
  );
});

describe("what is written on a strip", () => {
  const front = invariant(strips[0], "strip");
  const textsOf = (at: number): readonly string[] =>
    invariant(strips[at], "strip")
      .ink.filter(isText)
      .map(({ text }) => text);
  const said = textsOf(0);

  it("names the piece, the seams, and the printed line it is laid on", () => {
    // Side and waist together are longer than a sheet of A4: two strips.
    expect(said.slice(0, 3)).toEqual([
      "Front, strip 1 of 2",
      "side seam, bust line to waist",
      "Lay the dashed line on the 12 line of the front.",
    ]);
    expect(textsOf(1).slice(0, 3)).toEqual([
      "Front, strip 2 of 2",
      "waist seam, side seam to waist dart, outer end",
      "Lay the dashed line on the 12 line of the front.",
    ]);
  });

  it("tells how far off the lower printed line the waist runs, and names the printed points", () => {
    expect(said).toContain("waist: 3 mm outside the 14 line");
    expect(said).toEqual(expect.arrayContaining(["side waist", "side dart, upper end", "side dart, lower end"]));
  });

  it("draws each printed size by its own dash", () => {
    const sizes = front.ink
      .filter(isLine)
      .filter(({ role }) => role === "printed")
      .map(({ size }) => size);
    // 14 and 16 of the chart 6, 8, 10, …: counted from 0, the fifth and the sixth.
    expect(new Set(sizes)).toEqual(new Set([4, 5]));
  });
});
