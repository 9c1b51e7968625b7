// Runs every check, also after one has failed, and closes with the line "N passed, N failed". Two rows of checks run side by
// side, so that no processor waits: the unit tests, and everything else in turn.
import { spawn } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { createServer } from "node:net";
import { getPriority, setPriority, tmpdir } from "node:os";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { skippedEngines } from "./browser.mjs";

/** @typedef {{ passed: number, failed: number, skipped: number }} Count */

/**
 * @typedef {{ file: string, specs?: { title: string, ok: boolean }[], suites?: Suite[] }} Suite
 */

const root = fileURLToPath(new URL("../..", import.meta.url));
const reports = mkdtempSync(join(tmpdir(), "bodicewright-test-"));
const npm = process.platform === "win32" ? "npm.cmd" : "npm";

/**
 * Runs one npm script. What it prints is kept and comes whole when it has ended, so that nothing is mixed.
 * @param {string} script
 * @param {string[]} [args]
 * @param {Record<string, string>} [env]
 * @param {boolean} [giveWay] leave the processor to the others where there is not enough for all
 * @returns {Promise<boolean>} whether it ended well
 */
function npmRun(script, args = [], env = {}, giveWay = false) {
  const begun = Date.now();
  const colour = process.stdout.isTTY ? { FORCE_COLOR: "1" } : {};
  return new Promise((resolve) => {
    const child = spawn(npm, ["run", "--silent", script, ...(args.length > 0 ? ["--", ...args] : [])], {
      cwd: root,
      stdio: ["ignore", "pipe", "pipe"],
      env: { ...process.env, ...colour, ...env },
      shell: process.platform === "win32",
    });
    /** @type {Buffer[]} */
    const output = [];
    child.stdout.on("data", (bytes) => output.push(bytes));
    child.stderr.on("data", (bytes) => output.push(bytes));
    if (giveWay) makeGiveWay(child.pid);
    const end = (/** @type {boolean} */ green, /** @type {string} */ words) => {
      const seconds = Math.round((Date.now() - begun) / 1000);
      process.stdout.write(`\n── ${script}, ${seconds} s ──\n${Buffer.concat(output).toString()}${words}`);
      resolve(green);
    };
    child.once("error", (error) => end(false, `${error.message}\n`));
    child.once("close", (status, signal) => end(status === 0, signal === null ? "" : `ended by ${signal}\n`));
  });
}

/** @param {number | undefined} pid */
function makeGiveWay(pid) {
  try {
    if (pid !== undefined) setPriority(pid, Math.min(19, getPriority() + 5));
  } catch {
    // It has ended already, or may not: then it runs as all others.
  }
}

/** @param {string} file @returns {unknown} */
function readReport(file) {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch {
    return undefined;
  }
}

/** @param {boolean} green @returns {Count} */
const oneCheck = (green) => ({ passed: green ? 1 : 0, failed: green ? 0 : 1, skipped: 0 });

/**
 * A runner that failed without a failed test (a crash, a file that does not load, an unhandled error) counts as
 * one failure, and so does one that ran no test at all.
 * @param {boolean} green
 * @param {Count} count
 * @returns {Count}
 */
function settle(green, count) {
  const hollow = count.passed + count.failed === 0;
  return count.failed === 0 && (!green || hollow) ? { ...count, failed: 1 } : count;
}

/**
 * The tests that failed, by file and name: said again beside the counts, since a log may be kept by its end alone.
 * @type {string[]}
 */
const failures = [];

/** @param {Suite} suite @returns {string[]} */
function failedSpecs(suite) {
  const own = (suite.specs ?? []).filter((spec) => !spec.ok).map((spec) => `${suite.file}: ${spec.title}`);
  return [...own, ...(suite.suites ?? []).flatMap(failedSpecs)];
}

/** @returns {Promise<Count>} */
async function unitTests() {
  const file = join(reports, "vitest.json");
  const args = ["--reporter=default", "--reporter=json", `--outputFile.json=${file}`];
  // Browser tests wait for what a page shows: they go first where both want the processor.
  const green = await npmRun("test:unit", args, {}, true);
  const report =
    /** @type {{ numPassedTests: number, numFailedTests: number, numPendingTests: number, numTodoTests: number,
     *   testResults: { name: string, status: string,
     *     assertionResults: { status: string, fullName: string }[] }[] } | undefined} */
    (readReport(file));
  if (report === undefined) return settle(false, { passed: 0, failed: 0, skipped: 0 });
  const unloaded = report.testResults.filter(
    (result) => result.status === "failed" && result.assertionResults.length === 0,
  ).length;
  for (const { name, status, assertionResults } of report.testResults) {
    const failed = assertionResults.filter((result) => result.status === "failed").map((result) => result.fullName);
    if (status !== "failed") continue;
    failures.push(
      ...(failed.length > 0 ? failed : ["is not loaded"]).map((test) => `${relative(root, name)}: ${test}`),
    );
  }
  return settle(green, {
    passed: report.numPassedTests,
    failed: report.numFailedTests + unloaded,
    skipped: report.numPendingTests + report.numTodoTests,
  });
}

/**
 * The first free port from `first` on, so that two runs on one machine do not meet.
 * @param {number} first
 * @returns {Promise<number>}
 */
function freePort(first) {
  return new Promise((resolve) => {
    const server = createServer();
    server.once("error", () => resolve(freePort(first + 1)));
    server.listen(first, "127.0.0.1", () => server.close(() => resolve(first)));
  });
}

/**
 * The page as it was built for its size to be seen, or null where it could not be built.
 * @param {number} since
 */
function builtSince(since) {
  const dist = join(root, "dist");
  const page = statSync(join(dist, "index.html"), { throwIfNoEntry: false });
  if (page === undefined || page.mtimeMs < since) return null;
  const copy = join(reports, "site");
  cpSync(dist, copy, { recursive: true });
  return copy;
}

/**
 * @param {"test:e2e" | "engines"} script
 * @param {string | null} built
 * @returns {Promise<Count>}
 */
async function browserTests(script, built) {
  const file = join(reports, `${script.replace(":", "-")}.json`);
  const port = await freePort(4173);
  const green = await npmRun(script, [], {
    BODICEWRIGHT_E2E_PORT: String(port),
    BODICEWRIGHT_E2E_REPORT: file,
    ...(built === null ? {} : { BODICEWRIGHT_E2E_BUILT: built }),
  });
  const report =
    /** @type {{ stats: { expected: number, unexpected: number, flaky: number, skipped: number },
     *   suites: Suite[] } | undefined} */
    (readReport(file));
  if (report === undefined) return settle(false, { passed: 0, failed: 0, skipped: 0 });
  failures.push(...report.suites.flatMap(failedSpecs));
  const { expected, unexpected, flaky, skipped } = report.stats;
  return settle(green, { passed: expected, failed: unexpected + flaky, skipped });
}

async function otherChecks() {
  const begun = Date.now();
  const size = oneCheck(await npmRun("size"));
  const built = builtSince(begun);
  const browser = await browserTests("test:e2e", built);
  const everyEngine = await browserTests("engines", built);
  return {
    size,
    browser,
    everyEngine,
    typecheck: oneCheck(await npmRun("typecheck")),
    formatting: oneCheck(await npmRun("format:check")),
    lint: oneCheck(await npmRun("lint")),
    unused: oneCheck(await npmRun("knip")),
  };
}

/** @type {[string, Count][]} */
let results = [];
process.stdout.write("Every check's output comes when it has ended; all take some minutes.\n");
try {
  const [unit, others] = await Promise.all([unitTests(), otherChecks()]);
  results = [
    ["typecheck", others.typecheck],
    ["formatting", others.formatting],
    ["lint", others.lint],
    ["unused files and exports", others.unused],
    ["size of what is loaded", others.size],
    ["unit and component tests", unit],
    ["browser tests", others.browser],
    ["the whole job in every engine", others.everyEngine],
  ];
} finally {
  rmSync(reports, { recursive: true, force: true });
}

process.stdout.write("\n");
for (const failure of failures.slice(0, 20)) process.stdout.write(`     ${failure}\n`);
if (failures.length > 20) process.stdout.write(`     and ${failures.length - 20} more\n`);
for (const said of skippedEngines()) process.stdout.write(`${said}\n`);
for (const [name, { passed, failed, skipped }] of results) {
  const note = skipped > 0 ? ` (skipped: ${skipped})` : "";
  process.stdout.write(`${failed === 0 ? "ok  " : "FAIL"} ${name}: ${passed} of ${passed + failed}${note}\n`);
}
const passed = results.reduce((sum, [, count]) => sum + count.passed, 0);
const failed = results.reduce((sum, [, count]) => sum + count.failed, 0);
process.stdout.write(`${passed} passed, ${failed} failed\n`);
process.exitCode = failed > 0 ? 1 : 0;
