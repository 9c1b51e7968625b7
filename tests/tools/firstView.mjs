// What the built page loads before its first step can be used, and what it may load at all: bytes after gzip, file by file.
// Reads dist/ as `npm run build` leaves it; ends with 1 where a limit is passed.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";

/** @typedef {Record<string, { file: string, isEntry?: boolean, imports?: string[], css?: string[] }>} Manifest */

/**
 * Bytes; 1 kB is 1000 of them. What the page may load in all is not what anybody waits for: parted into files, each
 * compressed by itself, it weighs some ten thousand more than in one. Trials, their reading, versions and bases brought it
 * 57 kB (the step alone 22, the reading of signs and their words most of the rest). The rest of the dress brought 112: 89 in
 * `dress`, which Trial, Dress and Paper alone wait for (with what unions outlines, that lays and sheets share), its step 11, its
 * printed sheet, its demo works, necklines in the engine, and 4 for the worker that lays. All of them are parts loaded later; the
 * reader of a file holds the schema of all that is saved, and the dress grew it by a third of a kilobyte.
 */
const LIMITS = {
  first: 156_000,
  page: 665_000,
  engine: 220_000,
  reader: 16_800,
  patternReader: 30_000,
  paper: 235_000,
  typefaces: 380_000,
  keeper: 8_000,
};

/**
 * The scripts and styles that the page loads by itself, before any of its code asks for more: what index.html names, and
 * whatever those import statically.
 * @param {string} html
 * @param {Manifest} manifest
 * @returns {string[]} paths from the folder of the built page
 */
export function firstViewFiles(html, manifest) {
  const named = [...html.matchAll(/(?:src|href)="\.?\/?([^"]+\.(?:js|css))"/g)].flatMap(([, file]) => file ?? []);
  const chunks = new Map(Object.values(manifest).map((chunk) => [chunk.file, chunk]));
  const files = new Set(named);
  // A set goes on with what is added to it on the way.
  for (const file of files) {
    const chunk = chunks.get(file);
    for (const imported of chunk?.imports ?? []) {
      const to = manifest[imported];
      if (to === undefined) throw new Error(`the manifest has no ${imported}`);
      files.add(to.file);
    }
    for (const css of chunk?.css ?? []) files.add(css);
  }
  return [...files];
}

/** @param {string} file */
const gzipped = (file) => gzipSync(readFileSync(file), { level: 9 }).length;

/**
 * Prints a table and says whether the files keep within the limit.
 * @param {string} title
 * @param {string} folder
 * @param {readonly string[]} files
 * @param {number} limit
 */
function report(title, folder, files, limit) {
  const sized = files.map((file) => /** @type {const} */ ([file, gzipped(join(folder, file))]));
  const sum = sized.reduce((total, [, bytes]) => total + bytes, 0);
  const line = (/** @type {number} */ bytes, /** @type {string} */ words) => `${String(bytes).padStart(9)}  ${words}\n`;
  process.stdout.write(`${title}\n`);
  for (const [file, bytes] of sized.toSorted(([, a], [, b]) => b - a)) process.stdout.write(line(bytes, file));
  process.stdout.write(line(sum, `of at most ${limit}: ${sum <= limit ? "kept" : "PASSED"}\n`));
  return sum <= limit;
}

function main() {
  const dist = fileURLToPath(new URL("../../dist", import.meta.url));
  const html = readFileSync(join(dist, "index.html"), "utf8");
  /** @type {Manifest} */
  const manifest = JSON.parse(readFileSync(join(dist, ".vite", "manifest.json"), "utf8"));
  const all = readdirSync(join(dist, "assets"))
    .filter((file) => /\.(?:js|css)$/.test(file))
    .map((file) => `assets/${file}`);
  const isPaper = (/** @type {string} */ file) => file.startsWith("assets/paperWorker-");
  const isReader = (/** @type {string} */ file) => file.startsWith("assets/readFileWorker-");
  const isPatternReader = (/** @type {string} */ file) => file.startsWith("assets/readPatternWorker-");
  const isTypeface = (/** @type {string} */ file) => file.startsWith("assets/SourceSans3_");
  const kept = [
    // Fetched once all else is here, with the list of all files in it.
    report("What keeps the page on the device", dist, ["offlineWorker.js"], LIMITS.keeper),
    report("Before the first step can be used", dist, firstViewFiles(html, manifest), LIMITS.first),
    report(
      "All that the page may load, but for what makes paper",
      dist,
      all.filter((file) => !isPaper(file) && !isReader(file) && !isPatternReader(file) && !isTypeface(file)),
      LIMITS.page,
    ),
    // All steps but Tape wait for it: the dress is not among it.
    report(
      "The engine",
      dist,
      all.filter((file) => /^assets\/shared-.*\.js$/.test(file)),
      LIMITS.engine,
    ),
    report("What reads a file that she opens", dist, all.filter(isReader), LIMITS.reader),
    report("What reads a file of outlines", dist, all.filter(isPatternReader), LIMITS.patternReader),
    report("What makes paper, loaded when it is asked for", dist, all.filter(isPaper), LIMITS.paper),
    report("Typefaces for PDF files, loaded with the first of them", dist, all.filter(isTypeface), LIMITS.typefaces),
  ];
  process.exitCode = kept.every(Boolean) ? 0 : 1;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main();
