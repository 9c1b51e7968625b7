// Where the browser of the end-to-end tests is, and the flags it needs. No dependencies.
import { accessSync, constants, readdirSync } from "node:fs";
import { delimiter, join } from "node:path";

const NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

/** @param {string} file */
function isRunnable(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** Where a program may be found on this machine, by its plain name. @param {string} name */
const placesOf = (name) =>
  (process.env["PATH"] ?? "")
    .split(delimiter)
    .filter((folder) => folder !== "")
    .map((folder) => join(folder, name));

/** @param {string} name @returns {boolean} */
export const isInstalled = (name) => placesOf(name).some((file) => isRunnable(file) || isRunnable(`${file}.exe`));

/**
 * The Chromium or Chrome of this machine, if it has one.
 * @returns {string | undefined}
 */
export function installedBrowser() {
  return ["/usr/bin/chromium", ...NAMES.flatMap(placesOf)].find(isRunnable);
}

/** Where systems keep WebKit's small browser, which its driver starts. */
function miniBrowser() {
  const folders = ["/usr/lib", "/usr/libexec", "/usr/lib64"].flatMap((lib) =>
    [lib, ...foldersIn(lib)].flatMap((inner) => foldersIn(inner).filter((name) => /\/webkit2?gtk-[^/]*$/u.test(name))),
  );
  return folders.map((folder) => join(folder, "MiniBrowser")).find(isRunnable);
}

/** @param {string} folder */
function foldersIn(folder) {
  try {
    return readdirSync(folder, { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => join(folder, name));
  } catch {
    return [];
  }
}

/** @param {string[]} names */
const firstOf = (...names) => names.flatMap(placesOf).find(isRunnable);

/** The engines of this machine, each by what it takes to drive it. */
export function engines() {
  const [driver, browser, screen] = [firstOf("WebKitWebDriver"), miniBrowser(), firstOf("Xvfb")];
  const isWhole = driver !== undefined && browser !== undefined && screen !== undefined;
  return {
    chromium: installedBrowser(),
    firefox: firstOf("firefox-esr", "firefox"),
    webkit: isWhole ? { driver, browser, screen } : undefined,
  };
}

/** A line for each engine that the whole job is not done in. */
export function skippedEngines() {
  const { chromium, firefox, webkit } = engines();
  return [
    ...(chromium === undefined ? ["SKIPPED: Chromium is not installed here: the whole job was not done in it."] : []),
    ...(firefox === undefined
      ? [
          "SKIPPED: Firefox is not installed here: the whole job was not done in it (Debian: apt-get install firefox-esr).",
        ]
      : []),
    ...(webkit === undefined
      ? [
          "SKIPPED: WebKit is not installed here: the whole job was not done in it (Debian: apt-get install webkit2gtk-driver xvfb).",
        ]
      : []),
  ];
}

/** True when this process runs as root, where Chromium refuses to start in its sandbox. */
export const isRoot = () => process.getuid?.() === 0;

/** @returns {string[]} */
export function browserFlags() {
  const quiet = [
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ];
  return isRoot() ? ["--no-sandbox", ...quiet] : quiet;
}
