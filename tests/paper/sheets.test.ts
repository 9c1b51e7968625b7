/** What lies under a piece: printed sizes and the piece before her alterations, turned over with the half they belong to. */
import { describe, expect, it } from "vitest";
import { outlineOf } from "../../src/core/pattern/ring";
import type { PieceName } from "../../src/core/pattern/piece";
import { layOut, layStrips, piecesToLay, truePiecesFor, type Laid } from "../../src/paper/sheets";
import type { PaperRequest } from "../../src/paper/request";
import { FORMATS } from "../../src/core/sheets/formats";
import { lineEdge } from "../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../src/core/geometry/point";
import { planOf, testWork, withAlterations } from "../support/works";

const work = {
  ...withAlterations({ kind: "fit", id: "a", fit: "shoulderSlope", amount: -8, half: "left" }),
  pattern: { ...testWork.pattern, length: "waist" as const },
};
const plan = planOf(work);
const NAMES: readonly PieceName[] = ["front", "back"];
const request: PaperRequest = {
  work,
  plan,
  day: "2026-11-25",
  choices: {
    kind: "pieces",
    format: "A4",
    margin: 10,
    size: null,
    pieces: NAMES,
    under: ["16"],
    before: true,
    allowances: true,
  },
};

const laid = (): readonly Laid[] => {
  const pieces = truePiecesFor(request);
  return pieces.ok ? piecesToLay(request, pieces.value) : [];
};

/** The corners of the first line of a role. */
const cornersOf = (key: string, role: "before" | "printed"): readonly string[] => {
  const ink =
    laid()
      .find((one) => one.key === key)
      ?.ink([]) ?? [];
  const line = ink.find((one) => one.kind === "line" && one.role === role);
  return line === undefined || line.kind !== "line"
    ? []
    : line.edges.map(({ a }) => `${a.x.toFixed(3)} ${a.y.toFixed(3)}`);
};

const told = (name: PieceName, from: typeof plan.left.pieces, turned: boolean): readonly string[] => {
  const piece = from.find((one) => one.name === name);
  return piece === undefined
    ? []
    : outlineOf(piece).map(
        ({ a }) => `${(turned ? -a.x : a.x).toFixed(3).replace("-0.000", "0.000")} ${a.y.toFixed(3)}`,
      );
};
const plain = (corners: readonly string[]): readonly string[] =>
  corners.map((corner) => corner.replace(/^-0\.000/u, "0.000"));

describe("under a piece", () => {
  it.each([
    ["front-left", "front", false],
    ["front-right", "front", true],
    ["back-left", "back", true],
    ["back-right", "back", false],
  ] as const)(
    "%s lie the pieces before her alterations and the printed size, the same way round",
    (key, name, turned) => {
      const printed = plan.nest.sizes[plan.nest.labels.indexOf("16")] ?? [];
      expect(plain(cornersOf(key, "before"))).toEqual(told(name, plan.blended, turned));
      expect(plain(cornersOf(key, "printed"))).toEqual(told(name, printed, turned));
    },
  );

  it("there is room for all of it", () => {
    for (const { ring, ink } of laid()) {
      const lines = ink([]).flatMap((one) =>
        one.kind === "line" && (one.role === "printed" || one.role === "before" || one.role === "cutting")
          ? one.edges.map(({ a }) => a)
          : [],
      );
      const [xs, ys] = [ring.map(({ x }) => x), ring.map(({ y }) => y)];
      for (const { x, y } of lines) {
        expect(x).toBeGreaterThan(Math.min(...xs));
        expect(x).toBeLessThan(Math.max(...xs));
        expect(y).toBeGreaterThan(Math.min(...ys));
        expect(y).toBeLessThan(Math.max(...ys));
      }
    }
  });
});

/** A strip of paper so wide and high, at the origin. */
function strip(key: string, width: number, height: number): Laid {
  const ring = [piecePoint(0, 0), piecePoint(width, 0), piecePoint(width, height), piecePoint(0, height)];
  return {
    key,
    label: key,
    ring,
    ink: () => [],
    outline: [
      { kind: "line", role: "cutting", closed: true, edges: ring.map((a, i) => lineEdge(a, ring[(i + 1) % 4] ?? a)) },
    ],
  };
}

describe("strips", () => {
  it("lie each on one page, and pages are not joined", () => {
    // Windows of 190 × 277 mm: three strips of 80 mm need two pages, laid as pieces they might run over.
    const sheet = layStrips([strip("a", 80, 270), strip("b", 80, 270), strip("c", 80, 270)], FORMATS.A4, 10);
    if (!sheet.ok) throw new Error(sheet.failure.code);
    const { layout, joined } = sheet.value;
    expect(joined).toBe(false);
    expect(layout.joins).toEqual([]);
    expect(layout.tiles).toHaveLength(2);
    for (const { ink } of sheet.value.outlines) {
      const corners = ink.flatMap((one) => (one.kind === "line" ? one.edges.map(({ a }) => a) : []));
      const on = layout.tiles.filter(({ x, y, width, height }) =>
        corners.every((c) => c.x >= x - 0.01 && c.x <= x + width + 0.01 && c.y >= y - 0.01 && c.y <= y + height + 0.01),
      );
      expect(on).toHaveLength(1);
    }
  });

  it("larger than a page are joined like pieces", () => {
    const sheet = layStrips([strip("a", 80, 600)], FORMATS.A4, 10);
    expect(sheet.ok && sheet.value.joined).toBe(true);
    expect(sheet.ok && sheet.value.layout.tiles.length).toBeGreaterThan(1);
  });

  it("lie on a roll as they come", () => {
    const sheet = layStrips([strip("a", 80, 600)], FORMATS["A0 roll"], 10);
    expect(sheet.ok && sheet.value.layout.tiles).toHaveLength(1);
    expect(layOut([], FORMATS.A4, 10)).toEqual({ ok: false, failure: { code: "sheet/nothing-to-lay" } });
  });
});
