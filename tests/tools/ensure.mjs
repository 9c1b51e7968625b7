// Makes sure that everything a command needs is installed. Uses nothing but Node itself, says all it says on
// stderr, and does nothing when nothing changed.
//
//   node tests/tools/ensure.mjs            packages
//   node tests/tools/ensure.mjs --browser  packages, a browser, Poppler, which reads the PDF files,
//                                          and Firefox and WebKit where they can be had
//   node tests/tools/ensure.mjs --quiet    packages, silent unless something fails
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { engines, installedBrowser, isInstalled, isRoot } from "./browser.mjs";

const root = fileURLToPath(new URL("../..", import.meta.url));
const stampFile = join(root, "node_modules", ".bodicewright-stamp");
const quiet = process.argv.includes("--quiet");

/** @param {string} text */
const say = (text) => process.stderr.write(`${text}\n`);

/** @param {string} text @returns {never} */
function giveUp(text) {
  say(text);
  process.exit(1);
}

/**
 * Runs a command with all its output on stderr.
 * @param {string} command
 * @param {string[]} args
 * @param {{ hidden?: boolean, minutes?: number }} [options] hidden: show the output only if the command fails
 */
function run(command, args, { hidden = false, minutes = 15 } = {}) {
  const result = spawnSync(command, args, {
    cwd: root,
    stdio: hidden ? ["ignore", "pipe", "pipe"] : ["ignore", 2, 2],
    env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    timeout: minutes * 60_000,
  });
  if (hidden && result.status !== 0) say(`${String(result.stdout ?? "")}${String(result.stderr ?? "")}`);
  return result.status === 0;
}

function ensurePackages() {
  const wanted = createHash("sha256")
    .update(readFileSync(join(root, "package-lock.json")))
    .update(`\n${process.version} ${process.platform} ${process.arch}`)
    .digest("hex");
  const found = existsSync(stampFile) ? readFileSync(stampFile, "utf8").trim() : "";
  if (found === wanted) return;

  // Without a stamp until all is done, so that an install broken off is not taken for a whole one.
  rmSync(stampFile, { force: true });
  if (!quiet) say("Installing packages (npm ci) …");
  const args = ["ci", "--include=dev", "--no-audit", "--no-fund", "--loglevel=error"];
  const npmScript = process.env["npm_execpath"] ?? "";
  const done = npmScript.endsWith(".js")
    ? run(process.execPath, [npmScript, ...args], { hidden: quiet })
    : run("npm", args, { hidden: quiet });
  if (!done) giveUp("npm ci failed: see above. It needs Node 20.19 or newer and a reachable npm registry.");
  writeFileSync(stampFile, `${wanted}\n`);
}

async function playwrightBrowser() {
  const { chromium } = await import("@playwright/test");
  return existsSync(chromium.executablePath());
}

async function ensureBrowser() {
  if (installedBrowser() !== undefined || (await playwrightBrowser())) return;

  say("No Chromium found: trying Playwright's own download …");
  const cli = join(root, "node_modules", "@playwright", "test", "cli.js");
  run(process.execPath, [cli, "install", "chromium"], { minutes: 5 });
  if (await playwrightBrowser()) return;

  if (isRoot() && existsSync("/usr/bin/apt-get")) {
    say("Installing Chromium with apt-get …");
    if (run("apt-get", ["update"])) run("apt-get", ["install", "-y", "chromium", "poppler-utils"]);
    if (installedBrowser() !== undefined) return;
  }
  giveUp("The browser tests need Chromium: install it (Debian: apt-get install chromium poppler-utils) and try again.");
}

const POPPLER = ["pdfinfo", "pdffonts", "pdftotext", "pdftocairo"];

function ensurePoppler() {
  const isThere = () => POPPLER.every(isInstalled);
  if (isThere()) return;
  if (isRoot() && existsSync("/usr/bin/apt-get")) {
    say("Installing Poppler with apt-get …");
    if (run("apt-get", ["update"])) run("apt-get", ["install", "-y", "poppler-utils"]);
    if (isThere()) return;
  }
  giveUp(
    "The tests of PDF files need Poppler's programs: install them (Debian: apt-get install poppler-utils; macOS: brew install poppler) and try again.",
  );
}

const triedFile = join(root, "node_modules", ".bodicewright-tried");

/** What the whole job is done in besides Chromium: tried once, and done without where it does not come. */
function tryEngines() {
  const { firefox, webkit } = engines();
  const wanted = [
    ...(firefox === undefined ? ["firefox-esr"] : []),
    ...(webkit === undefined ? ["webkit2gtk-driver", "xvfb"] : []),
  ];
  if (wanted.length === 0 || !isRoot() || !existsSync("/usr/bin/apt-get")) return;
  if (existsSync(triedFile) && readFileSync(triedFile, "utf8") === wanted.join(" ")) return;
  writeFileSync(triedFile, wanted.join(" "));
  say(`Installing ${wanted.join(", ")} with apt-get; the tests run without them too …`);
  const install = ["install", "-y", "-q", "--no-install-recommends"];
  if (!run("apt-get", ["update", "-q"], { hidden: true, minutes: 2 })) return;
  // One that this system does not have must not keep the other from coming.
  for (const name of wanted) run("apt-get", [...install, name], { hidden: true, minutes: 5 });
}

ensurePackages();
if (process.argv.includes("--browser")) {
  await ensureBrowser();
  ensurePoppler();
  tryEngines();
}
