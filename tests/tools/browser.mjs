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

/**
 * The Chromium or Chrome of this machine, if it has one.
 * @returns {string | undefined}
 */
export function installedBrowser() {
  const folders = (process.env["PATH"] ?? "").split(delimiter).filter((folder) => folder !== "");
  const candidates = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  return ["/usr/bin/chromium", ...candidates].find(isRunnable);
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
