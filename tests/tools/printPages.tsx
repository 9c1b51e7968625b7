/**
 * Prints the checklist of a few works through Chromium and turns each page into a picture, to be looked at.
 *
 *   npx tsx tests/tools/printPages.tsx FOLDER
 *
 * Needs Chromium and pdftoppm (poppler-utils).
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { renderToStaticMarkup } from "react-dom/server";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Work } from "../../src/core/decisions/work";
import { pageRule } from "../../src/print/pageRule";
import { PrintedChecklist } from "../../src/print/PrintedChecklist";
import { printCases } from "../print/printCases";
import { browserFlags, installedBrowser } from "./browser.mjs";

const root = fileURLToPath(new URL("../..", import.meta.url));
const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error("Name a folder for the pictures.");
const out = resolve(folder);
mkdirSync(out, { recursive: true });

const stylesheet = (file: string): string => readFileSync(join(root, file), "utf8");
// The page's own rules too: what they do to the sheet must not show on paper.
const css =
  ["tokens", "base", "app", "fields", "steps"].map((name) => stylesheet(`src/ui/styles/${name}.css`)).join("\n") +
  stylesheet("src/print/print.css");
const font = readFileSync(
  join(root, "node_modules/@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2"),
).toString("base64");
const fontFace = `@font-face { font-family: "Source Sans 3 Variable"; font-weight: 200 900; src: url(data:font/woff2;base64,${font}) format("woff2"); }`;

/** The sheet inside a page with other things around it, as the app has them. */
function pageOf(work: Work): string {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(`${work.name}: ${plan.failure.code}`);
  const sheet = renderToStaticMarkup(<PrintedChecklist work={work} plan={plan.value} />);
  return `<!doctype html><html lang="en"><meta charset="utf-8"><title>${work.paper}</title><style>${fontFace}${css}${pageRule(work.paper, work.name)}</style>
<body><header>Not on paper</header><div style="display:grid;height:50vh;overflow:auto"><nav>Not on paper</nav>
<main class="step"><header class="step-head">Not on paper</header><div class="paper-preview">${sheet}</div></main></div>
<footer>Not on paper</footer></body></html>`;
}

function run(command: string, args: readonly string[]): void {
  const result = spawnSync(command, args, { encoding: "utf8", timeout: 60_000 });
  if (result.status !== 0) throw new Error(`${command}: ${result.stderr}`);
}

const browser = installedBrowser();
if (browser === undefined) throw new Error("No Chromium found.");
for (const [name, work] of Object.entries(printCases)) {
  const html = join(out, `${name}.html`);
  const pdf = join(out, `${name}.pdf`);
  writeFileSync(html, pageOf(work));
  run(browser, [...browserFlags(), "--headless", "--no-pdf-header-footer", `--print-to-pdf=${pdf}`, `file://${html}`]);
  run("pdftoppm", ["-r", "80", "-png", pdf, join(out, name)]);
}
