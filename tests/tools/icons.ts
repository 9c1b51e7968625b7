/**
 * Draws the icons of the installed page from public/favicon.svg: `npm run icons`, after the favicon has changed. Where a device
 * cuts the icon to a shape of its own, the drawing is smaller and the ground reaches to the edge.
 */
import { mkdir, readFile, writeFile } from "node:fs/promises";
import { chromium } from "@playwright/test";
import { browserFlags, installedBrowser } from "./browser.mjs";

/** `share` is how much of the icon the drawing takes; 1 leaves its own rounded ground. */
const ICONS = [
  { name: "icon-192", size: 192, share: 1 },
  { name: "icon-512", size: 512, share: 1 },
  // What lies within a circle of 0.8 of the width is never cut off.
  { name: "maskable-512", size: 512, share: 0.86 },
  { name: "touch-180", size: 180, share: 0.9 },
] as const;

const folder = new URL("../../public/icons/", import.meta.url);
const drawing = await readFile(new URL("../../public/favicon.svg", import.meta.url), "utf8");
const ground = /<rect[^>]*fill="([^"]+)"/.exec(drawing)?.[1];
if (ground === undefined) throw new Error("the favicon has no ground");

const executablePath = installedBrowser();
const browser = await chromium.launch({
  args: browserFlags(),
  ...(executablePath === undefined ? {} : { executablePath }),
});
try {
  await mkdir(folder, { recursive: true });
  for (const { name, size, share } of ICONS) {
    const page = await browser.newPage({ viewport: { width: size, height: size } });
    const [inner, edge] = [size * share, (size * (1 - share)) / 2];
    await page.setContent(
      `<style>body { margin: 0; background: ${share === 1 ? "transparent" : ground} }
      svg { position: absolute; left: ${edge}px; top: ${edge}px; width: ${inner}px; height: ${inner}px }</style>${drawing}`,
    );
    await writeFile(new URL(`${name}.png`, folder), await page.screenshot({ omitBackground: share === 1 }));
    await page.close();
  }
} finally {
  await browser.close();
}
