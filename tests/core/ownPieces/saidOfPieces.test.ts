/** What she says of her pieces, and what is written on them: bust points, darts, allowances, squares. */
import { describe, expect, it } from "vitest";
import type { FileDrawing } from "../../../src/core/decisions/fileDrawing";
import type { OwnPieceSaid } from "../../../src/core/decisions/ownPattern";
import type { Pattern } from "../../../src/core/decisions/pattern";
import { readOutlines } from "../../../src/core/outlines/readOutlines";
import { readOwn } from "../../../src/core/ownPieces/readOwn";
import type { PieceReading } from "../../../src/core/ownPieces/ownReading";
import { chartOf } from "../../support/foreign/asTraced";
import { drawingOf, type DrawnHow, type TrueOutline } from "../../support/foreign/drawingOf";
import { foreignNest } from "../../support/foreign/foreignNest";
import type { XY } from "../../support/foreign/plane";
import { sampleWork } from "../../support/sampleWork";

function drawn(how: DrawnHow = {}) {
  const nest = foreignNest({ seed: 3, basque: false, front: "side", other: true });
  const { drawing, truth } = drawingOf(nest, { seed: 3, titles: true, ...how });
  const pattern: Pattern = { ...sampleWork.pattern, chart: chartOf(nest), style: nest.style, length: "waist" };
  const read = (pieces: readonly OwnPieceSaid[] = [], lines: FileDrawing = drawing) =>
    readOwn({ own: { file: "nest", drawing: lines, pieces }, pattern });
  const fronts = truth.filter(({ piece }) => piece === "front");
  return { drawing, fronts, read };
}

const frontOf = (pieces: readonly PieceReading[]): PieceReading => {
  const front = pieces.find(({ said }) => said.name === "front");
  if (front === undefined) throw new Error("front");
  return front;
};

const off = (a: XY | null | undefined, b: XY | undefined): number =>
  a == null || b === undefined ? Infinity : Math.hypot(a.x - b.x, a.y - b.y);

const bustOf = ({ inside }: TrueOutline): XY => {
  const at = inside.bustPoint;
  if (at === undefined) throw new Error("bust point");
  return at;
};

describe("a bust point", () => {
  it("that is said in one size is there, and in the others as far from where their darts lead", () => {
    const { fronts, read } = drawn();
    const before = frontOf(read().pieces);
    expect(before.problems.map(({ code }) => code)).toContain("own/no-bust-point");
    const [one, other] = [fronts[1], fronts[0]];
    if (one === undefined || other === undefined) throw new Error("sizes");
    const at = { x: bustOf(one).x + 3, y: bustOf(one).y - 2 };
    const after = frontOf(read([{ id: before.id, name: "front", bustPoint: { size: one.size, at } }]).pieces);
    expect(after.problems.map(({ code }) => code)).not.toContain("own/no-bust-point");
    const found = (reading: PieceReading, size: string): XY | null | undefined =>
      reading.sizes.find((each) => each.size === size)?.bustPoint;
    expect(off(found(after, one.size), at)).toBeLessThan(1e-6);
    const [led, there] = [found(before, one.size), found(before, other.size)];
    if (led == null || there == null) throw new Error("led to");
    const moved = { x: there.x + at.x - led.x, y: there.y + at.y - led.y };
    expect(off(found(after, other.size), moved)).toBeLessThan(0.01);
  });

  it("that is said is there in the file's own units", () => {
    const unit = 10;
    const { fronts, read } = drawn({ unit });
    const [one] = fronts;
    if (one === undefined) throw new Error("size");
    const { id } = frontOf(read().pieces);
    const at = { x: (bustOf(one).x + 3) / unit, y: (bustOf(one).y - 2) / unit };
    const after = read([{ id, name: "front", bustPoint: { size: one.size, at } }]);
    expect(off(frontOf(after.pieces).sizes.find(({ size }) => size === one.size)?.bustPoint, at)).toBeLessThan(1e-6);
    // On the piece it lies as far from the waist's side corner as on the sheet.
    const piece = after.nest?.sizes
      .find(({ label }) => label === one.size)
      ?.pieces.find(({ name }) => name === "front");
    const side = one.corners.sideWaist;
    if (side === undefined) throw new Error("side waist");
    const reach = off({ x: at.x * unit, y: at.y * unit }, side);
    expect(off(piece?.points.bustPoint?.at, piece?.points.sideWaist?.at)).toBeCloseTo(reach, 3);
  });

  it.each(["Bust point", "BP", "b.p.", "APEX"])("is where %s stands written", (text) => {
    const { drawing, fronts, read } = drawn();
    const writings = fronts.map((front) => ({ ...bustOf(front), text, layer: `Size ${front.size}`, group: "" }));
    const front = frontOf(read([], { ...drawing, writings: [...drawing.writings, ...writings] }).pieces);
    expect(front.problems).toEqual([]);
    for (const { size, bustPoint } of front.sizes) {
      const wanted = fronts.find((one) => one.size === size);
      const away = off(bustPoint, wanted === undefined ? undefined : bustOf(wanted));
      expect(away).toBeLessThan(1e-3);
    }
  });

  it("is not where other words stand", () => {
    const { drawing, fronts, read } = drawn();
    const writings = fronts.map((front) => ({ ...bustOf(front), text: "Point", layer: "", group: "" }));
    const front = frontOf(read([], { ...drawing, writings: [...drawing.writings, ...writings] }).pieces);
    expect(front.problems.map(({ code }) => code)).toContain("own/no-bust-point");
  });
});

describe("a dart that she points at", () => {
  const { fronts, read } = drawn({ darts: "none" });
  const middle = fronts[1];
  const dart = middle?.darts.find(({ name }) => name === "waistDart");
  const front = frontOf(read().pieces);
  if (middle === undefined || dart === undefined) throw new Error("waist dart");
  const said = (apex: XY): OwnPieceSaid => ({
    id: front.id,
    name: "front",
    darts: [{ name: "waistDart", size: middle.size, inner: dart.inner, outer: dart.outer, apex }],
  });

  it("is a dart there, and of every other size", () => {
    expect(front.sizes.flatMap(({ darts }) => darts)).toEqual([]);
    const after = frontOf(read([said(dart.apex)]).pieces);
    for (const { darts } of after.sizes) expect(darts.map(({ name }) => name)).toEqual(["waistDart"]);
    const own = after.sizes.find(({ size }) => size === middle.size)?.darts[0];
    expect(Math.max(off(own?.inner, dart.inner), off(own?.outer, dart.outer), off(own?.apex, dart.apex))).toBeLessThan(
      0.05,
    );
    // The intake of each size grows as its waist does; none is another's by more than that.
    for (const size of after.sizes) {
      const [there] = size.darts;
      if (there === undefined) throw new Error(size.size);
      expect(Math.abs(off(there.inner, there.outer) / off(dart.inner, dart.outer) - 1)).toBeLessThan(0.2);
    }
  });

  it("has no end where she points beyond the piece", () => {
    const below = { x: dart.apex.x, y: Math.max(dart.inner.y, dart.outer.y) + 60 };
    const after = frontOf(read([said(below)]).pieces);
    expect(after.problems).toContainEqual({ code: "own/dart-no-end", dart: "waistDart", size: middle.size });
  });
});

describe("other pieces", () => {
  it("are carried with her word for them, at the levels she gives", () => {
    const { read } = drawn();
    const first = read();
    // Of all groups the one that is no piece of the style.
    const other = first.pieces.find(({ said }) => said.name !== "front" && said.name !== "back");
    if (other === undefined) throw new Error("other piece");
    const said: OwnPieceSaid = {
      id: other.id,
      name: "other1",
      label: "collar",
      levels: { top: "neck", bottom: "shoulder" },
    };
    const { nest } = read([said]);
    expect(nest?.labels.other1).toBe("collar");
    for (const { pieces } of nest?.sizes ?? []) {
      const points = Object.values(pieces.find(({ name }) => name === "other1")?.points ?? {});
      const levels = new Set(points.flatMap(({ level, towards }) => [level, ...(towards ? [towards.level] : [])]));
      expect(levels).toEqual(new Set(["neck", "shoulder"]));
      const [top, low] = [...points]
        .toSorted((p, q) => p.at.y - q.at.y)
        .flatMap((p, i, all) => (i === 0 || i === all.length - 1 ? [p] : []));
      expect([top?.level, top?.towards, low?.level]).toEqual(["neck", undefined, "shoulder"]);
    }
  });
});

describe("an allowance", () => {
  it("that is wider than the piece is told, and is in the way", () => {
    const { read } = drawn();
    const { id } = frontOf(read().pieces);
    const said: OwnPieceSaid = {
      id,
      name: "front",
      line: "cutting",
      allowances: { centre: 0, neck: 10, shoulder: 15, armhole: 10, side: 400, waist: 15 },
    };
    const { missing, pieces, nest } = read([said]);
    expect(frontOf(pieces).problems.some(({ code }) => code === "own/allowance-too-wide")).toBe(true);
    expect(missing.map(({ code }) => code)).toContain("missing/problem");
    expect(nest).toBeNull();
  });
});

describe("squares one in the other, each with its length written", () => {
  const square = (x: number, side: number): string => {
    const [a, b] = [x - side / 2, x + side / 2];
    return `M${a} ${a}L${b} ${a}L${b} ${b}L${a} ${b}Z`;
  };
  const read = (outer: number, unit: number | null) =>
    readOutlines({
      own: {
        file: "squares",
        pieces: [],
        drawing: {
          format: "svg",
          unit: unit === null ? null : { mm: unit, saidBy: "size" },
          lines: [
            {
              look: { layer: "", group: "", colour: "#000000", dash: "", width: 0.2 },
              paths: [square(200, 100), square(200, outer)],
            },
          ],
          points: [],
          writings: [
            { x: 190, y: 205, text: "100 mm", layer: "", group: "" },
            { x: 190, y: 220, text: "4 in", layer: "", group: "" },
          ],
          hiddenLayers: [],
        },
      },
      labels: [],
    }).scale;

  it("agree", () => {
    expect(read(101.6, 1).disagree).toBe(false);
    expect(read(101.6, null)).toMatchObject({ mm: 1, disagree: false });
  });

  it("contradict a file that says another unit, and one another where one is drawn too large", () => {
    expect(read(101.6, 1.1).disagree).toBe(true);
    expect(read(110, 1).disagree).toBe(true);
  });
});
