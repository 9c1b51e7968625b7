// Runs every check in turn, also after one has failed, and closes with the line "N passed, N failed".
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** @typedef {{ passed: number, failed: number, skipped: number }} Count */

const root = fileURLToPath(new URL("../..", import.meta.url));
const reports = mkdtempSync(join(tmpdir(), "bodicewright-test-"));
const npm = process.platform === "win32" ? "npm.cmd" : "npm";

/**
 * Runs one npm script, its output passing straight through.
 * @param {string} script
 * @param {string[]} [args]
 * @param {Record<string, string>} [env]
 */
function npmRun(script, args = [], env = {}) {
  process.stdout.write(`\n── ${script} ──\n`);
  const result = spawnSync(npm, ["run", "--silent", script, ...(args.length > 0 ? ["--", ...args] : [])], {
    cwd: root,
    stdio: ["ignore", "inherit", "inherit"],
    env: { ...process.env, ...env },
    shell: process.platform === "win32",
  });
  return result.status === 0;
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

/** @returns {Count} */
function unitTests() {
  const file = join(reports, "vitest.json");
  const green = npmRun("test:unit", ["--reporter=default", "--reporter=json", `--outputFile.json=${file}`]);
  const report =
    /** @type {{ numPassedTests: number, numFailedTests: number, numPendingTests: number, numTodoTests: number,
     *   testResults: { status: string, assertionResults: unknown[] }[] } | undefined} */
    (readReport(file));
  if (report === undefined) return settle(false, { passed: 0, failed: 0, skipped: 0 });
  const unloaded = report.testResults.filter(
    (result) => result.status === "failed" && result.assertionResults.length === 0,
  ).length;
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

/** @returns {Promise<Count>} */
async function browserTests() {
  const file = join(reports, "playwright.json");
  const port = await freePort(4173);
  const green = npmRun("test:e2e", [], {
    BODICEWRIGHT_E2E_PORT: String(port),
    BODICEWRIGHT_E2E_REPORT: file,
  });
  const report =
    /** @type {{ stats: { expected: number, unexpected: number, flaky: number, skipped: number } } | undefined} */
    (readReport(file));
  if (report === undefined) return settle(false, { passed: 0, failed: 0, skipped: 0 });
  const { expected, unexpected, flaky, skipped } = report.stats;
  return settle(green, { passed: expected, failed: unexpected + flaky, skipped });
}

/** @type {[string, Count][]} */
const results = [];
try {
  results.push(["typecheck", oneCheck(npmRun("typecheck"))]);
  results.push(["formatting", oneCheck(npmRun("format:check"))]);
  results.push(["lint", oneCheck(npmRun("lint"))]);
  results.push(["unused files and exports", oneCheck(npmRun("knip"))]);
  results.push(["size of what is loaded", oneCheck(npmRun("size"))]);
  results.push(["unit and component tests", unitTests()]);
  results.push(["browser tests", await browserTests()]);
} finally {
  rmSync(reports, { recursive: true, force: true });
}

process.stdout.write("\n");
for (const [name, { passed, failed, skipped }] of results) {
  const note = skipped > 0 ? ` (skipped: ${skipped})` : "";
  process.stdout.write(`${failed === 0 ? "ok  " : "FAIL"} ${name}: ${passed} of ${passed + failed}${note}\n`);
}
const passed = results.reduce((sum, [, count]) => sum + count.passed, 0);
const failed = results.reduce((sum, [, count]) => sum + count.failed, 0);
process.stdout.write(`${passed} passed, ${failed} failed\n`);
process.exitCode = failed > 0 ? 1 : 0;
