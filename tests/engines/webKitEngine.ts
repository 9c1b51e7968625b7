/** WebKit as the system has it, by the driver that comes with it: the few calls of the W3C's WebDriver that the job needs. */
import { spawn, type ChildProcess } from "node:child_process";
import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { z } from "zod";
import type { Engine, Finger, Place } from "./engine";

export interface WebKitPrograms {
  readonly driver: string;
  readonly browser: string;
  readonly screen: string;
}

/** Keys as the protocol writes them, https://www.w3.org/TR/webdriver2/#keyboard-actions. */
const KEYS: Readonly<Record<string, string>> = {
  Control: "\uE009",
  Shift: "\uE008",
  Tab: "\uE004",
  Enter: "\uE007",
  Escape: "\uE00C",
  Backspace: "\uE003",
  Home: "\uE011",
  End: "\uE010",
  ArrowLeft: "\uE012",
  ArrowUp: "\uE013",
  ArrowRight: "\uE014",
  ArrowDown: "\uE015",
  Space: " ",
};

const ELEMENT = "element-6066-11e4-a52e-4f735466cecf";
const answer = z.object({ value: z.unknown() });
const refusal = z.object({ error: z.string(), message: z.string() });

const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() => resolve(address !== null && typeof address !== "string" ? address.port : 0));
    });
  });

/** A screen that nobody sees, and its name. */
function openScreen(program: string): Promise<{ readonly display: string; readonly child: ChildProcess }> {
  const child = spawn(program, ["-displayfd", "3", "-screen", "0", "1400x1000x24", "-nolisten", "tcp"], {
    stdio: ["ignore", "ignore", "ignore", "pipe"],
  });
  return new Promise((resolve, reject) => {
    child.once("error", reject);
    child.once("exit", () => reject(new Error("the screen that nobody sees did not open")));
    child.stdio[3]?.once("data", (said) => resolve({ display: `:${String(said).trim()}`, child }));
  });
}

export async function webKitEngine({ driver, browser, screen }: WebKitPrograms): Promise<Engine> {
  // A home of its own, so that nothing of hers is read, and downloads are found.
  const home = mkdtempSync(join(tmpdir(), "bodicewright-webkit-"));
  const downloads = join(home, "Downloads");
  mkdirSync(downloads);
  mkdirSync(join(home, ".config"));
  writeFileSync(join(home, ".config", "user-dirs.dirs"), 'XDG_DOWNLOAD_DIR="$HOME/Downloads"\n');
  const { display, child: shown } = await openScreen(screen);
  const port = await freePort();
  const driving = spawn(driver, [`--port=${port}`, "--host=127.0.0.1"], {
    stdio: "ignore",
    env: {
      ...process.env,
      HOME: home,
      DISPLAY: display,
      GDK_BACKEND: "x11",
      LIBGL_ALWAYS_SOFTWARE: "1",
      TZ: "Europe/London",
    },
  });
  const end = (): void => {
    driving.kill();
    shown.kill();
  };
  let session = "";

  /** Asks once; throws what the driver refuses. */
  async function call(method: "POST" | "GET" | "DELETE", path: string, body?: unknown): Promise<unknown> {
    const response = await fetch(`http://127.0.0.1:${port}${session}${path}`, {
      method,
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    const { value } = answer.parse(await response.json());
    const refused = refusal.safeParse(value);
    if (!response.ok) throw new Error(refused.success ? `${refused.data.error}: ${refused.data.message}` : path);
    return value;
  }

  const run = (script: string, args: readonly unknown[]): Promise<unknown> =>
    call("POST", "/execute/sync", { script, args });
  const perform = (source: Readonly<Record<string, unknown>>): Promise<unknown> =>
    call("POST", "/actions", { actions: [source] });
  const keys = (actions: readonly unknown[]): Promise<unknown> => perform({ type: "key", id: "keys", actions });
  const down = (value: string) => ({ type: "keyDown", value });
  const up = (value: string) => ({ type: "keyUp", value });

  async function begin(): Promise<void> {
    for (let tries = 0; ; tries += 1)
      try {
        // oxlint-disable-next-line no-await-in-loop -- until the driver listens
        await call("GET", "/status");
        break;
      } catch (error) {
        if (tries > 300) throw error;
        // oxlint-disable-next-line no-await-in-loop
        await new Promise((resolve) => {
          setTimeout(resolve, 100);
        });
      }
    const begun = await call("POST", "/session", {
      capabilities: { alwaysMatch: { "webkitgtk:browserOptions": { binary: browser, args: ["--automation"] } } },
    });
    session = `/session/${z.object({ sessionId: z.string() }).parse(begun).sessionId}`;
  }

  try {
    await begin();
  } catch (error) {
    end();
    throw error;
  }

  async function resize(width: number, height: number): Promise<void> {
    // The window has a bar of its own above the page.
    await call("POST", "/window/rect", { width, height });
    const [, inside] = z.tuple([z.number(), z.number()]).parse(await run("return [innerWidth, innerHeight]", []));
    await call("POST", "/window/rect", { width, height: 2 * height - inside });
  }

  return {
    name: "webkit",
    goTo: async (url) => void (await call("POST", "/url", { url })),
    resize,
    ask: (asked, ...given) =>
      run("const [asked, given] = arguments; return window.hand[asked](...given) ?? null;", [asked, given]),
    hasFinger: false,
    draw: async ([first, ...rest]: readonly Place[], finger: Finger) => {
      if (first === undefined) return;
      const move = ({ x, y }: Place) => ({
        type: "pointerMove",
        duration: 16,
        origin: "viewport",
        x: Math.round(x),
        y: Math.round(y),
      });
      await perform({
        type: "pointer",
        id: finger,
        parameters: { pointerType: finger },
        actions: [move(first), { type: "pointerDown", button: 0 }, ...rest.map(move), { type: "pointerUp", button: 0 }],
      });
    },
    type: async (text) => void (await keys(Array.from(text).flatMap((letter) => [down(letter), up(letter)]))),
    press: async (chord) => {
      const pressed = chord.split("+").map((key) => KEYS[key] ?? key);
      await keys([...pressed.map(down), ...pressed.toReversed().map(up)]);
    },
    upload: async (selector, file) => {
      const found = await call("POST", "/element", { using: "css selector", value: selector });
      const element = z.object({ [ELEMENT]: z.string() }).parse(found)[ELEMENT];
      await call("POST", `/element/${element}/value`, { text: file });
    },
    screenshot: async () => Buffer.from(z.string().parse(await call("GET", "/screenshot")), "base64"),
    // It answers /print by "unknown command" (2.50).
    print: null,
    downloads,
    // The driver tells of none: what is kept in the page must do.
    faults: () => [],
    forgive: () => {},
    close: async () => {
      await call("DELETE", "").catch(() => undefined);
      end();
    },
  };
}
