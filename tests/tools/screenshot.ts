/** Takes the picture of the page that README shows: `npm run screenshot`. */
import { chromium } from "@playwright/test";
import { createServer } from "vite";
import { browserFlags, installedBrowser } from "./browser.mjs";

const executablePath = installedBrowser();
const server = await createServer({ logLevel: "error", server: { port: 4392, host: "127.0.0.1" } });
await server.listen();
const browser = await chromium.launch({
  args: browserFlags(),
  ...(executablePath === undefined ? {} : { executablePath }),
});
const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
await page.goto("http://127.0.0.1:4392/#darts");
await page.getByTestId("handle-front-sideDart-apex").waitFor();
await page.getByRole("button", { name: "Front side dart", exact: true }).click();
await page.evaluate(() => document.fonts.ready);
await page.screenshot({ path: "public/screenshot.png" });
await browser.close();
await server.close();
