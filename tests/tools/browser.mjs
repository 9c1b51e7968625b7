// Where the browser of the end-to-end tests is, and the flags it needs. No dependencies.
import { accessSync, constants } from "node:fs";
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
