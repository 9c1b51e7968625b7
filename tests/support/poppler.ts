/** PDF files read by Poppler's programs, which share nothing with the library that writes them. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DOMParser, type Element } from "@xmldom/xmldom";
import { readPath, type PathStep } from "./pathReader";

/** A line as it was drawn, in mm from the upper left corner of the page. */
export interface PopplerLine {
  readonly steps: readonly PathStep[];
  readonly style: string;
}

const MM = 25.4 / 72;

/** Does something with the path of a file that holds the bytes. */
function withFile<T>(bytes: Uint8Array, use: (file: string, folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), "bodicewright-pdf-"));
  try {
    const file = join(folder, "file.pdf");
    writeFileSync(file, bytes);
    return use(file, folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What the program prints. Fails if it is missing, and at the least complaint about the file. */
function run(program: string, args: readonly string[]): string {
  const { error, status, stdout, stderr } = spawnSync(program, args, { encoding: "utf8", maxBuffer: 1 << 28 });
  if (error !== undefined)
    throw new Error(`${program} of Poppler is needed (Debian: apt-get install poppler-utils): ${error.message}`);
  if (status !== 0 || stderr.trim() !== "") throw new Error(`${program}: ${stderr}`);
  return stdout;
}

export const pdfInfo = (bytes: Uint8Array): string =>
  withFile(bytes, (file) => run("pdfinfo", ["-f", "1", "-l", "-1", file]));

/** Widths and heights of all pages, mm. */
export function pageSizes(bytes: Uint8Array): (readonly [number, number])[] {
  return [...pdfInfo(bytes).matchAll(/^Page\s+\d+ size:\s+([\d.]+) x ([\d.]+) pts/gm)].map(([, width, height]) => [
    Number(width) * MM,
    Number(height) * MM,
  ]);
}

export interface FontLine {
  readonly name: string;
  readonly type: string;
  readonly embedded: boolean;
  readonly subset: boolean;
  readonly unicode: boolean;
}

export function fontsOf(bytes: Uint8Array): FontLine[] {
  const lines = withFile(bytes, (file) => run("pdffonts", [file]))
    .trim()
    .split("\n")
    .slice(2);
  return lines.map((line) => {
    const [name = "", ...rest] = line.trim().split(/\s{2,}|\s(?=yes|no|Identity)/);
    const yes = [...line.matchAll(/\b(yes|no)\b/g)].map(([word]) => word === "yes");
    return { name, type: rest[0] ?? "", embedded: yes[0] === true, subset: yes[1] === true, unicode: yes[2] === true };
  });
}

/** The writing of one page, or of all. */
export const textOf = (bytes: Uint8Array, page?: number): string =>
  withFile(bytes, (file) =>
    run("pdftotext", [
      ...(page === undefined ? [] : ["-f", String(page), "-l", String(page)]),
      "-layout",
      "-enc",
      "UTF-8",
      file,
      "-",
    ]),
  );

const matrixOf = (element: Element): readonly number[] => {
  const found = /matrix\(([^)]*)\)/.exec(element.getAttribute("transform") ?? "");
  return found === null ? [1, 0, 0, 1, 0, 0] : (found[1] ?? "").split(/[\s,]+/).map(Number);
};

const drawn = new WeakMap<Uint8Array, Map<number, readonly PopplerLine[]>>();

/** All lines of a page that are not letters, in mm, in the order in which they are drawn; each page is read once. */
export function linesOf(bytes: Uint8Array, page = 1): readonly PopplerLine[] {
  const pages = drawn.get(bytes) ?? new Map<number, readonly PopplerLine[]>();
  drawn.set(bytes, pages);
  const lines = pages.get(page) ?? readLines(bytes, page);
  pages.set(page, lines);
  return lines;
}

function readLines(bytes: Uint8Array, page: number): readonly PopplerLine[] {
  const svg = withFile(bytes, (file, folder) => {
    const out = join(folder, "page.svg");
    // Left to itself it shrinks pages whose points are not whole numbers on to paper whose are.
    run("pdftocairo", ["-svg", "-noshrink", "-nocenter", "-f", String(page), "-l", String(page), file, out]);
    return readFileSync(out, "utf8");
  });
  const root = new DOMParser().parseFromString(svg, "image/svg+xml").documentElement;
  if (root === null) throw new Error("an empty page");
  const isShown = (path: Element): boolean => {
    for (let up = path.parentNode; up !== null; up = up.parentNode) if (up.nodeName === "defs") return false;
    return true;
  };
  return [...root.getElementsByTagName("path")].filter(isShown).map((path) => {
    const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = matrixOf(path);
    const steps = readPath(path.getAttribute("d") ?? "").map(({ command, numbers }): PathStep => ({
      command,
      numbers: numbers.map((value, i) => {
        const [x, y] = i % 2 === 0 ? [value, numbers[i + 1] ?? 0] : [numbers[i - 1] ?? 0, value];
        return (i % 2 === 0 ? a * x + c * y + e : b * x + d * y + f) * MM;
      }),
    }));
    return { steps, style: path.getAttribute("style") ?? path.getAttribute("stroke-width") ?? "" };
  });
}
