import { SHEET_FORMATS, type SheetFormat } from "../../src/core/decisions/paperChoice";
import * as fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { sheetPoint } from "../../src/core/geometry/point";
import { FORMATS } from "../../src/core/sheets/formats";
import type { InkPage } from "../../src/drawing/ink";
import { SIZE_DASHES } from "../../src/drawing/inkLook";
import { LONGEST_PAGE, writePdf } from "../../src/paper/pdf";
import { anyAmount } from "../support/amounts";
import { AWKWARD, inkCurve, inkGroup, inkLine, inkPage, inkText, PDF_OPTIONS } from "../support/inkPages";
import { openPdf, pdfLines, pdfWriting } from "../support/pdfjs";
import { fontsOf, linesOf, pageSizes, pdfInfo, textOf } from "../support/poppler";

// Each reading starts a program or loads a document afresh.
vi.setConfig({ testTimeout: 120_000 });

/** What a whole sheet may be off by on paper, and what a file may be: mm. */
const ON_PAPER = 0.1;
const IN_FILE = 0.001;

const SQUARE = inkLine(
  [
    [50, 60],
    [150, 60],
    [150, 160],
    [50, 160],
  ],
  { closed: true, role: "test" },
);

const bytesOf = (...pages: readonly InkPage[]): Uint8Array<ArrayBuffer> => writePdf(pages, PDF_OPTIONS);

/** Far the numbers lie from each other at the most. */
const farthest = (found: readonly number[], wanted: readonly number[]): number =>
  found.length === wanted.length
    ? Math.max(0, ...found.map((value, i) => Math.abs(value - (wanted[i] ?? NaN))))
    : Infinity;

describe("pages", () => {
  // ISO 216:2007 for A4, A3 and the width of A0; ANSI/ASME Y14.1 for A and B (8.5 × 11 in and 11 × 17 in, 1 in = 25.4 mm);
  // 36 in roll: common practice, no source.
  it.each<[SheetFormat, number, number]>([
    ["A4", 210, 297],
    ["A3", 297, 420],
    ["Letter", 8.5 * 25.4, 11 * 25.4],
    ["Tabloid", 11 * 25.4, 17 * 25.4],
    ["A0 roll", 841, 1500],
    ["36 in roll", 36 * 25.4, 1500],
  ])("are as large as %s", (format, width, height) => {
    const paper = FORMATS[format];
    const page = inkPage([inkGroup([SQUARE])], { width: paper.width, height: paper.height ?? 1500 });
    const [size] = pageSizes(bytesOf(page));
    expect(size?.[0]).toBeCloseTo(width, 2);
    expect(size?.[1]).toBeCloseTo(height, 2);
  });

  it("lie on their side where they are wider than high, and differ in one file", () => {
    const sizes = pageSizes(
      bytesOf(inkPage([], { width: 297, height: 210 }), inkPage([]), inkPage([], { width: 2000, height: 841 })),
    );
    expect(sizes.map((size) => size.map((length) => Math.round(length * 10) / 10))).toEqual([
      [297, 210],
      [210, 297],
      [2000, 841],
    ]);
  });

  it("are of every format there is", () => {
    expect(SHEET_FORMATS).toHaveLength(6);
  });

  it("are listed by their names", async () => {
    const doc = await openPdf(
      bytesOf(inkPage([], { name: "Map" }), inkPage([], { name: "A1" }), inkPage([], { name: "Łódź ✂" })),
    );
    expect(doc.numPages).toBe(3);
    expect((await doc.getOutline()).map(({ title }) => title)).toEqual(["Map", "A1", "Łódź □"]);
  });

  it("ask not to be scaled when printed", async () => {
    const asked = (await (await openPdf(bytesOf(inkPage([])))).getViewerPreferences()) as unknown;
    expect(asked).toMatchObject({ PrintScaling: "None" });
  });

  it("are told as they are done", () => {
    const told: string[] = [];
    writePdf([inkPage([]), inkPage([])], { ...PDF_OPTIONS, onPage: (done, of) => told.push(`${done} of ${of}`) });
    expect(told).toEqual(["1 of 2", "2 of 2"]);
  });

  it("are refused where there are none, or one is longer than a file can hold", () => {
    expect(() => bytesOf()).toThrow("without pages");
    expect(() => bytesOf(inkPage([], { height: LONGEST_PAGE + 1 }))).toThrow("too long");
    expect(pageSizes(bytesOf(inkPage([], { height: LONGEST_PAGE })))[0]?.[1]).toBeCloseTo(5079, 1);
  });
});

describe("the test square", () => {
  it("is 100 mm either way for Poppler", () => {
    const [square] = linesOf(bytesOf(inkPage([inkGroup([SQUARE])])));
    const corners = square?.steps.flatMap(({ numbers }) => numbers) ?? [];
    const xs = corners.filter((_, i) => i % 2 === 0);
    const ys = corners.filter((_, i) => i % 2 === 1);
    expect(Math.abs(Math.max(...xs) - Math.min(...xs) - 100)).toBeLessThan(ON_PAPER);
    expect(Math.abs(Math.max(...ys) - Math.min(...ys) - 100)).toBeLessThan(ON_PAPER);
    expect(Math.abs(Math.min(...xs) - 50)).toBeLessThan(ON_PAPER);
    expect(Math.abs(Math.min(...ys) - 60)).toBeLessThan(ON_PAPER);
  });

  it("is 100 mm either way for pdf.js, to 0.001 mm", async () => {
    const [square] = await pdfLines(bytesOf(inkPage([inkGroup([SQUARE])])));
    expect(square?.steps.map(({ command }) => command)).toEqual(["M", "L", "L", "L", "Z"]);
    expect(
      farthest(square?.steps.flatMap(({ numbers }) => numbers) ?? [], [50, 60, 150, 60, 150, 160, 50, 160]),
    ).toBeLessThan(IN_FILE);
  });
});

describe("a line of 1000 mm over several pages", () => {
  // Windows of 190 mm that run over into the next by 10 mm. Across the middle of each overlap stands a mark that is printed
  // on both pages; pages are joined by laying these on each other, so the line is as long as its parts between them.
  const STEP = 180;
  const MARKS = [1, 2, 3, 4, 5].map((page) => 5 + page * STEP);
  const ink = [
    inkLine([
      [8, 100],
      [1008, 100],
    ]),
    ...MARKS.map((x) =>
      inkLine(
        [
          [x, 90],
          [x, 110],
        ],
        { role: "join" },
      ),
    ),
  ];
  const pages = [0, 1, 2, 3, 4, 5].map((page) =>
    inkPage([inkGroup(ink, { dx: 10 - page * STEP, dy: 10, clip: { x: 10, y: 10, width: 190, height: 277 } })], {
      name: `${page}`,
    }),
  );
  const bytes = bytesOf(...pages);

  it("joins to 1000 mm", () => {
    const parts = pages.map((_, page) => {
      const found = linesOf(bytes, page + 1).map(({ steps }) => steps.flatMap(({ numbers }) => numbers));
      const xs = found.filter(([x1, , x2]) => Math.abs((x1 ?? 0) - (x2 ?? 0)) < 1e-3).map(([x = NaN]) => x);
      const line = found.find(([x1 = 0, , x2 = 0]) => Math.abs(x2 - x1) > 900) ?? [];
      const [from, to] = [line[0] ?? NaN, line[2] ?? NaN];
      return Math.min(to, ...xs.filter((x) => x > 150)) - Math.max(from, ...xs.filter((x) => x < 50));
    });
    expect(parts).toHaveLength(6);
    expect(Math.abs(parts.reduce((sum, part) => sum + part, 0) - 1000)).toBeLessThan(0.2);
  });

  it("carries on each page only the marks of that page", () => {
    expect(pages.map((_, page) => linesOf(bytes, page + 1).length)).toEqual([2, 3, 3, 3, 3, 2]);
  });
});

describe("points", () => {
  const anyPoint = fc.tuple(anyAmount(0, 900), anyAmount(0, 1500)).map(([x, y]) => sheetPoint(x, y));
  const anyMove = fc.tuple(anyAmount(-300, 300), anyAmount(-300, 300));

  it("of any curves stay where they are, and curves stay curves", async () => {
    const anyCurve = fc.tuple(anyPoint, anyPoint, anyPoint, anyPoint);
    await fc.assert(
      fc.asyncProperty(fc.array(anyCurve, { minLength: 1, maxLength: 20 }), anyMove, async (curves, [dx, dy]) => {
        const page = inkPage(
          [
            inkGroup(
              curves.map((points) => inkCurve(points)),
              { dx, dy },
            ),
          ],
          { width: 914.4, height: 1600 },
        );
        const found = await pdfLines(bytesOf(page));
        expect(found.flatMap(({ steps }) => steps.map(({ command }) => command))).toEqual(
          curves.flatMap(() => ["M", "C"]),
        );
        const wanted = curves.flatMap((points) => points.flatMap(({ x, y }) => [x + dx, y + dy]));
        expect(
          farthest(
            found.flatMap(({ steps }) => steps.flatMap(({ numbers }) => numbers)),
            wanted,
          ),
        ).toBeLessThan(IN_FILE);
      }),
      { numRuns: 4 },
    );
  });

  it("of a curve stay where they are for Poppler", () => {
    const points = [
      sheetPoint(20.123, 30.456),
      sheetPoint(60.5, 10.25),
      sheetPoint(140.75, 250.125),
      sheetPoint(180.999, 200.001),
    ] as const;
    const [curve] = linesOf(bytesOf(inkPage([inkGroup([inkCurve(points)])])));
    const numbers = curve?.steps.flatMap((step) => step.numbers) ?? [];
    expect(farthest(numbers, [20.123, 30.456, 60.5, 10.25, 140.75, 250.125, 180.999, 200.001])).toBeLessThan(ON_PAPER);
  });
});

describe("looks", () => {
  it("has the dash of each printed size, and begins anew after the last", async () => {
    const ink = [0, 1, 2, 8].map((size) =>
      inkLine(
        [
          [10, 10 + size],
          [90, 10 + size],
        ],
        { role: "printed", size },
      ),
    );
    const lines = await pdfLines(bytesOf(inkPage([inkGroup(ink)])));
    expect(SIZE_DASHES).toHaveLength(8);
    expect(lines.map(({ dash }) => dash.map((length) => Math.round(length * 100) / 100))).toEqual([
      [],
      [5, 1.5],
      [2, 1],
      [],
    ]);
  });

  it("draws widths in mm, and says a look afresh after a window and on a new page", async () => {
    const [cut, sew] = [
      inkLine([
        [10, 10],
        [90, 10],
      ]),
      inkLine(
        [
          [10, 20],
          [90, 20],
        ],
        { role: "stitch" },
      ),
    ];
    const clip = { x: 5, y: 5, width: 100, height: 100 };
    const bytes = bytesOf(
      inkPage([inkGroup([sew], { id: "a", clip }), inkGroup([sew, cut, sew], { id: "b" })]),
      inkPage([inkGroup([sew, cut])]),
    );
    const looks = (lines: Awaited<ReturnType<typeof pdfLines>>): unknown =>
      lines
        .filter(({ painted }) => painted !== "clip")
        .map(({ width, dash, colour }) => [Math.round(width * 1000) / 1000, dash.length, colour]);
    expect(looks(await pdfLines(bytes, 1))).toEqual([
      [0.25, 2, "#000000"],
      [0.25, 2, "#000000"],
      [0.5, 0, "#000000"],
      [0.25, 2, "#000000"],
    ]);
    expect(looks(await pdfLines(bytes, 2))).toEqual([
      [0.25, 2, "#000000"],
      [0.5, 0, "#000000"],
    ]);
  });

  it("fills what is filled", async () => {
    const triangle = inkLine(
      [
        [10, 10],
        [20, 10],
        [15, 20],
      ],
      { closed: true, filled: true, role: "grain" },
    );
    const lines = await pdfLines(bytesOf(inkPage([inkGroup([inkText("note", 50, 50), triangle])])));
    expect(lines.map(({ painted }) => painted)).toEqual(["fillStroke"]);
  });
});

describe("a window", () => {
  const clip = { x: 20, y: 30, width: 100, height: 120 };

  it("is cut out of the page", async () => {
    const lines = await pdfLines(
      bytesOf(
        inkPage([
          inkGroup(
            [
              inkLine([
                [0, 0],
                [200, 200],
              ]),
            ],
            { clip },
          ),
        ]),
      ),
    );
    expect(lines.map(({ painted }) => painted)).toEqual(["clip", "stroke"]);
    expect(
      farthest(lines[0]?.steps.flatMap(({ numbers }) => numbers) ?? [], [20, 30, 120, 30, 120, 150, 20, 150]),
    ).toBeLessThan(IN_FILE);
  });

  it("leaves out what cannot be seen through it", async () => {
    const around = inkLine(
      [
        [10, 20],
        [130, 20],
        [130, 160],
        [10, 160],
      ],
      { closed: true },
    );
    const seen = [
      inkLine([
        [100, 100],
        [300, 100],
      ]),
      inkLine([
        [0, 30.2],
        [10, 30.2],
        [300, 30.2],
      ]),
    ];
    const unseen = [
      inkLine([
        [121, 0],
        [121, 200],
      ]),
      around,
      inkText("beside", 125.1, 60),
      inkText("above", 60, 24),
    ];
    const bytes = bytesOf(
      inkPage([inkGroup([...unseen, ...seen, inkText("inside", 60, 60), inkText("leaning in", 10, 60)], { clip })]),
    );
    expect((await pdfLines(bytes)).map(({ painted }) => painted)).toEqual(["clip", "stroke", "stroke"]);
    expect((await pdfWriting(bytes)).map(({ text }) => text)).toEqual(["inside", "leaning in"]);
  });

  it("shows a filled figure that is larger than it", async () => {
    const around = inkLine(
      [
        [0, 0],
        [200, 0],
        [200, 290],
        [0, 290],
      ],
      { closed: true, filled: true },
    );
    expect((await pdfLines(bytesOf(inkPage([inkGroup([around], { clip })])))).map(({ painted }) => painted)).toEqual([
      "clip",
      "fillStroke",
    ]);
  });

  it("sees a closed line by the stretch that closes it", async () => {
    const corner = inkLine(
      [
        [60, 0],
        [0, 0],
        [0, 90],
      ],
      { closed: true },
    );
    const window = { x: 25, y: 40, width: 10, height: 10 };
    expect(await pdfLines(bytesOf(inkPage([inkGroup([corner], { clip: window })])))).toHaveLength(2);
  });
});

describe("writing", () => {
  it("keeps all letters that the typeface has, and replaces the others", () => {
    const page = inkPage([
      inkGroup([
        inkText(AWKWARD, 20, 30),
        inkText("34½″ 34⅛″ ⅜ ⅝ ⅞ 5′ 2 × −3", 20, 50),
        inkText("step ① cut ✂ here ノ", 20, 70, { bold: true }),
      ]),
    ]);
    const lines = textOf(bytesOf(page))
      .split("\n")
      .map((line) => line.trim());
    expect(lines).toContain("Łódź Ж “quotes” <&> □");
    expect(lines).toContain("34½″ 34⅛″ ⅜ ⅝ ⅞ 5′ 2 × −3");
    expect(lines).toContain("step 1 cut □ here □");
  });

  it("has its typefaces in the file, as far as they are used", () => {
    const plain = fontsOf(bytesOf(inkPage([inkGroup([inkText("plain", 20, 30)])])));
    const both = fontsOf(
      bytesOf(inkPage([inkGroup([inkText("plain", 20, 30), inkText("bold", 20, 40, { bold: true })])])),
    );
    expect(plain.map(({ name }) => name)).toEqual(["BODICE+SourceSans3-Regular"]);
    expect(both.map(({ name }) => name).toSorted()).toEqual(["BODICE+SourceSans3-Bold", "BODICE+SourceSans3-Regular"]);
    expect(both.every(({ embedded, subset, unicode }) => embedded && subset && unicode)).toBe(true);
    expect(fontsOf(bytesOf(inkPage([inkGroup([SQUARE])])))).toEqual([]);
  });

  it("stands where it is put, as large and as turned as told, by its start, middle or end", async () => {
    const anyText = fc.record({
      anchor: fc.constantFrom("start", "middle", "end"),
      turn: anyAmount(-3.1, 3.1),
      size: anyAmount(2, 12),
      bold: fc.boolean(),
    });
    const shares = { start: 0, middle: 0.5, end: 1 };
    await fc.assert(
      fc.asyncProperty(fc.array(anyText, { minLength: 1, maxLength: 10 }), async (texts) => {
        const page = inkPage(
          texts.map(({ bold, ...text }, i) =>
            inkGroup([inkText("Wide gap 34½″", 100, 150, { ...text, ...(bold ? { bold } : {}) })], { id: `${i}` }),
          ),
        );
        const found = await pdfWriting(bytesOf(page));
        expect(found).toHaveLength(texts.length);
        for (const [i, { x, y, width, size, turn }] of found.entries()) {
          const wanted = texts[i] ?? { anchor: "start", turn: NaN, size: NaN };
          expect(size).toBeCloseTo(wanted.size, 2);
          expect(Math.cos(turn - wanted.turn)).toBeCloseTo(1, 5);
          // The width is that of pdf.js, from the widths in the file.
          const along = shares[wanted.anchor] * width;
          expect(
            farthest([x + along * Math.cos(wanted.turn), y + along * Math.sin(wanted.turn)], [100, 150]),
          ).toBeLessThan(ON_PAPER);
        }
      }),
      { numRuns: 4 },
    );
  });

  it("is left out where there is nothing to write", async () => {
    expect(await pdfWriting(bytesOf(inkPage([inkGroup([inkText(" ", 20, 30), inkText("\u200D", 20, 40)])])))).toEqual(
      [],
    );
  });
});

describe("the file", () => {
  const page = inkPage([inkGroup([SQUARE, inkText(AWKWARD, 20, 30)])]);

  it("is the same for the same pages and options, and another on another day", () => {
    expect(bytesOf(page)).toEqual(bytesOf(page));
    expect(writePdf([page], { ...PDF_OPTIONS, day: "2025-03-05" })).not.toEqual(bytesOf(page));
  });

  it("says its title and its day", () => {
    const said = pdfInfo(writePdf([page], { ...PDF_OPTIONS, title: `Fit of ${AWKWARD}` }));
    expect(said).toMatch(/^Title:\s+Fit of Łódź Ж “quotes” <&> □$/m);
    expect(said).toMatch(/^CreationDate:\s+Tue Mar {2}4 12:00:00 2025/m);
  });

  it.each(["2038-01-31", "2100-12-01"])("is made on %s too", (day) => {
    expect(pdfInfo(writePdf([page], { ...PDF_OPTIONS, day }))).toMatch(
      new RegExp(`^CreationDate:.*${day.slice(0, 4)}`, "m"),
    );
  });

  it("of thirty pages with ten sizes of eight pieces is small", () => {
    const sheet = Array.from({ length: 80 }, (_, i) => {
      const [x, y] = [(i % 8) * 140, Math.floor((i % 8) / 4) * 600 + (i >> 3) * 4];
      const outline = Array.from({ length: 100 }, (__, k): [number, number] => {
        const angle = (k / 50) * Math.PI;
        return [x + 200 + (160 + i) * Math.cos(angle), y + 300 + (250 + i) * Math.sin(angle)];
      });
      return inkLine(outline, { closed: true, role: "printed", size: i >> 3 });
    });
    const pages = Array.from({ length: 30 }, (_, i) =>
      inkPage(
        [
          inkGroup([...sheet, inkText(`Page ${i}`, 100, 100)], {
            dx: 10 - (i % 6) * 180,
            dy: 10 - Math.floor(i / 6) * 267,
            clip: { x: 10, y: 10, width: 190, height: 277 },
          }),
        ],
        { name: `${i}` },
      ),
    );
    expect(bytesOf(...pages).length).toBeLessThan(500_000);
  });
});
