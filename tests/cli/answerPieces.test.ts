/** The door to files of outlines: a nest drawn by hand, with every corner known. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { answerPieces } from "../../src/cli/answerPieces";
import { PIECES_USAGE, readPiecesArguments } from "../../src/cli/piecesArgs";
import type { PiecesReport } from "../../src/cli/piecesReport";
import { invariant } from "../../src/core/result";
import { root } from "../support/doors";

const folder = mkdtempSync(join(tmpdir(), "bodicewright-pieces-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function fileWith(name: string, text: string | Uint8Array): string {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
}

/** A piece of five corners with a bent edge, each size 10 larger, and a square of 100. */
const sized = (size: number, dash: string): string => {
  const more = 10 * size;
  return `<g id="Size ${10 + 2 * size}"><path fill="none" stroke="black" ${dash}
    d="M200 200H${400 + more}V${500 + more}L${300 + more} ${560 + more}H200Z"/></g>`;
};
const NEST = `${sized(0, "")}${sized(1, `stroke-dasharray="4 2"`)}${sized(2, `stroke-dasharray="1 1"`)}
  <rect x="600" y="20" width="100" height="100" fill="none" stroke="black"/>
  <g id="grain"><path fill="none" stroke="black" d="M240 260V480"/></g><text x="250" y="300">Front</text>
  <g id="off" style="display:none"><path fill="none" stroke="black" d="M0 900H300"/></g>`;
const svgOf = (attributes: string, inside = NEST): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inside}</svg>`;
const SIZED = svgOf(`width="800mm" height="1000mm" viewBox="0 0 800 1000"`);
const UNSIZED = svgOf(`viewBox="0 0 800 1000"`, NEST.replace(/<rect [^>]*>/u, ""));

function printed(...args: readonly string[]): string {
  const said = answerPieces(args);
  if (!said.ok) throw new Error(said.failure);
  return said.value;
}
const report = (...args: readonly string[]): PiecesReport => JSON.parse(printed(...args, "--json")) as PiecesReport;
const refused = (...args: readonly string[]): string => {
  const said = answerPieces(args);
  return said.ok ? "" : said.failure;
};

describe("what is printed of a nest", () => {
  const file = fileWith("nest.svg", SIZED);
  const found = report(file);

  it("has its scale and what proves it", () => {
    expect(found.scale).toMatchObject({ unit_mm: 1, said_mm: 1, said_by: "size", disagree: false });
    expect(found.scale.squares).toEqual([
      expect.objectContaining({ width_mm: 100, height_mm: 100, usual_mm: [100, 100] }),
    ]);
  });

  it("has its lines by layer, dash, colour and width", () => {
    expect(found.file.looks).toContainEqual({
      layer: "Size 12",
      group: "Size 12",
      colour: "#000000",
      dash: "4 2",
      width: 1,
      lines: 1,
    });
    expect(found.file.hidden_layers).toEqual(["off"]);
  });

  it("has each size's outline with its corners", () => {
    for (const [i, size] of ["Size 10", "Size 12", "Size 14"].entries()) {
      const more = 10 * i;
      const outline = invariant(
        found.outlines.find((one) => one.size !== null && size.endsWith(one.size.replace("Size ", ""))),
        size,
      );
      expect(outline).toMatchObject({ width_mm: 200 + more, height_mm: 360 + more, widest_gap_mm: 0 });
      expect(outline.corners_mm.toSorted(([a, b], [c, d]) => a - c || b - d)).toEqual([
        [200, 200],
        [200, 560 + more],
        [300 + more, 560 + more],
        [400 + more, 200],
        [400 + more, 500 + more],
      ]);
    }
  });

  it("is told as text too", () => {
    const text = printed(file);
    expect(text).toContain("200 × 360");
    expect(text).toContain("300,560");
    expect(text).toContain("layer Size 12, #000000, dash 4 2, width 1");
    expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
  });
});

describe("a known length", () => {
  const file = fileWith("unsized.svg", UNSIZED);

  it("is asked for where nothing says how large it is", () => {
    expect(report(file).scale).toMatchObject({ unit_mm: null, by: null });
    expect(printed(file)).toContain("not known");
  });

  it("proves the scale", () => {
    // From 200 200 to 200 560 are 360 units: of 180 mm, half a mm each.
    const found = report(file, "--known-length", "180", "--from", "200,200", "--to=200,560");
    expect(found.scale).toMatchObject({ unit_mm: 0.5, by: "known", known_mm: 0.5 });
    expect(found.outlines[0]?.height_mm).toBe(180);
  });
});

describe("sizes", () => {
  it("are those of a chart where one is given", () => {
    const chart = join(root, "demo-data/wren-hip.json");
    const labels = report(fileWith("nest.svg", SIZED), "--chart", chart).sizes.lines.flatMap(({ size }) => size ?? []);
    expect(labels).toEqual(expect.arrayContaining(["10", "12", "14"]));
  });
});

describe("what cannot be read", () => {
  it.each([
    [[], "Name the file"],
    [["a.svg", "b.svg"], "one too many"],
    [["a.svg", "--colour"], "Unknown option"],
    [["a.svg", "--chart"], "needs something behind it"],
    [["a.svg", "--from", "1,2", "--from", "1,2"], "twice"],
    [["a.svg", "--known-length", "5"], "needs all three"],
    [["a.svg", "--known-length", "-5", "--from", "1,2", "--to", "3,4"], "no length"],
    [["a.svg", "--known-length", "5", "--from", "1;2", "--to", "3,4"], "--from is x and y"],
    [["a.svg", "--known-length", "5", "--from", "1,2", "--to", "3,NaN"], "--to is x and y"],
    [["a.svg", "--known-length", "5", "--from", "1,2", "--to", "1,2"], "the same place"],
    [["nowhere.svg"], "there is no such file"],
    [[folder], "it is a folder"],
  ] as const)("%j", (args, said) => {
    expect(refused(...args)).toContain(said);
  });

  it("is said in one line, and with exit code 2", () => {
    const file = fileWith("a.pdf", "%PDF-1.7");
    const command = ["--import", "tsx", join(root, "src/cli/pieces.ts")];
    const run = spawnSync(process.execPath, [...command, file], { cwd: root, encoding: "utf8" });
    expect([run.status, run.stdout, run.stderr.trim().split("\n").length]).toEqual([2, "", 1]);
    expect(run.stderr).toContain("PDF");
  }, 240_000);

  it("may be a name that begins with a dash", () => {
    expect(readPiecesArguments(["--json", "--", "--x.svg"])).toMatchObject({ ok: true, value: { file: "--x.svg" } });
  });
});

describe("README", () => {
  const readme = readFileSync(join(root, "README.md"), "utf8");
  const section = invariant(/^### Pieces in a file\n([^]*?)(?=^##)/mu.exec(readme)?.[1], "a section");
  const rows = section
    .split("\n")
    .filter((line) => line.startsWith("| `"))
    .map((line) => line.split("|").map((cell) => cell.trim()));
  const keysOf = (value: unknown, way = ""): string[] => {
    if (Array.isArray(value)) return value.flatMap((one) => keysOf(one, `${way}[]`));
    if (typeof value !== "object" || value === null) return [];
    return Object.entries(value).flatMap(([key, one]) => {
      const here = way === "" ? key : `${way}.${key}`;
      return [here, ...keysOf(one, here)];
    });
  };

  it("tells every key, and none that never is, once each", () => {
    // A line that ought to close, a small circle, and a line inside.
    const marks = `<circle cx="250" cy="400" r="2" fill="none" stroke="black"/><circle cx="300" cy="400" r="30" fill="none" stroke="black"/>
      <g id="Size 16"><path fill="none" stroke="black" d="M190 190H440V530L330 590H190V210"/></g>`;
    const drawn = report(fileWith("marks.svg", SIZED.replace("</svg>", `${marks}</svg>`)));
    const found = new Set(keysOf(drawn));
    const told = rows.map(([, key = ""]) => key.replaceAll("`", "")).filter((key) => !key.startsWith("--"));
    expect(told.toSorted()).toEqual([...found].toSorted());
    const unit = rows.filter(([, key = ""]) => key.endsWith("_mm`")).map(([, , , said]) => said);
    expect(new Set(unit)).toEqual(new Set(["mm"]));
  });

  it("tells the options that --help tells", () => {
    const named = [...new Set(PIECES_USAGE.split("\n").flatMap((line) => /^ {2}(--[a-z-]+)/u.exec(line)?.[1] ?? []))];
    const told = rows.flatMap(([, key = ""]) => /^`(--[a-z-]+)/u.exec(key)?.[1] ?? []);
    expect([...told, "--help"].toSorted()).toEqual(named.toSorted());
  });

  it("has examples that are understood", () => {
    const examples = [...readme.matchAll(/^npm run --silent pieces -- ([^#>\n]*)/gmu)].map(([, args = ""]) =>
      args.trim().split(/\s+/u),
    );
    expect(examples.length).toBeGreaterThan(1);
    for (const args of examples) expect(readPiecesArguments(args).ok).toBe(true);
  });
});
