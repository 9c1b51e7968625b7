/** Chromium, and a plain Firefox over its own protocol, by one library. */
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium, firefox, type Browser } from "@playwright/test";
import { browserFlags } from "../tools/browser.mjs";
import type { Engine, Place } from "./engine";

const launch = (name: "chromium" | "firefox", executablePath: string, downloadsPath: string): Promise<Browser> =>
  name === "chromium"
    ? chromium.launch({ executablePath, downloadsPath, args: browserFlags() })
    : // Firefox as the system has it, not the library's own build of it.
      firefox.launch({ channel: "moz-firefox", executablePath, downloadsPath, timeout: 120_000 });

export async function playwrightEngine(name: "chromium" | "firefox", executable: string): Promise<Engine> {
  const downloads = mkdtempSync(join(tmpdir(), "bodicewright-downloads-"));
  const browser = await launch(name, executable, downloads);
  const page = await browser.newPage({
    viewport: { width: 1280, height: 800 },
    locale: "en-GB",
    timezoneId: "Europe/London",
    hasTouch: name === "chromium",
  });
  const faults: string[] = [];
  page.on("pageerror", ({ message }) => faults.push(`error: ${message}`));
  page.on("console", (message) => {
    if (message.type() === "error") faults.push(`console: ${message.text()}`);
  });
  // The files are named by the library: the name that the page gave is put in its place.
  page.on("download", (download) => void download.saveAs(join(downloads, download.suggestedFilename())));

  return {
    name,
    goTo: async (address) => void (await page.goto(address)),
    resize: (width, height) => page.setViewportSize({ width, height }),
    ask: (asked, ...given) =>
      page.evaluate(
        ([called, values]) => {
          const found: unknown = Reflect.get(window.hand ?? {}, called);
          if (typeof found !== "function") throw new Error(`the page knows no ${called}`);
          const answer: unknown = found(...values);
          return answer;
        },
        [asked, given] as const,
      ),
    hasFinger: name === "chromium",
    draw: (places, finger) => (finger === "mouse" ? drawMouse(places) : drawFinger(places)),
    type: (text) => (name === "firefox" ? typeInFirefox(text) : page.keyboard.type(text)),
    press: (keys) => page.keyboard.press(keys),
    upload: (selector, file) => page.locator(selector).setInputFiles(file),
    // The library would else write a style into the page, which the page forbids.
    screenshot: () => page.screenshot({ caret: "initial" }),
    print: () => page.pdf({ preferCSSPageSize: true }),
    downloads,
    faults: () => faults,
    forgive: () => {
      faults.length = 0;
    },
    close: () => browser.close(),
  };

  /** What is on no key the library only writes into the field, which the page does not hear. */
  async function typeInFirefox(text: string): Promise<void> {
    for (const part of text.match(/[\x20-\x7E]+|[^\x20-\x7E]+/gu) ?? [])
      // oxlint-disable-next-line no-await-in-loop -- one after the other
      await (/^[\x20-\x7E]/u.test(part)
        ? page.keyboard.type(part)
        : page.evaluate((letters) => document.execCommand("insertText", false, letters), part));
  }

  async function drawMouse([first, ...rest]: readonly Place[]): Promise<void> {
    if (first === undefined) return;
    await page.mouse.move(first.x, first.y);
    await page.mouse.down();
    for (const { x, y } of rest)
      // oxlint-disable-next-line no-await-in-loop -- one place after the other
      await page.mouse.move(x, y);
    await page.mouse.up();
  }

  /** A finger as the browser itself has it, which the library has for Chromium alone. */
  async function drawFinger(places: readonly Place[]): Promise<void> {
    const session = await page.context().newCDPSession(page);
    const send = (type: "touchStart" | "touchMove" | "touchEnd", touchPoints: readonly Place[]) =>
      session.send("Input.dispatchTouchEvent", { type, touchPoints: [...touchPoints] });
    for (const [index, place] of places.entries())
      // oxlint-disable-next-line no-await-in-loop -- one place after the other
      await send(index === 0 ? "touchStart" : "touchMove", [place]);
    await send("touchEnd", []);
    await session.detach();
  }
}
