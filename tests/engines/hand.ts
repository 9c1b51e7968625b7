/** What she does in any browser, and what she sees: every call waits until what it is about is there. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect } from "@playwright/test";
import { z } from "zod";
import type { Downloaded, Engine, Finger, Place, Seen, Sought } from "./engine";

const place = z.object({ x: z.number(), y: z.number() });
const brought = z.object({ place, covered: z.nullable(z.string()) }).nullable();
const seen = z
  .object({
    text: z.string(),
    label: z.string(),
    value: z.string(),
    isChecked: z.boolean(),
    isDisabled: z.boolean(),
    place,
  })
  .nullable();

/** Patterns do not go into the page as they are. */
const sendable = (sought: Sought): unknown =>
  JSON.parse(
    JSON.stringify(sought, (_, value: unknown) =>
      value instanceof RegExp ? { source: value.source, flags: value.flags } : value,
    ),
  );

export const button = (name: string | RegExp): Sought => ({ role: "button", name });
export const choice = (name: string | RegExp): Sought => ({ role: "radio", name });
export const text = (said: string | RegExp): Sought => ({ text: said });

/** So often may a press go elsewhere: where the engine itself holds on to what is looked at, never. */
const MOST_MISSES = { chromium: 0, firefox: 1, webkit: 2 } as const;

export type Hand = ReturnType<typeof handOf>;

export function handOf(engine: Engine) {
  const ask = (name: string, sought: Sought, ...more: readonly unknown[]): Promise<unknown> =>
    engine.ask(name, sendable(sought), ...more);

  const look = async (sought: Sought): Promise<Seen | null> => seen.parse(await ask("look", sought));

  /** Waits until it is there. */
  async function see(sought: Sought): Promise<Seen> {
    await expect.poll(() => ask("count", sought), { message: describe(sought) }).toBeGreaterThan(0);
    const found = await look(sought);
    if (found === null) throw new Error(`gone again: ${describe(sought)}`);
    return found;
  }

  /** Its middle, in sight, once it has stopped moving and nothing lies over it. */
  async function placeOf(sought: Sought): Promise<Place> {
    let at: Place = { x: NaN, y: NaN };
    await expect
      .poll(
        async () => {
          const found = brought.parse(await ask("bring", sought));
          if (found === null) return "not there";
          if (found.covered !== null) return `covered by ${found.covered}`;
          const isAtRest = Math.hypot(found.place.x - at.x, found.place.y - at.y) < 1;
          at = found.place;
          return isAtRest ? "at rest" : "moving";
        },
        { message: describe(sought), intervals: [100] },
      )
      .toBe("at rest");
    return at;
  }

  /** Presses that went elsewhere. */
  const missed: string[] = [];

  /** What the page says meanwhile can move it away under the hand: then it is pressed where it lies now, as she would. */
  async function press(sought: Sought): Promise<void> {
    for (let tries = 0; ; tries += 1) {
      // oxlint-disable-next-line no-await-in-loop -- until it is hit
      await engine.draw([await placeOf(sought)], "mouse");
      // oxlint-disable-next-line no-await-in-loop
      const landed = z.string().parse(await engine.ask("landed"));
      if (landed === "there") return;
      const told = `${describe(sought)}: ${landed === "" ? "the press never came" : landed}`;
      missed.push(told);
      if (tries === MOST_MISSES[engine.name]) throw new Error(told);
    }
  }

  async function focus(sought: Sought): Promise<void> {
    await expect.poll(() => ask("focus", sought), { message: describe(sought) }).toBe(true);
  }

  /** Types into a field that is then left by Tab. */
  async function write(field: Sought, typed: string): Promise<void> {
    await expect
      .poll(
        async () => {
          await press(field);
          return ask("hasFocus", field);
        },
        { message: describe(field) },
      )
      .toBe(true);
    await engine.press("Control+a");
    await engine.type(typed);
    await engine.press("Tab");
  }

  return {
    engine,
    missed: missed as readonly string[],
    look,
    see,
    press,
    focus,
    write,
    keys: engine.press,
    type: engine.type,
    upload: async (selector: string, file: string): Promise<void> => {
      await expect.poll(() => engine.ask("holds", selector), { message: selector }).toBe(true);
      await engine.upload(selector, file);
    },
    count: (sought: Sought) => ask("count", sought),
    focused: () => engine.ask("focused"),
    choose: async (list: Sought, label: string): Promise<void> => {
      await expect.poll(() => ask("choose", list, label), { message: describe(list) }).toBe(true);
    },
    /** Loads the page anew, also where only the end of its address is another. */
    load: async (address: string): Promise<void> => {
      await engine.goTo("about:blank");
      await engine.goTo(address);
    },
    /** Draws it so many pixels off. */
    draw: async (sought: Sought, dx: number, dy: number, finger: Finger = "mouse"): Promise<void> => {
      const { x, y } = await placeOf(sought);
      const steps = Array.from({ length: 9 }, (_, step) => ({ x: x + (dx * step) / 8, y: y + (dy * step) / 8 }));
      await engine.draw(steps, finger);
    },
    goTo: async (step: string): Promise<void> => {
      await press({ role: "link", name: new RegExp(`^${step}`), within: { css: "nav" } });
      await see({ role: "heading", name: new RegExp(`${step}$`, "i"), within: { css: "#step" } });
    },
    /** Presses what gives a file, and waits until it is whole. */
    download: async (pressed: Sought): Promise<Downloaded & { readonly bytes: Uint8Array }> => {
      const before = new Set(readdirSync(engine.downloads));
      await press(pressed);
      let name = "";
      await expect
        .poll(
          () => {
            const fresh = readdirSync(engine.downloads).filter((file) => !before.has(file));
            // What has no ending is a name of the driver's own; what is on its way has another.
            name = fresh.find((file) => /\.(?:json|pdf|svg|dxf)$/.test(file)) ?? "";
            return name !== "" && readFileSync(join(engine.downloads, name)).length > 0;
          },
          { timeout: 120_000 },
        )
        .toBe(true);
      const file = join(engine.downloads, name);
      let size = -1;
      await expect
        .poll(() => {
          const now = existsSync(file) ? readFileSync(file).length : 0;
          const isWhole = now === size;
          size = now;
          return isWhole;
        })
        .toBe(true);
      return { name, file, bytes: new Uint8Array(readFileSync(file)) };
    },
    saved: async (): Promise<void> => {
      await new Promise((resolve) => {
        setTimeout(resolve, 300);
      });
      await see(text("Saved here"));
    },
    /** What went wrong until now, by the page and by the engine. */
    faults: async (): Promise<readonly string[]> => [
      ...z.array(z.string()).parse(await engine.ask("faults")),
      ...engine.faults(),
    ],
    /** Forgets what went wrong until now: for what the driver itself does in the page. */
    forgive: async (): Promise<void> => {
      await engine.ask("forgive");
      engine.forgive();
    },
    tooWide: () => engine.ask("tooWide"),
  };
}

const describe = (sought: Sought): string =>
  JSON.stringify(sought, (_, value: unknown) => (value instanceof RegExp ? String(value) : value));
