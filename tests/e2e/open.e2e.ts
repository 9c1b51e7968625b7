/** However and wherever the page is opened, something stands on it; and all that it asks for are its own files. */
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test, type Page } from "@playwright/test";
import { textOf } from "../support/poppler";
import { browserFlags, installedBrowser } from "../tools/browser.mjs";
import { serve, site, type Served } from "./site";
import { expectNoAxeViolations, expectSaved, fill, goTo, STEPS } from "./support";

const executablePath = installedBrowser();

test.use({
  launchOptions: {
    // An address that is neither this machine's own nor a secure one, as that of another machine in the house.
    args: [...browserFlags(), "--host-resolver-rules=MAP bodice.test 127.0.0.1"],
    ...(executablePath === undefined ? {} : { executablePath }),
  },
});

/** What the page finds fault with: errors, warnings of its policy, requests that came to nothing. */
function faultsOf(page: Page): readonly string[] {
  const faults: string[] = [];
  page.on("pageerror", (error) => faults.push(error.message));
  page.on("console", (message) => {
    // The runner's own word, where it keeps the page from being kept.
    if (message.text().startsWith("Service Worker registration blocked")) return;
    if (message.type() === "error" || message.type() === "warning") faults.push(message.text());
  });
  page.on("requestfailed", (request) => {
    // A reload gives up what was being fetched ahead.
    if (request.failure()?.errorText !== "net::ERR_ABORTED") faults.push(`failed: ${request.url()}`);
  });
  page.on("response", (response) => {
    if (response.status() >= 400) faults.push(`${response.status()}: ${response.url()}`);
  });
  return faults;
}

/** Goes through every step and makes a PDF. */
async function wholeRound(page: Page): Promise<void> {
  for (const step of STEPS) await goTo(page, step);
  await expect.poll(() => page.evaluate(() => document.fonts.check('16px "Source Sans 3 Variable"'))).toBe(true);
  await page.getByRole("radio", { name: "True-scale pieces" }).check();
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 120_000 }),
    page.getByRole("button", { name: "Make the PDF" }).click(),
  ]);
  const bytes = await readFile(await download.path());
  expect(bytes.subarray(0, 5).toString()).toBe("%PDF-");
}

test.describe("served from elsewhere", () => {
  let served: Served | undefined;
  test.afterEach(async () => {
    await served?.close();
  });

  test("over plain http from another machine the page starts, saves a work and has it after a reload", async ({
    page,
  }) => {
    served = await serve("/");
    const faults = faultsOf(page);
    await page.goto(`http://bodice.test:${served.port}/`);
    expect(await page.evaluate(() => window.isSecureContext)).toBe(false);
    expect(await page.evaluate(() => "randomUUID" in crypto)).toBe(false);
    await page.getByRole("button", { name: "Start with my own measures" }).click();
    await fill(page, /^Bust girth/, "92.4");
    await expect(page.getByText("Saved here")).toBeVisible();
    await page.reload();
    await expect(page.getByLabel(/^Bust girth/).first()).toHaveValue("92.4");
    await page.getByRole("button", { name: "Works" }).click();
    // The demo of the first visit, and her own.
    await expect(page.getByRole("button", { name: /^Copy / })).toHaveCount(2);
    expect(faults).toEqual([]);
  });

  test("in a deep folder with blanks and umlauts in its name, all is there that is wanted, and nothing else asked for", async ({
    page,
  }) => {
    served = await serve("/für mich/Nähen & Zuschneiden (50 %)/");
    const faults = faultsOf(page);
    await page.goto(
      `http://127.0.0.1:${served.port}/${["für mich", "Nähen & Zuschneiden (50 %)"].map(encodeURIComponent).join("/")}/`,
    );
    await wholeRound(page);
    expect(faults).toEqual([]);
    for (const asked of served.asked) expect(asked).toMatch(/^GET \/für mich\/Nähen & Zuschneiden \(50 %\)\//);
  });
});

test.describe("opened where it cannot start", () => {
  for (const [name, width, height] of [
    ["a wide screen", 1280, 800],
    ["a phone", 390, 844],
  ] as const) {
    test(`as a file it says so, and what to do: ${name}`, async ({ page }) => {
      await page.setViewportSize({ width, height });
      await page.goto(pathToFileURL(join(site, "index.html")).href);
      await expect(page.getByRole("heading", { name: "This page can’t start from a file" })).toBeVisible();
      await expect(page.getByText("npm start")).toBeVisible();
      await expect(page.getByText("One moment…")).toBeHidden();
      await expect(page.getByText("could not be fetched")).toBeHidden();
      await expectNoAxeViolations(page);
      await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    });
  }

  test("without JavaScript it says that it needs it", async ({ browser, baseURL }) => {
    const page = await browser.newPage({ javaScriptEnabled: false, ...(baseURL === undefined ? {} : { baseURL }) });
    await page.goto("./");
    // The runner's own search for words leaves these out.
    const words = await page.locator("noscript").evaluate((element: HTMLElement) => element.innerText);
    expect(words).toContain("Bodicewright needs JavaScript.");
    await expect(page.getByText("One moment…")).toBeHidden();
    await page.close();
  });

  for (const [what, file] of [
    ["its script", /assets\/first-.*\.js$/],
    ["its stylesheet", /assets\/first-.*\.css$/],
  ] as const) {
    for (const how of ["lost", "gone"] as const) {
      test(`${what} ${how === "lost" ? "lost on the way" : "not there"}: it says so, and starts when loaded again`, async ({
        page,
      }) => {
        await page.route(file, (route) => (how === "lost" ? route.abort() : route.fulfill({ status: 404, body: "" })));
        await page.goto("./");
        await expect(page.getByRole("heading", { name: "The page could not be fetched" })).toBeVisible();
        await expectNoAxeViolations(page);
        await page.unroute(file);
        await page.getByRole("link", { name: "Load the page again" }).click();
        await expect(page.getByRole("heading", { level: 2, name: "Tape" })).toBeVisible();
      });
    }
  }

  test("while its script and stylesheet are on their way there are words, and after a while help", async ({ page }) => {
    await page.clock.install();
    await page.route(/assets\//, () => {
      // Never answered.
    });
    await page.goto("./", { waitUntil: "commit" });
    await expect(page.getByText("One moment…")).toBeVisible();
    await expect(page.getByText("The page has not started yet")).toBeHidden();
    // The stylesheet alone keeps the time.
    await page.evaluate(() => {
      for (const animation of document.getAnimations()) animation.finish();
    });
    await expect(page.getByText("The page has not started yet")).toBeVisible();
    await expect(page.getByRole("link", { name: "Load the page again" })).toBeVisible();
    await expect(page.getByText("npm start")).toBeHidden();
  });

  test("even its small script and stylesheet may be missing", async ({ page }) => {
    await page.route(/\/opening\.(?:js|css)$/, (route) => route.abort());
    await page.goto("./");
    await expect(page.getByRole("heading", { level: 2, name: "Tape" })).toBeVisible();
    await page.route(/assets\//, (route) => route.abort());
    await page.reload();
    await expect(page.getByText("The page has not started yet")).toBeVisible();
  });

  test("a fault at the start is said, with its kind, and the works stay where they are", async ({ page, context }) => {
    await page.goto("./");
    await page.getByRole("button", { name: "Start with my own measures" }).click();
    await fill(page, /^Bust girth/, "92.4");
    await expectSaved(page);

    const failing = await context.newPage();
    await failing.addInitScript(() => {
      // What the start looks at first of all.
      const find = document.getElementById.bind(document);
      document.getElementById = (id: string) => {
        if (id === "root") throw new RangeError("no root today");
        return find(id);
      };
    });
    await failing.goto("./");
    await expect(failing.getByRole("heading", { name: "The page cannot be shown" })).toBeVisible();
    await expect(failing.getByText("(RangeError)")).toBeVisible();
    await expect(failing.getByText("works kept in this browser are still there")).toBeVisible();
    await expectNoAxeViolations(failing);

    await page.reload();
    await expect(page.getByLabel(/^Bust girth/).first()).toHaveValue("92.4");
  });

  test("where nothing at all can be drawn, the words of the start come back", async ({ page }) => {
    await page.addInitScript(() => {
      for (const method of ["appendChild", "insertBefore"] as const) {
        const put = Object.getOwnPropertyDescriptor(Node.prototype, method)?.value as (...nodes: Node[]) => Node;
        Reflect.set(Node.prototype, method, function refuse(this: Node, ...nodes: Node[]) {
          if (this instanceof HTMLElement && this.id === "root") throw new SyntaxError("nothing goes in here");
          return put.apply(this, nodes);
        });
      }
    });
    await page.goto("./");
    await expect(page.getByRole("heading", { name: "The page cannot be shown" })).toBeVisible();
    await expect(page.getByText("(SyntaxError)")).toBeVisible();
  });

  test("the page does not wait for a database that has opened and then says nothing", async ({ page }) => {
    await page.clock.install();
    await page.addInitScript(() => {
      // Every request is made and none is ever answered.
      const heard = Object.getOwnPropertyDescriptor(EventTarget.prototype, "addEventListener") ?? {};
      Object.defineProperty(IDBOpenDBRequest.prototype, "addEventListener", heard);
      IDBRequest.prototype.addEventListener = () => {};
      IDBTransaction.prototype.addEventListener = () => {};
    });
    await page.goto("./");
    await expect(page.getByText("One moment…")).toBeVisible();
    await page.clock.runFor(9000);
    await expect(page.getByText(/did not answer when the page was opened/)).toBeVisible();
    await fill(page, /^Waist girth/, "74.4");
    await expect(page.getByLabel(/^Waist girth/)).toHaveValue("74.4");
  });
});

test("the whole job asks for nothing but files of the build, and sends nothing", async ({ page, context }) => {
  test.setTimeout(240_000);
  const faults = faultsOf(page);
  const asked: { readonly method: string; readonly url: string; readonly body: string | null }[] = [];
  // Those of workers too.
  context.on("request", (request) =>
    asked.push({ method: request.method(), url: request.url(), body: request.postData() }),
  );
  const sockets: string[] = [];
  page.on("websocket", (socket) => sockets.push(socket.url()));
  const refused: string[] = [];
  await page.exposeFunction("noteRefusal", (what: string) => refused.push(what));
  await page.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", (event) => {
      const note: unknown = Reflect.get(window, "noteRefusal");
      if (typeof note === "function") note(`${event.violatedDirective}: ${event.blockedURI} ${event.sample}`);
    });
  });

  await page.goto("./");
  await page.getByRole("button", { name: "Start with my own measures" }).click();
  await fill(page, /^Bust girth/, "90.5");
  await fill(page, /^Upper chest girth/, "85.1");
  await fill(page, /^Waist girth/, "76.2");
  await fill(page, /^Hip girth/, "100.3");
  await goTo(page, "Envelope");
  await page.getByRole("button", { name: "Wren bodice (invented)" }).click();
  await page.getByText("What this chart fits").click();
  await goTo(page, "Blend");
  await expect(page.getByText("Size 12", { exact: true })).toBeVisible();
  await goTo(page, "Darts");
  await page.getByTestId("handle-front-waistDart-apex").focus();
  await page.keyboard.press("Shift+ArrowDown");
  await page.keyboard.press("Tab");
  await page.getByText("See it sewn").click();
  await expect(page.getByRole("slider", { name: /The front, sewn/ }).first()).toBeVisible();
  await goTo(page, "Fit");
  await page.getByLabel("What do you see?").fill("fold");
  await page.getByRole("button", { name: /^Sway back/ }).click();
  await fill(page, /^Take out at the centre back/, "9");
  await goTo(page, "Paper");
  const foot = await page.pdf({ preferCSSPageSize: true });
  expect(textOf(foot)).toMatch(/Page 1 of \d/);
  await page.getByRole("radio", { name: "True-scale pieces" }).check();
  for (const file of ["PDF", "SVG", "DXF"]) {
    await Promise.all([
      page.waitForEvent("download", { timeout: 120_000 }),
      page.getByRole("button", { name: `Make the ${file}` }).click(),
    ]);
  }
  await page.getByRole("button", { name: "Works" }).click();
  await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Download this work" }).click()]);
  await page.reload();
  await expect(page.getByRole("heading", { level: 2, name: "Paper" })).toBeVisible();

  const files = new Set((await readdir(site, { recursive: true })).map((file) => `/${file}`));
  const own = new URL(page.url()).origin;
  const foreign = asked.filter(({ method, url, body }) => {
    const { origin, pathname, protocol, search } = new URL(url);
    // What the page itself has made for a download is at no address of anybody's.
    if (protocol === "blob:" && origin === own) return false;
    const isFile = pathname === "/" || files.has(pathname);
    return method !== "GET" || body !== null || origin !== own || search !== "" || !isFile;
  });
  expect(foreign).toEqual([]);
  // What makes paper and its typefaces are among what was heard.
  for (const part of ["paperWorker-", "SourceSans3_700Bold-"])
    expect(asked.some(({ url }) => url.includes(part))).toBe(true);
  expect(sockets).toEqual([]);
  expect(refused).toEqual([]);
  expect(faults).toEqual([]);
});

test("the built page may not send anything, nor run what is written into it", async ({ page }) => {
  await page.goto("./");
  await expect(page.getByRole("heading", { level: 2, name: "Tape" })).toBeVisible();
  const refused = await page.evaluate(async () => {
    const heard: string[] = [];
    document.addEventListener("securitypolicyviolation", ({ effectiveDirective }) => heard.push(effectiveDirective));
    await fetch("./favicon.svg").catch(() => {});
    const script = document.createElement("script");
    script.textContent = "document.title = 'written in'";
    document.head.append(script);
    const style = document.createElement("style");
    style.textContent = "body { display: none }";
    document.head.append(style);
    const picture = new Image();
    picture.src = "http://127.0.0.1:9/elsewhere.png";
    await picture.decode().catch(() => {});
    await new Promise((resolve) => {
      setTimeout(resolve, 50);
    });
    return heard;
  });
  expect(refused.toSorted()).toEqual(["connect-src", "img-src", "script-src-elem", "style-src-elem"]);
  await expect(page).toHaveTitle(/Bodicewright/);
});
