/**
 * Draws every style, alteration and part of a dress as plain pictures, to be leafed through after a change to geometry:
 * `npm run gallery -- --out FOLDER --only WORD`. Needs nothing but Node; with `--png` the installed browser makes sheets of
 * several pictures each.
 */
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { scenesWith } from "../support/gallery/allScenes";
import { picture } from "../support/gallery/picture";
import { groupOfScene, type Scene } from "../support/gallery/scene";
import { browserFlags, installedBrowser } from "./browser.mjs";

function argument(name: string): string | undefined {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? undefined : process.argv[at + 1];
}

interface Hung {
  readonly scene: Scene;
  readonly title: string;
  readonly file: string;
}

const out = resolve(argument("out") ?? "gallery");

const fileName = (key: string): string => `${key.replaceAll(/[^A-Za-z0-9]+/g, "-")}.svg`;
const safe = (said: string): string => said.replaceAll("&", "&amp;").replaceAll("<", "&lt;");

/** What is long to be seen at all needs more room. */
const COLUMNS: Readonly<Partial<Record<string, number>>> = {
  styles: 2,
  skirt: 2,
  lining: 2,
  edges: 2,
  halves: 3,
  bust: 3,
};
const columnsOf = (group: string): number => COLUMNS[group] ?? 4;

rmSync(join(out, "pictures"), { recursive: true, force: true });
mkdirSync(join(out, "pictures"), { recursive: true });
const hung: Hung[] = [];
const refused: { readonly scene: Scene; readonly title: string; readonly why: string }[] = [];
for (const scene of scenesWith(argument("only") ?? "")) {
  if (scene.isMore?.() === false) continue;
  const made = scene.make();
  const { title } = scene;
  if (!made.ok) {
    refused.push({ scene, title, why: made.failure });
    continue;
  }
  const file = join("pictures", fileName(scene.key));
  writeFileSync(join(out, file), picture(title, made.value));
  hung.push({ scene, title, file });
}

const groups = [...new Set([...hung, ...refused].map(({ scene }) => groupOfScene(scene)))];
const figure = ({ scene, file }: Hung): string =>
  `<figure><img src="${file}" alt="${safe(scene.key)}" loading="lazy"><figcaption>${safe(scene.key)}</figcaption></figure>`;
const CSS = `body{font:14px sans-serif;margin:16px;background:#fff}section div{display:grid;gap:8px}
figure{margin:0;border:1px solid #ccc;padding:4px}img{width:100%;height:auto;display:block}figcaption{color:#555}`;
const page = (body: string): string =>
  `<!doctype html>\n<html lang="en"><meta charset="utf-8"><title>Gallery</title><style>${CSS}</style>\n${body}\n</html>\n`;

writeFileSync(
  join(out, "index.html"),
  page(
    `<h1>${hung.length} pictures, ${refused.length} that cannot be shown</h1>\n${groups
      .map((group) => {
        const own = hung.filter(({ scene }) => groupOfScene(scene) === group);
        const none = refused.filter(({ scene }) => groupOfScene(scene) === group);
        const list = none.map(({ scene, title, why }) => `<li>${safe(scene.key)}: ${safe(title)}: ${safe(why)}</li>`);
        return `<section id="${group}"><h2>${group}</h2><div style="grid-template-columns:repeat(${columnsOf(group)},1fr)">${own.map(figure).join("\n")}</div><ul>${list.join("\n")}</ul></section>`;
      })
      .join("\n")}`,
  ),
);
console.log(`${hung.length} pictures and index.html in ${out}`);
for (const { scene, why } of refused) console.log(`not shown: ${scene.key}: ${why}`);
if (process.argv.includes("--png")) await makeSheets();

/** Sheets of a few rows each, as a browser shows them. */
async function makeSheets(): Promise<void> {
  const { chromium } = await import("@playwright/test");
  const executablePath = installedBrowser();
  const browser = await chromium.launch({
    args: browserFlags(),
    ...(executablePath === undefined ? {} : { executablePath }),
  });
  const tab = await browser.newPage({ viewport: { width: 1600, height: 1200 } });
  rmSync(join(out, "sheets"), { recursive: true, force: true });
  mkdirSync(join(out, "sheets"), { recursive: true });
  for (const group of groups) {
    const own = hung.filter(({ scene }) => groupOfScene(scene) === group);
    const columns = columnsOf(group);
    const each = columns * (columns === 2 ? 3 : 3);
    for (let from = 0; from < own.length; from += each) {
      const shown = own
        .slice(from, from + each)
        .map(figure)
        .join("\n");
      const file = join(out, "sheet.html");
      writeFileSync(
        file,
        page(
          `<style>img{height:340px;object-fit:contain}</style><section><div style="grid-template-columns:repeat(${columns},1fr)">${shown.replaceAll(' loading="lazy"', "")}</div></section>`,
        ),
      );
      await tab.goto(pathToFileURL(file).href);
      await tab.screenshot({
        path: join(out, "sheets", `${group}-${String(from / each + 1).padStart(2, "0")}.png`),
        fullPage: true,
      });
      rmSync(file);
    }
  }
  await browser.close();
}
