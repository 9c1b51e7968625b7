/**
 * Paper from the command line, as others ask for it: a process that writes a file. What it wrote is read by pdf.js, Poppler,
 * xmldom and dxf-parser, and held against the outlines in the plan's JSON.
 */
import { createShowing } from "../../src/ui/session/ofWork";
import { DOMParser } from "@xmldom/xmldom";
import Parser from "dxf-parser";
import { spawnSync } from "node:child_process";
import {
  chmodSync,
  closeSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { answer } from "../../src/cli/answer";
import { answerPaper, requestFor } from "../../src/cli/answerPaper";
import { readPaperArguments } from "../../src/cli/paperArgs";
import type { ReportPiece } from "../../src/cli/pieceReport";
import { plannedFrom } from "../../src/cli/planned";
import { invariant } from "../../src/core/result";
import { writeWorkFile } from "../../src/document/workFile";
import { requestFor as asThePageAsks } from "../../src/ui/paper/paperRequest";
import { useChoices } from "../../src/ui/paper/choicesState";
import { bundledDoor } from "../support/bundledDoor";
import { DEMO_FILES, HALVES_FILE, planJson, root } from "../support/doors";
import { readPath, type PathStep } from "../support/pathReader";
import { pdfLines, pdfWriting } from "../support/pdfjs";
import { fontsOf, pageSizes } from "../support/poppler";
import { cornerOf, distanceOf, missOf, stretchOf, type Place, type Stretch } from "../support/reportedPieces";
import { sampleWork } from "../support/sampleWork";

/** A process starts for each run: slow on a busy machine. */
const PATIENCE = 120_000;
const DAY = "2026-11-25";

const folder = mkdtempSync(join(tmpdir(), "bodicewright-paper-"));
const inFolder = (name: string): string => join(folder, name);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Ran {
  readonly status: number | null;
  readonly stdout: Buffer;
  readonly stderr: string;
}

function ran(command: string, args: readonly string[], env: NodeJS.ProcessEnv = {}): Ran {
  const { status, stdout, stderr } = spawnSync(command, args, { cwd: root, env: { ...process.env, ...env } });
  return { status, stdout, stderr: stderr.toString() };
}

const bundled = bundledDoor("paper");
const paper = (...args: readonly string[]): Ran => ran(process.execPath, [bundled, ...args]);

/** The same without a process: what it says, or throws. */
function said(...args: readonly string[]): string | Uint8Array {
  const result = answerPaper(args, DAY);
  if (!result.ok) throw new Error(result.failure);
  return result.value;
}

function refusal(...args: readonly string[]): string | null {
  const result = answerPaper(args, DAY);
  return result.ok ? null : result.failure;
}

const { pieces } = planJson(HALVES_FILE);

/** Every piece as paper has it: those alike on both halves once. A group and a block are called by the key. */
const DRAWN: readonly (readonly [key: string, piece: ReportPiece])[] = [
  ...pieces.left.map((piece) => [piece.same_on_both ? piece.name : `${piece.name}-left`, piece] as const),
  ...pieces.right.filter((piece) => !piece.same_on_both).map((piece) => [`${piece.name}-right`, piece] as const),
];

const stitched = (piece: ReportPiece): readonly Stretch[] =>
  piece.edges.filter(({ line }) => line === "stitch").map((edge) => stretchOf(piece, edge));

/** Lines and cubics of a path; without its closing, which is of no length here or straight. */
function stretchesOf(steps: readonly PathStep[]): Stretch[] {
  let at: Place = { x: 0, y: 0 };
  let start = at;
  return steps.flatMap(({ command, numbers }): Stretch[] => {
    const places = Array.from({ length: numbers.length / 2 }, (_, i) => ({
      x: numbers[2 * i] ?? 0,
      y: numbers[2 * i + 1] ?? 0,
    }));
    const from = at;
    at = places.at(-1) ?? start;
    if (command === "M") start = at;
    return command === "M" ? [] : command === "Z" ? [[from, start]] : [[from, ...places]];
  });
}

/** How far apart two stretches lie at the most, whichever way they are drawn. */
function apart(a: Stretch, b: Stretch): number {
  if (a.length !== b.length) return Infinity;
  const worst = (other: Stretch): number => Math.max(...a.map((p, i) => distanceOf(p, other[i] ?? { x: NaN, y: NaN })));
  return Math.min(worst(b), worst(b.toReversed()));
}

const TURNS = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

/**
 * How a piece was laid: turned by quarters, turned over or not, and moved, so that each of its stretches lies on one of those
 * drawn to within 0.003 mm; null where there is no such way.
 */
function layingOf(piece: readonly Stretch[], drawn: readonly Stretch[]): { readonly over: boolean } | null {
  for (const over of [false, true]) {
    for (const [cos, sin] of TURNS) {
      const turned = piece.map((stretch) =>
        stretch.map(({ x, y }) => {
          const across = over ? -x : x;
          return { x: across * cos - y * sin, y: across * sin + y * cos };
        }),
      );
      const first = invariant(turned[0]?.[0], "a corner");
      for (const corner of drawn.flatMap((stretch) => [stretch[0], stretch.at(-1)])) {
        if (corner === undefined) continue;
        const [dx, dy] = [corner.x - first.x, corner.y - first.y];
        const laid = turned.map((stretch) => stretch.map(({ x, y }) => ({ x: x + dx, y: y + dy })));
        if (laid.every((stretch) => drawn.some((one) => apart(stretch, one) < 0.003))) return { over };
      }
    }
  }
  return null;
}

/** A front as it is drawn is the wearer's left half, a back her right one; the others are turned over. */
const isTurned = (key: string): boolean => key === "front-right" || key === "back-left";

describe("npm run paper, as a process", { timeout: PATIENCE }, () => {
  const file = inFolder("halves.pdf");
  let written: Ran = { status: null, stdout: Buffer.of(), stderr: "" };
  let pdf = new Uint8Array();

  beforeAll(() => {
    // Without the set-up before it, which could take the packages away from under the other tests.
    const run = ["run", "--silent", "--ignore-scripts", "paper", "--", HALVES_FILE];
    written = ran("npm", [...run, "--as", "pdf", "--paper", "a4", "--out", file, "--day", DAY]);
    if (existsSync(file)) pdf = new Uint8Array(readFileSync(file));
  }, PATIENCE);

  it("says in one line what it wrote", () => {
    expect([written.status, written.stderr]).toEqual([0, ""]);
    const pages = pageSizes(pdf).length;
    expect(written.stdout.toString()).toBe(`${file}: ${DRAWN.length} pieces on ${pages} pages of A4.\n`);
  });

  it("has its set-up before it, like plan", () => {
    const { scripts } = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as {
      readonly scripts: Readonly<Record<string, string>>;
    };
    expect(scripts["prepaper"]).toBe(scripts["preplan"]);
    expect(scripts["prepaper"]).toContain("--quiet");
  });

  it("writes pages of the paper asked for (ISO 216: 210 × 297 mm), though the work has A3", () => {
    const sizes = pageSizes(pdf);
    expect(sizes.length).toBeGreaterThan(8);
    for (const [width, height] of sizes) {
      expect(width).toBeCloseTo(210, 1);
      expect(height).toBeCloseTo(297, 1);
    }
  });

  it("prints a square of 100.0 mm and one of 4 in, and carries its typefaces", async () => {
    const squares = (await pdfLines(pdf))
      .map(({ steps }) => stretchesOf(steps).flatMap(([from]) => from ?? []))
      .filter((corners) => corners.length >= 4)
      .map((corners) => [
        Math.max(...corners.map(({ x }) => x)) - Math.min(...corners.map(({ x }) => x)),
        Math.max(...corners.map(({ y }) => y)) - Math.min(...corners.map(({ y }) => y)),
      ]);
    for (const side of [100, 101.6])
      expect(
        squares.filter(([width = 0, height = 0]) => Math.abs(width - side) < 0.01 && Math.abs(height - side) < 0.01),
      ).toHaveLength(1);
    expect(fontsOf(pdf).every(({ embedded }) => embedded)).toBe(true);
  });

  it("draws every curve of every piece at true scale, and names them", async () => {
    const count = pageSizes(pdf).length;
    const drawn: Stretch[] = [];
    const words: string[] = [];
    for (let page = 1; page <= count; page += 1) {
      drawn.push(...(await pdfLines(pdf, page)).flatMap(({ steps }) => stretchesOf(steps)));
      words.push(...(await pdfWriting(pdf, page)).map(({ text }) => text));
    }
    const cubics = drawn.filter(({ length }) => length === 4).map(shapeOf);
    for (const [key, piece] of DRAWN) {
      for (const curve of stitched(piece).filter(({ length }) => length === 4)) {
        const [shape, back] = [shapeOf(curve), shapeOf(curve.toReversed())];
        const isThere = cubics.some((one) => isNear(one, shape) || isNear(one, back));
        expect([key, isThere]).toEqual([key, true]);
      }
    }
    const text = words.join(" ");
    for (const title of [
      "FRONT L, YOUR LEFT HALF",
      "FRONT R, YOUR RIGHT HALF",
      "BACK L, YOUR LEFT HALF",
      "BACK R, YOUR RIGHT HALF",
      "FRONT BASQUE",
    ])
      expect(text).toContain(title);
    expect(text).toContain("25 November 2026");
  });

  it("gives the same bytes to standard output, with none of the packages within reach that the page leaves out", () => {
    const absent = invariant(
      /const ABSENT = (\[[^\]]*\])/u.exec(readFileSync(join(root, "vite.config.ts"), "utf8"))?.[1],
      "their names",
    );
    // fast-png is no optional package of the writer: it is loaded, and never asked for anything.
    const names = (JSON.parse(absent) as readonly string[]).filter((name) => name !== "fast-png");
    expect(names).toContain("html2canvas");
    const barred = `import Module from "node:module";
      const find = Module._resolveFilename;
      Module._resolveFilename = function (name, ...more) {
        if (${JSON.stringify([...names, "core-js"])}.some((one) => name === one || name.startsWith(one + "/"))) throw new Error("barred: " + name);
        return find.call(this, name, ...more);
      };`;
    const out = ran(process.execPath, [
      "--import",
      `data:text/javascript,${encodeURIComponent(barred)}`,
      bundled,
      HALVES_FILE,
      "--as",
      "pdf",
      "--paper",
      "A4",
      "--out",
      "-",
      "--day",
      DAY,
    ]);
    expect([out.status, out.stderr]).toEqual([0, ""]);
    expect(Buffer.from(pdf).equals(out.stdout)).toBe(true);
  });

  it("refuses with exit code 2, one line on standard error alone and nothing written", () => {
    const { status, stdout, stderr } = paper(HALVES_FILE, "--as", "png", "--out", inFolder("no.png"));
    expect([status, stdout.toString()]).toEqual([2, ""]);
    expect(stderr).toMatch(/^There is no png to write[^\n]+\n$/);
    expect(existsSync(inFolder("no.png"))).toBe(false);
  });
});

/** What a cubic keeps however it is laid: the lengths between its points. */
const shapeOf = (places: Stretch): readonly number[] =>
  [
    [0, 1],
    [1, 2],
    [2, 3],
    [0, 2],
    [1, 3],
    [0, 3],
  ].map(([i = 0, j = 0]) => distanceOf(places[i] ?? { x: NaN, y: NaN }, places[j] ?? { x: NaN, y: NaN }));

const isNear = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((value, i) => Math.abs(value - (b[i] ?? NaN)) < 0.005);

describe("the SVG", () => {
  const out = inFolder("halves.svg");
  const line = said(HALVES_FILE, "--as", "svg", "--out", out);
  const svg = new DOMParser().parseFromString(readFileSync(out, "utf8"), "image/svg+xml").documentElement;
  const groups = [...(svg?.getElementsByTagName("g") ?? [])];
  const groupOf = (id: string) =>
    invariant(
      groups.find((group) => group.getAttribute("id") === id),
      id,
    );

  it("tells how many pieces it has", () => expect(line).toBe(`${out}: ${DRAWN.length} pieces.\n`));

  it("is in millimetres: one unit is 1 mm", () => {
    const [width = "", height = ""] = ["width", "height"].map((name) => svg?.getAttribute(name) ?? "");
    expect(width).toMatch(/^[\d.]+mm$/u);
    expect(svg?.getAttribute("viewBox")).toBe(`0 0 ${width.replace("mm", "")} ${height.replace("mm", "")}`);
  });

  it.each(DRAWN)("has a group %s, whose stitch line is the outline in the JSON", (key, piece) => {
    expect(groupOf(key).getElementsByTagName("title")[0]?.textContent).not.toBe("");
    const paths = [...groupOf(`${key}-stitch`).getElementsByTagName("path")];
    const drawn = paths.flatMap((path) => stretchesOf(readPath(path.getAttribute("d") ?? "")));
    expect(layingOf(stitched(piece), drawn)).toEqual({ over: isTurned(key) });
  });
});

describe("the DXF", () => {
  const out = inFolder("halves.dxf");
  const line = said(HALVES_FILE, "--as", "dxf", "--out", out);
  const dxf = invariant(new Parser().parseSync(readFileSync(out, "utf8")), "a drawing");

  it("has a block for every piece and tells how many", () => {
    expect(line).toBe(`${out}: ${DRAWN.length} pieces.\n`);
    expect(Object.keys(dxf.blocks).toSorted()).toEqual(DRAWN.map(([key]) => key).toSorted());
  });

  it.each(DRAWN)("has in block %s a stitch line on the outline in the JSON, with all its corners", (key, piece) => {
    const [ring] = (invariant(dxf.blocks[key], key).entities as readonly Ringed[]).filter(
      ({ layer, type }) => layer === "14" && type === "POLYLINE",
    );
    // y is up in DXF.
    const corners = invariant(ring?.vertices, "a stitch line").map(({ x, y }) => ({
      x: isTurned(key) ? -x : x,
      y: -y,
    }));
    for (const { from } of piece.edges) {
      const corner = cornerOf(piece, from);
      expect(Math.min(...corners.map((p) => distanceOf(p, corner)))).toBeLessThan(0.001);
    }
    const sewn = piece.edges.filter((edge) => edge.line !== "mouth").map((edge) => stretchOf(piece, edge));
    const off = corners.filter((p) => Math.min(...sewn.map((stretch) => missOf(stretch, p))) > 0.002);
    // Across a mouth the paper has the cap of the folded dart: its tip, and as many points on either half of it.
    const corner = (name: Parameters<typeof cornerOf>[1]): Place => cornerOf(piece, name);
    for (const { inner, outer, apex_mm } of piece.darts) {
      const [x, y] = apex_mm;
      const end = { x, y };
      const [one, other] = [corner(inner), corner(outer)];
      const own = off.filter((p) => Math.min(distanceOf(p, one), distanceOf(p, other)) < distanceOf(one, other));
      expect(own.length % 2).toBe(1);
      // Folded, the two halves lie on one another: as far from the dart's end in turn.
      const far = own.map((p) => distanceOf(p, end));
      far.forEach((distance, index) => expect(distance).toBeCloseTo(far[far.length - 1 - index] ?? NaN, 1));
    }
    expect(off.length > 0).toBe(piece.darts.length > 0);
  });
});

interface Ringed {
  readonly type: string;
  readonly layer: string;
  readonly vertices?: readonly Place[];
}

describe("the checklist", () => {
  it("is the text that plan prints, and tells how many lines it has", () => {
    const out = inFolder("list.txt");
    const line = said("--as", "checklist", HALVES_FILE, "--out", out);
    const printed = answer([HALVES_FILE]);
    expect(readFileSync(out, "utf8")).toBe(printed.ok ? printed.value : "");
    expect(line).toBe(`${out}: ${readFileSync(out, "utf8").trimEnd().split("\n").length} lines.\n`);
    expect(said("--as", "checklist", HALVES_FILE, "--out", "-")).toBe(printed.ok ? printed.value : "");
  });
});

describe("what lies on no pages", () => {
  it.each(["svg", "dxf", "checklist"])("is the same on any paper: %s", (as) => {
    const [plain, onRoll] = [[], ["--paper", "36-in-roll"]].map((more) =>
      answerPaper([HALVES_FILE, "--as", as, "--out", "-", "--day", DAY, ...more], DAY),
    );
    expect(plain?.ok).toBe(true);
    expect(onRoll).toEqual(plain);
  });
});

describe("what is asked for", () => {
  const asked = (file: string, ...more: readonly string[]) => {
    const command = readPaperArguments([file, "--as", "pdf", "--out", "-", ...more]);
    const planned = plannedFrom(file);
    if (!command.ok || command.value.kind === "help" || !planned.ok) throw new Error(file);
    const request = requestFor(command.value, planned.value, DAY);
    if (!request.ok) throw new Error(request.failure);
    return { ...planned.value, request: request.value };
  };

  it.each([...DEMO_FILES, HALVES_FILE])("of %s is what the page asks for at first", (file) => {
    const { work, plan, request } = asked(file);
    expect(request).toEqual(asThePageAsks(work, plan, "pieces", useChoices.of(createShowing()).getState(), DAY));
    const strips = asked(file, "--overlay").request;
    expect(strips).toEqual(asThePageAsks(work, plan, "overlay", useChoices.of(createShowing()).getState(), DAY));
  });

  it("is laid on the work's own paper, else on that of its checklist", () => {
    expect(asked(HALVES_FILE).request.choices).toMatchObject({ format: "A3", margin: 12 });
    const letter = inFolder("letter.json");
    writeFileSync(letter, writeWorkFile({ ...sampleWork, paper: "Letter" }));
    expect(asked(letter).request.choices).toMatchObject({ format: "Letter", margin: 10 });
  });

  it.each([
    ["a3", "A3"],
    ["LETTER", "Letter"],
    ["tabloid", "Tabloid"],
    ["a0-roll", "A0 roll"],
    ["A0 roll", "A0 roll"],
    ["36-in-roll", "36 in roll"],
    ["36inroll", "36 in roll"],
  ])("is laid on paper called %s", (name, format) => {
    expect(asked(HALVES_FILE, "--paper", name).request.choices.format).toBe(format);
  });

  it("can be one printed size: no halves, and no blending in it", () => {
    const line = said(HALVES_FILE, "--as", "dxf", "--size", "16", "--out", inFolder("sixteen.dxf"));
    expect(line).toMatch(/: 4 pieces\.\n$/);
    expect(readFileSync(inFolder("sixteen.dxf"), "utf8")).toContain("Size: 16");
  });

  it("can be without allowances: the piece then ends at its stitch line", () => {
    const out = inFolder("bare.dxf");
    said(HALVES_FILE, "--as", "dxf", "--no-allowances", "--out", out);
    const dxf = invariant(new Parser().parseSync(readFileSync(out, "utf8")), "a drawing");
    const [ring] = (invariant(dxf.blocks["backBasque"], "block").entities as readonly Ringed[]).filter(
      ({ layer, type }) => layer === "1" && type === "POLYLINE",
    );
    const basque = invariant(
      pieces.left.find(({ name }) => name === "backBasque"),
      "basque",
    );
    const lowest = Math.max(...Object.values(basque.corners_mm).map(([, y]) => y));
    expect(Math.max(...invariant(ring?.vertices, "ring").map(({ y }) => -y))).toBeCloseTo(lowest, 2);
  });

  it("can be every printed size: a group and a block each piece and size, its stitch line as long as that size's", () => {
    const planned = plannedFrom(HALVES_FILE);
    const { nest } = invariant(planned.ok ? planned.value : null, "plan").plan;
    expect(said(HALVES_FILE, "--as", "svg", "--all-sizes", "--out", inFolder("nest.svg"))).toMatch(/: 4 pieces\.\n$/);
    said(HALVES_FILE, "--as", "dxf", "--all-sizes", "--out", inFolder("nest.dxf"));
    const svg = new DOMParser().parseFromString(readFileSync(inFolder("nest.svg"), "utf8"), "image/svg+xml");
    const dxf = invariant(new Parser().parseSync(readFileSync(inFolder("nest.dxf"), "utf8")), "a drawing");
    for (const [index, label] of nest.labels.entries()) {
      for (const piece of invariant(nest.sizes[index], "size")) {
        const key = `${piece.name}-size-${label}`;
        const group = invariant(
          Array.from(svg.getElementsByTagName("g")).find((g) => g.getAttribute("id") === `${key}-printed`),
          key,
        );
        const data = group.getElementsByTagName("path")[0]?.getAttribute("d") ?? "";
        const steps = readPath(data).filter(({ command }) => command !== "Z");
        expect(steps.map(({ command }) => command)).toEqual([
          "M",
          ...piece.edges.map(({ curve }) => (curve === null ? "L" : "C")),
        ]);
        // The sheet only turns and moves: corners keep their distances.
        const places = steps.map(({ numbers }): Place => ({ x: numbers.at(-2) ?? 0, y: numbers.at(-1) ?? 0 }));
        for (const [at, edge] of piece.edges.entries()) {
          const [from, to] = [piece.points[edge.from]?.at, piece.points[edge.to]?.at];
          const [a, b] = [places[at], places[at + 1]];
          if (from === undefined || to === undefined || a === undefined || b === undefined) throw new Error(key);
          expect(Math.abs(distanceOf(a, b) - Math.hypot(to.x - from.x, to.y - from.y))).toBeLessThan(0.003);
        }
        const texts = (invariant(dxf.blocks[key], key).entities as readonly { readonly text?: string }[]).map(
          ({ text }) => text,
        );
        expect(texts).toContain(`Size: ${label}`);
      }
    }
    expect(refusal(HALVES_FILE, "--as", "svg", "--all-sizes", "--size", "16", "--out", inFolder("no.svg"))).toMatch(
      /--all-sizes/,
    );
  });

  it(
    "can be strips for tissue",
    () => {
      const file = join(root, "demo-data/wren-waist.json");
      expect(said(file, "--as", "svg", "--overlay", "--out", inFolder("strips.svg"))).toMatch(/: 6 strips\.\n$/);
      const roll = ["--as", "pdf", "--overlay", "--paper", "36-in-roll"];
      expect(said(file, ...roll, "--out", inFolder("strips.pdf"))).toMatch(
        /: \d strips on one page for the 36 in roll\.\n$/,
      );
    },
    PATIENCE,
  );

  it("is told by --help", () => expect(said("--help")).toContain("Usage: npm run --silent paper -- FILE --as KIND"));
});

describe("what it writes over", () => {
  it("is replaced whole, with its rights, and nothing is left beside it", () => {
    mkdirSync(inFolder("own"));
    const out = inFolder("own/checklist.txt");
    writeFileSync(out, "what was there, much longer or not");
    chmodSync(out, 0o640);
    const held = openSync(out, "r");
    said(HALVES_FILE, "--as", "checklist", "--out", out);
    // Whoever has the old one open reads it to its end.
    expect(readFileSync(held, "utf8")).toBe("what was there, much longer or not");
    closeSync(held);
    expect(readFileSync(out, "utf8").startsWith("ALTERATION CHECKLIST\n")).toBe(true);
    expect(statSync(out).mode & 0o777).toBe(0o640);
    expect(readdirSync(inFolder("own"))).toEqual(["checklist.txt"]);
  });

  it("is what a link leads to, not the link", () => {
    mkdirSync(inFolder("linked"));
    writeFileSync(inFolder("linked/real.txt"), "old");
    symlinkSync("real.txt", inFolder("linked/link.txt"));
    said(HALVES_FILE, "--as", "checklist", "--out", inFolder("linked/link.txt"));
    expect(readFileSync(inFolder("linked/real.txt"), "utf8").startsWith("ALTERATION CHECKLIST\n")).toBe(true);
    expect(readdirSync(inFolder("linked")).toSorted()).toEqual(["link.txt", "real.txt"]);
  });

  it("stays what it was where no paper can be made", () => {
    const [out, broken] = [inFolder("kept.pdf"), inFolder("broken.json")];
    writeFileSync(out, "kept");
    writeFileSync(broken, '{"bodicewright":"work","version":4,"work":{"name":7}}');
    expect(refusal(broken, "--as", "pdf", "--out", out)).toMatch(/broken\.json: .*damaged at/);
    expect(readFileSync(out, "utf8")).toBe("kept");
  });

  it("is never the work itself", () => {
    const work = inFolder("work.json");
    writeFileSync(work, writeWorkFile(sampleWork));
    expect(refusal(work, "--as", "svg", "--out", work)).toMatch(/it is the work file itself/);
    expect(readFileSync(work, "utf8")).toBe(writeWorkFile(sampleWork));
  });
});

describe("bad input", () => {
  const out = inFolder("never.pdf");
  writeFileSync(inFolder("file.txt"), "a file");

  it.each<readonly [RegExp, readonly string[]]>([
    [/Name the work file/, []],
    [/other\.json is one too many/, [HALVES_FILE, "other.json", "--as", "pdf", "--out", out]],
    [/Say what to write: --as pdf, svg, dxf or checklist/, [HALVES_FILE, "--out", out]],
    [/no png to write: --as can be/, [HALVES_FILE, "--as", "png", "--out", out]],
    [/--as needs something behind it/, [HALVES_FILE, "--as", "--out", out]],
    [/--as needs something behind it/, [HALVES_FILE, "--as=", "--out", out]],
    [/Say where to write it: --out/, [HALVES_FILE, "--as", "pdf"]],
    [/--out needs something behind it/, [HALVES_FILE, "--as", "pdf", "--out"]],
    [/--out is there twice/, [HALVES_FILE, "--as", "pdf", "--out", out, "--out", out]],
    [/Unknown option --colour/, [HALVES_FILE, "--as", "pdf", "--out", out, "--colour"]],
    [/Unknown option --overlay=yes/, [HALVES_FILE, "--as", "pdf", "--out", out, "--overlay=yes"]],
    [
      /no paper called A5: --paper can be A4, .*36-in-roll/,
      [HALVES_FILE, "--as", "pdf", "--out", out, "--paper", "A5"],
    ],
    [/plain text: --overlay says nothing/, [HALVES_FILE, "--as", "checklist", "--out", out, "--overlay"]],
    [/--size does not go with --overlay/, [HALVES_FILE, "--as", "pdf", "--out", out, "--overlay", "--size", "12"]],
    [/cannot be written as DXF/, [HALVES_FILE, "--as", "dxf", "--out", out, "--overlay"]],
    [/no size called 13: --size can be 6, 8, .*24/, [HALVES_FILE, "--as", "pdf", "--out", out, "--size", "13"]],
    [/2026-02-30 is no day/, [HALVES_FILE, "--as", "pdf", "--out", out, "--day", "2026-02-30"]],
    [/today is no day/, [HALVES_FILE, "--as", "pdf", "--out", out, "--day", "today"]],
    [/none.x\.pdf: there is no such folder/, [HALVES_FILE, "--as", "pdf", "--out", inFolder("none/x.pdf")]],
    [/does not lie in a folder/, [HALVES_FILE, "--as", "pdf", "--out", inFolder("file.txt/x.pdf")]],
    [/its name is too long/, [HALVES_FILE, "--as", "pdf", "--out", inFolder(`${"x".repeat(300)}.pdf`)]],
    [/it is a folder/, [HALVES_FILE, "--as", "pdf", "--out", folder]],
    [/none\.json: there is no such file/, [inFolder("none.json"), "--as", "pdf", "--out", out]],
    // Where something stands at the target already, it is still the work file that is missing.
    [/none\.json: there is no such file/, [inFolder("none.json"), "--as", "pdf", "--out", inFolder("file.txt")]],
    [/it is a folder/, [folder, "--as", "pdf", "--out", out]],
    [/file\.txt: .*(does not read|not a work file)/, [inFolder("file.txt"), "--as", "pdf", "--out", out]],
  ])("is refused in one line (%s), and nothing is written", (reason, args) => {
    const before = readdirSync(folder).toSorted();
    const line = refusal(...args);
    expect(line).toMatch(reason);
    expect(line).toMatch(/^[^\n]+$/);
    expect(readdirSync(folder).toSorted()).toEqual(before);
  });
});
