/**
 * Whole files of the demo works, read back by Poppler and xmldom: what is drawn on paper is what the core drew, at true
 * scale, wherever it was laid and whichever page it came on. Of the other papers and kinds `npm test` makes half, others for
 * each work; `npm run whole -- makePaper` makes all.
 */
import { DOMParser } from "@xmldom/xmldom";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { lineEdge } from "../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../src/core/geometry/point";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Plan } from "../../src/core/plan/plan";
import type { Work } from "../../src/core/decisions/work";
import { layPieces } from "../../src/core/sheets/layPieces";
import { outlineOf } from "../../src/core/pattern/ring";
import { invariant } from "../../src/core/result";
import { readWorkFile } from "../../src/document/workFile";
import { placedInk } from "../../src/drawing/placeInk";
import { tiledPages } from "../../src/drawing/sheetPages";
import { makePaper, previewPaper } from "../../src/paper/makePaper";
import { writePdf } from "../../src/paper/pdf";
import type { PaperChoices, PaperFile, PaperMade, PaperRequest } from "../../src/paper/request";
import { linesOf, pageSizes, textOf } from "../support/poppler";
import { shareOf } from "../support/share";
import { TYPEFACES as typefaces } from "../support/inkPages";
import { planOf, ref, testWork, withAlterations } from "../support/works";

const DEMOS = ["wren-waist", "wren-hip", "harbour", "tansy-midriff", "sorrel-princess"] as const;
const TEN = ["6", "8", "10", "12", "14", "16", "18", "20", "22", "24"];

function demo(name: string): Work {
  const read = readWorkFile(readFileSync(`demo-data/${name}.json`, "utf8"));
  if (!read.ok) throw new Error(name);
  return read.value;
}

function planned(work: Work): Plan {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  return plan.value;
}

function asked(work: Work, choices: Partial<PaperChoices> = {}): PaperRequest {
  const plan = planned(work);
  const pieces = plan.left.pieces.map(({ name }) => name);
  return {
    work,
    plan,
    day: "2026-11-25",
    choices: {
      kind: "pieces",
      format: "A4",
      margin: 10,
      size: null,
      pieces,
      under: [],
      before: false,
      allowances: true,
      ...choices,
    },
  };
}

function made(request: PaperRequest, file: PaperFile): PaperMade {
  const result = makePaper(request, file, typefaces, () => undefined);
  if (!result.ok) throw new Error(result.failure.code);
  return result.value;
}

const files = new WeakMap<PaperRequest, Uint8Array>();

/** The PDF of a request, made once however often it is looked at. */
function pdfOf(request: PaperRequest): Uint8Array {
  const bytes = files.get(request) ?? made(request, "pdf").bytes;
  files.set(request, bytes);
  return bytes;
}

/** The pieces of each demo on A4. */
const onA4 = new Map<string, PaperRequest>(DEMOS.map((name) => [name, asked(demo(name))]));
const piecesOnA4 = (name: string): PaperRequest => invariant(onA4.get(name), name);

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Every corner and every control point of the lines of all pages with pieces, where the joined pages put them. */
function spotsOnSheet(
  bytes: Uint8Array,
  names: readonly string[],
  step: Spot,
  margin: number,
  before = 1,
): readonly Spot[] {
  return names.flatMap((name, index) => {
    const [, letter = "A", row = "1"] = /^([A-Z])(\d+)$/u.exec(name) ?? [];
    const [dx, dy] = [(letter.charCodeAt(0) - 65) * step.x - margin, (Number(row) - 1) * step.y - margin];
    return linesOf(bytes, index + before + 1).flatMap(({ steps }) =>
      steps.flatMap(({ numbers }) =>
        Array.from({ length: numbers.length / 2 }, (_, i) => ({
          x: (numbers[2 * i] ?? 0) + dx,
          y: (numbers[2 * i + 1] ?? 0) + dy,
        })),
      ),
    );
  });
}

/** Spots by the cells of 1 mm they lie in. */
function cellsOf(spots: readonly Spot[]): (x: number, y: number) => readonly Spot[] {
  const rows = new Map<number, Map<number, Spot[]>>();
  for (const spot of spots) {
    const [x, y] = [Math.round(spot.x), Math.round(spot.y)];
    const row = rows.get(y) ?? new Map<number, Spot[]>();
    rows.set(y, row.set(x, [...(row.get(x) ?? []), spot]));
  }
  return (x, y) => rows.get(y)?.get(x) ?? [];
}

/** The largest distance from any point, laid by the best of all quarter turns and moves, to the nearest spot; mm. */
function worstMiss(points: readonly Spot[], spots: readonly Spot[]): number {
  const cell = cellsOf(spots);
  const missOf = (x: number, y: number): number => {
    let least = Infinity;
    const [column, row] = [Math.round(x), Math.round(y)];
    for (let i = -1; i <= 1; i += 1)
      for (let j = -1; j <= 1; j += 1)
        for (const spot of cell(column + i, row + j)) {
          const square = (spot.x - x) ** 2 + (spot.y - y) ** 2;
          if (square < least) least = square;
        }
    return Math.sqrt(least);
  };
  let best = Infinity;
  for (const [cos, sin] of [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ] as const) {
    const turned = points.map(({ x, y }) => ({ x: x * cos - y * sin, y: x * sin + y * cos }));
    const [first] = turned;
    if (first === undefined) continue;
    for (const spot of spots) {
      let worst = 0;
      for (const p of turned) {
        worst = Math.max(worst, missOf(p.x + spot.x - first.x, p.y + spot.y - first.y));
        if (worst >= best) break;
      }
      best = Math.min(best, worst);
    }
  }
  return best;
}

/** Names of the pages, as they are printed: the map tells them in the order of the pages. */
function pageNames(request: PaperRequest): readonly string[] {
  const preview = previewPaper(request);
  if (!preview.ok) throw new Error(preview.failure.code);
  const texts = preview.value.map.groups.flatMap(({ ink }) =>
    ink.flatMap((one) => (one.kind === "text" ? [one.text] : [])),
  );
  return texts.filter((text) => /^[A-Z]\d+$/u.test(text));
}

/** Distinct spots, so that what two pages share is tried once. */
const distinct = (spots: readonly Spot[]): readonly Spot[] => [
  ...new Map(spots.map((spot) => [`${spot.x.toFixed(2)} ${spot.y.toFixed(2)}`, spot])).values(),
];

const OTHERS = [
  ["pieces", "Letter"],
  ["overlay", "A4"],
  ["overlay", "Letter"],
  ["overlay", "A0 roll"],
] as const;

describe.each(DEMOS)("what is promised of %s", (name) => {
  it.each([["pieces", "A4"] as const, ...shareOf(OTHERS, 2, DEMOS.indexOf(name))])(
    "of %s on %s is made, to the page",
    (kind, format) => {
      const request = kind === "pieces" && format === "A4" ? piecesOnA4(name) : asked(demo(name), { kind, format });
      const preview = previewPaper(request);
      if (!preview.ok) throw new Error(preview.failure.code);
      expect(pageSizes(pdfOf(request))).toHaveLength(preview.value.before + preview.value.pages);
    },
  );
});

describe.each(DEMOS)("the PDF of %s on A4", (name) => {
  const request = piecesOnA4(name);
  const pdf = pdfOf(request);
  const names = pageNames(request);

  it("has a page for every place on the map, and the map, all of A4 (ISO 216: 210 × 297 mm)", () => {
    const sizes = pageSizes(pdf);
    const before = sizes.length - names.length;
    expect(before).toBe(1);
    for (const [width, height] of sizes) {
      expect(width).toBeCloseTo(210, 1);
      expect(height).toBeCloseTo(297, 1);
    }
  });

  it("has a square of 100.0 mm and one of 4 in on every page", () => {
    for (let page = 1; page <= names.length + 1; page += 1) {
      const corners = linesOf(pdf, page).flatMap(({ steps }) =>
        steps.filter(({ command }) => command !== "Z").map(({ numbers: [x = 0, y = 0] }) => ({ x, y })),
      );
      for (const side of [100, 101.6]) {
        // Four corners of one square, its lower left one first.
        const has = (x: number, y: number): boolean =>
          corners.some((corner) => Math.abs(corner.x - x) < 0.05 && Math.abs(corner.y - y) < 0.05);
        expect(corners.some(({ x, y }) => has(x + side, y) && has(x + side, y - side) && has(x, y - side))).toBe(true);
      }
    }
  });

  it("gives back every corner and every control point of every seam to within 0.1 mm", () => {
    // Windows of 190 × 277 mm share 10 mm with the next: pages step by 180 and 267.
    const spots = distinct(spotsOnSheet(pdf, names, { x: 180, y: 267 }, 10));
    for (const piece of request.plan.left.pieces) {
      const seams = piece.edges.filter(({ mouthOf }) => mouthOf === null);
      const points = outlineOf({ ...piece, edges: seams }).flatMap(({ a, b, curve }) =>
        curve === null ? [a, b] : [a, curve.c1, curve.c2, b],
      );
      expect(worstMiss(points, spots)).toBeLessThan(0.1);
    }
  }, 240_000);

  it("says on the map what it is, and whose", () => {
    const first = textOf(pdf, 1).replaceAll(/\s+/gu, " ");
    expect(first).toContain(request.work.name);
    expect(first).toContain("Invented demo");
    expect(first).toContain("25 November 2026");
  });
});

describe("a strip of 1000 mm over several pages", () => {
  const ring = [piecePoint(0, 0), piecePoint(40, 0), piecePoint(40, 1000), piecePoint(0, 1000)];

  it("is 1000.0 mm long when they are joined", () => {
    const layout = layPieces([{ key: "strip", ring }], {
      format: { width: 210, height: 297 },
      margin: 10,
      overlap: 10,
      gap: 0,
    });
    if (!layout.ok) throw new Error(layout.failure.code);
    const [placement] = layout.value.placements;
    if (placement === undefined) throw new Error("nothing laid");
    const ink = placedInk(
      [{ kind: "line", role: "changed", edges: [lineEdge(piecePoint(20, 0), piecePoint(20, 1000))], closed: false }],
      placement,
    );
    const pages = tiledPages(layout.value, [{ key: "strip", label: "Strip", ink }], {
      paper: { width: 210, height: 297 },
      margin: 10,
      overlap: 10,
      name: "Strip",
      joined: true,
    });
    const pdf = writePdf(pages, { title: "Strip", typefaces, day: "2026-11-25" });
    expect(pages.length).toBeGreaterThan(3);
    // Along whichever way it lies, what each page shows of the line, where the joined pages put it.
    const shown = pages.flatMap(({ name }, index) => {
      const [, letter = "A", row = "1"] = /^([A-Z])(\d+)$/u.exec(name) ?? [];
      return linesOf(pdf, index + 1).flatMap(({ steps }) => {
        const [x0 = 0, y0 = 0] = steps[0]?.numbers ?? [];
        const [x1 = 0, y1 = 0] = steps[1]?.numbers ?? [];
        if (steps.length !== 2 || Math.hypot(x1 - x0, y1 - y0) < 900) return [];
        const upright = Math.abs(y1 - y0) > 900;
        const off = upright ? (Number(row) - 1) * 267 - 10 : (letter.charCodeAt(0) - 65) * 180 - 10;
        const [from, to] = upright ? [Math.min(y0, y1), Math.max(y0, y1)] : [Math.min(x0, x1), Math.max(x0, x1)];
        const edge = upright ? 287 : 200;
        return [{ from: Math.max(from, 10) + off, to: Math.min(to, edge) + off }];
      });
    });
    const sorted = shown.toSorted((a, b) => a.from - b.from);
    expect(sorted).toHaveLength(pages.length);
    sorted.slice(1).forEach(({ from }, index) => expect(from).toBeLessThan((sorted[index]?.to ?? 0) + 0.01));
    expect(Math.max(...sorted.map(({ to }) => to)) - Math.min(...sorted.map(({ from }) => from))).toBeCloseTo(1000, 1);
  });
});

describe("what is said on the first page", () => {
  it("is what does not hold, before anything is cut", () => {
    // A dart that ends past the bust point.
    const work = withAlterations({
      kind: "dartEnd",
      id: "a",
      dart: ref("front", "waistDart"),
      shorten: -60,
      across: 0,
      hold: "fullness",
      giveBack: {},
    });
    const failing = planOf(work).checks.filter(({ ok }) => !ok);
    expect(failing.length).toBeGreaterThan(0);
    const first = textOf(made(asked(work), "pdf").bytes, 1);
    expect(first).toContain("Before you cut");
    expect(first).toMatch(/does not hold|do not hold/u);
  });

  it("is told of a roll too, on its one page", () => {
    const pdf = made(asked(demo("wren-hip"), { format: "A0 roll" }), "pdf").bytes;
    const [[width] = [0]] = pageSizes(pdf);
    // ISO 216: A0 is 841 mm wide.
    expect(width).toBeCloseTo(841, 1);
    expect(textOf(pdf)).toContain("FRONT BASQUE");
    expect(textOf(pdf)).toContain("All");
  });

  it("is refused on a roll longer than a page of a PDF can be", () => {
    // ISO 32000-1: 14 400 points are 5080 mm. A hem allowance of 5 m makes basques longer than that.
    const long = makePaper(
      asked({ ...testWork, allowances: { hem: 5000 } }, { format: "A0 roll" }),
      "pdf",
      typefaces,
      () => undefined,
    );
    expect(long).toMatchObject({ ok: false, failure: { code: "paper/roll-too-long", most: 5079 } });
    expect(!long.ok && long.failure.code === "paper/roll-too-long" && long.failure.length > 5079).toBe(true);
  });
});

describe("a whole nest", () => {
  const request = asked(demo("tansy-midriff"), { under: TEN, before: true });

  it("comes as the same bytes twice, in at most 500 kB", () => {
    const [one, other] = [pdfOf(request), made(request, "pdf").bytes];
    expect(Buffer.from(one).equals(Buffer.from(other))).toBe(true);
    expect(one.length).toBeLessThan(500_000);
  });

  it("names the sizes it draws", () => {
    const first = textOf(pdfOf(request), 1);
    expect(TEN.filter((label) => first.includes(`size ${label}`))).toEqual(TEN);
  });

  it("draws no line outside the room that its pieces were given", () => {
    const preview = previewPaper(request);
    if (!preview.ok) throw new Error(preview.failure.code);
    const { before, map } = preview.value;
    const { width, height } = map;
    const names = pageNames(request);
    const spots = spotsOnSheet(pdfOf(request), names, { x: 180, y: 267 }, 10, before);
    // Controls of curves lie a little outside them.
    expect(spots.filter(({ x, y }) => x < -12 || y < -12 || x > width + 20 || y > height + 20)).toEqual([]);
  });
});

describe("the SVG of a work", () => {
  const { bytes, mediaType } = made(asked(demo("sorrel-princess")), "svg");
  const root = new DOMParser().parseFromString(new TextDecoder().decode(bytes), "image/svg+xml").documentElement;

  it("is in millimetres, with a group for every piece", () => {
    expect(mediaType).toBe("image/svg+xml");
    expect(root?.getAttribute("width")).toMatch(/^[\d.]+mm$/u);
    expect(root?.getAttribute("viewBox")).toBe(
      `0 0 ${root?.getAttribute("width")?.replace("mm", "")} ${root?.getAttribute("height")?.replace("mm", "")}`,
    );
    const ids = [...(root?.getElementsByTagName("g") ?? [])].map((group) => group.getAttribute("id"));
    // With squares of its own to measure.
    expect(ids).toContain("test-square");
    for (const key of ["centreFront", "sideFront", "back", "frontBasque", "backBasque"]) expect(ids).toContain(key);
  });
});

describe("the overlay", () => {
  /** A basque cut across and slid apart: all below moved as it is. */
  const longer = withAlterations({ kind: "fit", id: "a", fit: "lengthBasque", amount: 40 });

  it("has strips for a piece whose parts were turned by a bust adjustment", () => {
    const preview = previewPaper(asked(demo("wren-waist"), { kind: "overlay" }));
    if (!preview.ok) throw new Error(preview.failure.code);
    const named = preview.value.map.groups.flatMap(({ ink }) =>
      ink.flatMap((one) => (one.kind === "text" ? [one.text] : [])),
    );
    expect(named.some((text) => text.startsWith("Front"))).toBe(true);
    expect(preview.value.notes.join(" ")).not.toContain("Front");
  });

  it("has the same pieces on Letter as on A4", () => {
    const [a4, letter] = (["A4", "Letter"] as const).map((format) =>
      previewPaper(asked(demo("wren-hip"), { kind: "overlay", format })),
    );
    expect(a4?.ok === true && a4.value.notes).toEqual(letter?.ok === true && letter.value.notes);
  });

  it("takes fewer pages than the pieces", () => {
    const pages = (choices: Partial<PaperChoices>): number => {
      const preview = previewPaper(asked(demo("wren-hip"), choices));
      return preview.ok ? preview.value.pages : Number.NaN;
    };
    expect(pages({ kind: "overlay" })).toBeLessThanOrEqual(pages({}) / 3);
  });

  it("says which pieces it cannot show", () => {
    const preview = previewPaper(asked(longer, { kind: "overlay" }));
    expect(preview.ok && preview.value.notes.join(" ")).toContain("Front basque: its parts are cut and moved");
  });

  it("is refused where nothing it could show is left", () => {
    expect(previewPaper(asked(longer, { kind: "overlay", pieces: ["frontBasque"] }))).toEqual({
      ok: false,
      failure: { code: "paper/overlay-too-much", pieces: ["frontBasque"] },
    });
  });

  it("is not written as DXF", () => {
    expect(makePaper(asked(demo("wren-hip"), { kind: "overlay" }), "dxf", typefaces, () => undefined)).toEqual({
      ok: false,
      failure: { code: "paper/overlay-no-dxf" },
    });
  });
});

describe("drawing files", () => {
  it("are made though the paper chosen is too narrow for the pieces", () => {
    const wide = asked(testWork, { format: "A4", margin: 45 });
    expect(previewPaper(wide)).toMatchObject({ ok: false, failure: { code: "sheet/page-too-small" } });
    expect(made(wide, "svg").pages).toBe(1);
    expect(made(wide, "dxf").pages).toBe(1);
  });

  it("are refused where no piece is chosen", () => {
    for (const file of ["pdf", "svg", "dxf"] as const) {
      expect(makePaper(asked(testWork, { pieces: [] }), file, typefaces, () => undefined)).toEqual({
        ok: false,
        failure: { code: "sheet/nothing-to-lay" },
      });
    }
  });

  it("tell how far they have come, from nothing to all", () => {
    const shares: number[] = [];
    makePaper(asked(testWork), "pdf", typefaces, ({ share }) => shares.push(share));
    expect(shares[0]).toBe(0);
    expect(shares.at(-1)).toBe(1);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
  });
});
