/**
 * Takes pictures of every step at many widths, in light, dark and the two forced palettes, and hangs those of one scene and
 * one scheme side by side: `npm run looks -- --out FOLDER --only darts,trial --widths 390,1440 --schemes dark`. With `--long`
 * the whole length of the page; with `--site ADDRESS` of a page that is served already, else of a fresh build.
 */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { chromium, type Page } from "@playwright/test";
import { build, preview } from "vite";
import { browserFlags, installedBrowser } from "./browser.mjs";

const root = fileURLToPath(new URL("../..", import.meta.url));

function argument(name: string): string | undefined {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? undefined : process.argv[at + 1];
}

/** What is asked for of what there is, by names parted by commas; all of it where nothing is. */
function chosen<T>(name: string, all: readonly T[], nameOf: (one: T) => string): readonly T[] {
  const asked = argument(name)?.split(",");
  const unknown = asked?.filter((one) => !all.some((other) => nameOf(other) === one)) ?? [];
  if (unknown.length > 0) throw new Error(`--${name} has ${all.map(nameOf).join(", ")}; not ${unknown.join(", ")}`);
  return all.filter((one) => asked?.includes(nameOf(one)) ?? true);
}

interface Scheme {
  readonly name: string;
  readonly media: Parameters<Page["emulateMedia"]>[0];
}

const SCHEMES: readonly Scheme[] = [
  { name: "light", media: { colorScheme: "light", forcedColors: "none" } },
  { name: "dark", media: { colorScheme: "dark", forcedColors: "none" } },
  { name: "forced-light", media: { colorScheme: "light", forcedColors: "active" } },
  { name: "forced-dark", media: { colorScheme: "dark", forcedColors: "active" } },
];

const SCREENS = [
  { width: 320, height: 640 },
  { width: 390, height: 844 },
  { width: 768, height: 1024 },
  { width: 1024, height: 768 },
  { width: 1440, height: 900 },
];

interface Scene {
  readonly name: string;
  /** Leads the page there from wherever it is. */
  readonly open: (page: Page) => Promise<void>;
}

const step =
  (name: string) =>
  async (page: Page): Promise<void> => {
    await page.evaluate((to) => {
      window.location.hash = to;
    }, name);
    await page.locator(`.step[data-step="${name}"] h2`).first().waitFor();
  };

const SCENES: readonly Scene[] = [
  ...["tape", "envelope", "tissue", "blend", "darts", "fit", "trial", "dress", "paper"].map((name) => ({
    name,
    open: step(name),
  })),
  {
    name: "dart-chosen",
    open: async (page) => {
      await step("darts")(page);
      await page.locator(".dart-choice").first().click();
    },
  },
  {
    name: "sewn",
    open: async (page) => {
      await step("darts")(page);
      await page.getByText("See it sewn", { exact: true }).click();
      const canvas = page.locator(".sewn canvas").first();
      await canvas.waitFor();
      await canvas.scrollIntoViewIfNeeded();
    },
  },
  {
    name: "versions",
    open: async (page) => {
      await step("trial")(page);
      const versions = page.getByRole("region", { name: "Versions" });
      await versions.locator("svg").first().waitFor();
      await versions.evaluate((place) => place.scrollIntoView());
    },
  },
  {
    name: "ledger",
    open: async (page) => {
      await step("fit")(page);
      const slip = page.locator(".slip-face").first();
      await slip.click();
      await page.locator(".ledger-place").evaluate((place) => place.scrollIntoView());
    },
  },
  {
    name: "works",
    open: async (page) => {
      await step("tape")(page);
      await page.getByRole("button", { name: "Works", exact: true }).click();
      await page.locator(".works-list .work-row").first().waitFor();
    },
  },
  {
    name: "failed-field",
    open: async (page) => {
      await page.keyboard.press("Escape");
      await step("tape")(page);
      const field = page.getByLabel(/^Bust girth/).first();
      await field.fill("12");
      await field.press("Enter");
    },
  },
  {
    name: "own-sheet",
    open: async (page) => {
      await step("tissue")(page);
      await page.getByText("From a file", { exact: false }).first().click();
      await page
        .locator(".tissue-way input[type=file], .own-pattern input[type=file]")
        .first()
        .setInputFiles(join(root, "tests/e2e/fixtures/thornfield.svg"));
      await page.getByRole("button", { name: "Cup B" }).click();
      const sheet = page.locator(".own-sheet");
      await sheet.waitFor();
      await sheet.scrollIntoViewIfNeeded();
    },
  },
];

const out = resolve(argument("out") ?? join(root, "test-results", "looks"));
const scenes = chosen("only", SCENES, ({ name }) => name);
const screens = chosen("widths", SCREENS, ({ width }) => String(width));
const schemes = chosen("schemes", SCHEMES, ({ name }) => name);
const isLong = process.argv.includes("--long");

/** A build of its own, served; or nothing to do where a page is served already. */
async function served(): Promise<{ readonly address: string; readonly close: () => Promise<void> }> {
  const given = argument("site");
  if (given !== undefined) return { address: given, close: async () => undefined };
  const outDir = join(root, "node_modules", ".cache", "bodicewright-looks");
  await build({ root, logLevel: "warn", build: { outDir, emptyOutDir: true } });
  const port = Number(argument("port") ?? 4393);
  const server = await preview({ root, logLevel: "warn", build: { outDir }, preview: { port, strictPort: true } });
  return { address: `http://127.0.0.1:${port}/`, close: () => server.close() };
}

async function openWork(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.getByRole("button", { name: "Works", exact: true }).click();
  await page.getByLabel("Work file").setInputFiles({
    name: "siskin.json",
    mimeType: "application/json",
    buffer: readFileSync(join(root, "demo-data", "siskin.json")),
  });
  // On a phone the table is put away.
  await page.locator(".table-sheet .new-line").first().waitFor({ state: "attached" });
  await page.evaluate(() => document.fonts.ready);
}

/** All that is asked for of the parts that come later is there, and nothing moves any more. */
async function settle(page: Page): Promise<void> {
  await page.waitForLoadState("networkidle");
  await page.locator(".part-loading, .sheet-laying, .laying").first().waitFor({ state: "detached" });
  await page.waitForTimeout(150);
}

const fileOf = (scene: string, scheme: string, width: number): string => `${scene}-${scheme}-${width}.png`;

mkdirSync(out, { recursive: true });
const site = await served();
const executablePath = installedBrowser();
const browser = await chromium.launch({
  args: browserFlags(),
  ...(executablePath === undefined ? {} : { executablePath }),
});
const failed: string[] = [];
for (const viewport of screens) {
  const page = await browser.newPage({ viewport, locale: "en-GB", reducedMotion: "reduce", serviceWorkers: "block" });
  page.setDefaultTimeout(20_000);
  await openWork(page, site.address);
  for (const scene of scenes) {
    try {
      await scene.open(page);
      await settle(page);
    } catch (error) {
      failed.push(`${scene.name} at ${viewport.width}: ${String(error).split("\n")[0] ?? ""}`);
      continue;
    }
    for (const scheme of schemes) {
      await page.emulateMedia(scheme.media);
      await page.screenshot({ path: join(out, fileOf(scene.name, scheme.name, viewport.width)), fullPage: isLong });
    }
  }
  await page.close();
}
await hang();
await browser.close();
await site.close();
console.log(`${scenes.length * screens.length * schemes.length} pictures in ${out}`);
for (const line of failed) console.log(`not shown: ${line}`);
process.exitCode = failed.length > 0 ? 1 : 0;

/** A sheet for each scheme and width with all scenes on it, made by the browser itself. */
async function hang(): Promise<void> {
  const tab = await browser.newPage({ viewport: { width: 1800, height: 1200 } });
  for (const scheme of schemes)
    for (const { width, height } of screens) {
      const columns = width < 700 ? 6 : width < 1000 ? 4 : 3;
      const figures = scenes
        .map(({ name }) => ({ name, file: fileOf(name, scheme.name, width) }))
        .filter(({ name }) =>
          failed.every((line) => line !== `${name} at ${width}` && !line.startsWith(`${name} at ${width}:`)),
        )
        .map(({ name, file }) => `<figure><img src="${file}" alt=""><figcaption>${name}</figcaption></figure>`);
      const html = join(out, "sheet.html");
      writeFileSync(
        html,
        `<!doctype html><title>Looks</title><style>body{margin:12px;background:#777;font:16px sans-serif}main{display:grid;gap:12px;grid-template-columns:repeat(${columns},1fr)}figure{margin:0;background:#fff}img{display:block;width:100%}figcaption{padding:2px 8px}</style><main>${figures.join("")}</main>`,
      );
      await tab.goto(pathToFileURL(html).href);
      await tab.screenshot({ path: join(out, `sheet-${scheme.name}-${width}x${height}.png`), fullPage: true });
      rmSync(html);
    }
}
