/**
 * Nothing typed is lost: random sequences of what a wearer does on several pages of one browser, of faults of its storage and
 * of ends of pages, held against a model of what she typed. `SEQUENCES=20000 npx vitest run tests/store/sequences.test.ts` runs
 * that many; `SEED` begins elsewhere.
 */
import * as fc from "fast-check";
import { afterAll, afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Work } from "../../src/core/decisions/work";
import type { Command } from "../../src/core/plan/commands";
import {
  beginGesture,
  cancelGesture,
  commitGesture,
  preview,
  redo,
  run,
  undo,
  type Hand,
} from "../../src/store/workStore";
import { sampleWork } from "../support/sampleWork";
import { newWorld, openPage, passes, type Fault, type Page, type World } from "../support/world";

const SEQUENCES = Number(process.env["SEQUENCES"] ?? 150);
const SEED = process.env["SEED"] === undefined ? 1 : Number(process.env["SEED"]) || Date.now();

/** ms. What was typed before that must outlive even a page that is gone from one moment to the next. */
const GRACE = 100;

/** ms. So long after a fault of both storages a page may not have tried again yet. */
const STUCK = 60_000;

/** One thing that can be typed, with values that are never typed twice. */
interface Field {
  readonly name: string;
  readonly read: (work: Work) => string | undefined;
  readonly set: (count: number) => { readonly value: string; readonly command: Command };
}

const measure = (name: "bustGirth" | "waistGirth" | "hipGirth"): Field => ({
  name,
  read: (work) => work.tapes[0]?.readings[name]?.[0]?.toString(),
  set: (count) => ({ value: `${500 + count}`, command: { kind: "setMeasure", measure: name, value: 500 + count } }),
});

const fit = (name: "swayBack" | "roundBack"): Field => ({
  name,
  read: (work) => work.alterations.find((a) => a.id === name && a.kind === "fit")?.id && amountOf(work, name),
  set: (count) => ({
    value: `${count}`,
    command: { kind: "putAlteration", alteration: { kind: "fit", id: name, fit: name, amount: count } },
  }),
});

function amountOf(work: Work, id: string): string | undefined {
  const found = work.alterations.find((a) => a.id === id);
  return found?.kind === "fit" ? `${found.amount}` : undefined;
}

const FIELDS: readonly Field[] = [
  measure("bustGirth"),
  measure("waistGirth"),
  measure("hipGirth"),
  fit("swayBack"),
  fit("roundBack"),
  {
    name: "name",
    // What was typed in two places goes on as a copy under a name behind which that is said.
    read: (work) => work.name.replace(/( \(copy\))+$/, ""),
    set: (count) => ({ value: `work ${count}`, command: { kind: "setName", name: `work ${count}` } }),
  },
  {
    name: "pattern",
    read: ({ pattern }) => pattern.name,
    set: (count) => ({ value: `pattern ${count}`, command: { kind: "setPatternName", name: `pattern ${count}` } }),
  },
  {
    name: "unread",
    read: ({ unread }) => unread["measure.height"],
    set: (count) => ({
      value: `${count}o`,
      command: { kind: "setUnread", field: "measure.height", text: `${count}o` },
    }),
  },
  {
    name: "allowance",
    read: ({ allowances }) => allowances?.side?.toString(),
    set: (count) => ({
      value: `${count % 80}.${count}`,
      command: { kind: "setAllowance", seam: "side", value: Number(`${count % 80}.${count}`) },
    }),
  },
];

/** One of these values of a field must be found in the end. */
interface Claim {
  readonly field: Field;
  readonly values: ReadonlySet<string>;
}

interface Typed {
  readonly field: Field;
  readonly value: string;
  readonly time: number;
  readonly page: Page;
  /** What stood in the field before, where that was typed too. */
  readonly before: Typed | undefined;
}

/** What the wearer typed, and what of it is to be found again. */
class Model {
  readonly #typed = new Map<string, Typed>();
  /** The last typed values that nobody has typed over who saw them. */
  readonly #standing = new Map<string, Claim>();
  count = 0;

  /** She does something on a page: what stood on it and no longer does she has given up, what stands now she wants. */
  does(world: World, page: Page, action: () => void): void {
    const before = FIELDS.map(({ read }) => read(decided(page)));
    action();
    for (const [at, field] of FIELDS.entries()) {
      const value = field.read(decided(page));
      if (value === before[at]) continue;
      const old = this.#typed.get(keyOf(field, before[at]));
      this.#givesUp(field, before[at] ?? "", page);
      if (value === undefined) continue;
      const known = this.#typed.get(keyOf(field, value));
      // A value that was never typed is the work's own from the beginning.
      if (known === undefined && !this.#isMade(value, field)) continue;
      // To take back what she has just typed here is no word against what she did elsewhere meanwhile.
      if (known !== undefined && this.#isGoneElsewhere(field, value, page)) continue;
      const typed = { field, value, time: world.now, page, before: old };
      if (old !== undefined) this.#over.set(keyOf(field, old.value), [...this.#typedOver(old), typed]);
      this.#typed.set(keyOf(field, value), typed);
      this.#standing.set(keyOf(field, value), { field, values: new Set([value]) });
    }
  }

  /** Values that were given up, by the pages on which that was; null: cleared away. */
  readonly #gone = new Map<string, Set<Page | null>>();
  #goes(key: string, by: Page | null): void {
    this.#gone.set(key, (this.#gone.get(key) ?? new Set()).add(by));
  }
  #isGoneElsewhere(field: Field, value: string, here: Page): boolean {
    return [...(this.#gone.get(keyOf(field, value)) ?? [])].some((by) => by !== here);
  }

  /** Where a page was gone, it may be this value of several that has outlived it: then she has given that up. */
  #givesUp(field: Field, value: string, by: Page | null): void {
    this.#goes(keyOf(field, value), by);
    this.#standing.delete(keyOf(field, value));
    for (const [key, claim] of this.#standing)
      if (claim.field === field && claim.values.size > 1 && claim.values.has(value)) this.#standing.delete(key);
  }

  /** What was typed over a value by somebody who saw it. */
  readonly #over = new Map<string, Typed[]>();
  readonly #made = new Set<string>();
  next(field: Field): Command {
    this.count += 1;
    const { value, command } = field.set(this.count);
    this.#made.add(keyOf(field, value));
    return command;
  }
  #isMade(value: string, field: Field): boolean {
    return this.#made.has(keyOf(field, value));
  }

  /** What is shown in the middle of a drag may stand in place of what stood there: whatever ends the drag lets go of it. */
  shows({ store }: Page, field: Field): void {
    const { work, gesture } = store.getState();
    const old = gesture === null ? undefined : this.#standing.get(keyOf(field, field.read(gesture.start)));
    const value = field.read(work);
    if (old === undefined || gesture === null || value === undefined) return;
    this.#standing.set(keyOf(field, field.read(gesture.start)), { field, values: new Set([...old.values, value]) });
  }

  /** A page is gone from one moment to the next. */
  killed(world: World, page: Page): void {
    const isSafe = page.state().storage.state === "saved";
    for (const [key, typed] of this.#typed) {
      if (typed.page !== page || !this.#standing.has(key)) continue;
      // What is called saved is, whenever the page goes.
      if (isSafe || world.now - typed.time > GRACE) continue;
      const values = new Set([typed.value]);
      let before = typed.before;
      while (before !== undefined) {
        // What was cleared away with the storage, or given up on another page, nobody can fall back on.
        if (this.#isGoneElsewhere(typed.field, before.value, page)) {
          before = undefined;
          break;
        }
        values.add(before.value);
        for (const other of this.#typedOver(before)) values.add(other.value);
        if (world.now - before.time > GRACE) break;
        before = before.before;
      }
      // Before the first key stood what the work came with.
      if (before === undefined) this.#standing.delete(key);
      else this.#standing.set(key, { field: typed.field, values });
    }
  }

  #typedOver(typed: Typed): readonly Typed[] {
    return this.#over.get(keyOf(typed.field, typed.value)) ?? [];
  }

  /** Nothing takes what a page has to leave, and the page said so. */
  nowhereToGo(page: Page): void {
    for (const [key, typed] of this.#typed) if (typed.page === page) this.#standing.delete(key);
  }

  forgetAll(): void {
    for (const key of this.#typed.keys()) this.#goes(key, null);
    this.#standing.clear();
  }

  lost(works: readonly Work[]): readonly string[] {
    return [...this.#standing.values()]
      .filter(({ field, values }) => !works.some((work) => values.has(field.read(work) ?? "")))
      .map(({ field, values }) => `${field.name}: ${[...values].join(" or ")}`);
  }
}

/** What the work on a page is once a drag that is going on is let go again. */
function decided({ store }: Page): Work {
  const { work, gesture } = store.getState();
  return gesture?.hand.kind === "drag" ? gesture.start : work;
}

const keyOf = (field: Field, value: string | undefined): string => `${field.name}=${value}`;

/** What can happen. Numbers choose among the pages that are there, and among fields. */
type Event =
  | {
      readonly kind: "type" | "run" | "drag";
      readonly page: number;
      readonly field: number;
      readonly keys: number;
      readonly end: "commit" | "cancel" | "stay";
    }
  | { readonly kind: "undo" | "redo" | "close" | "kill" | "reload" | "hide" | "show"; readonly page: number }
  | {
      readonly kind: "create" | "bin" | "copy" | "openOther" | "bringBack";
      readonly page: number;
      readonly which: number;
    }
  | { readonly kind: "open"; readonly isWithout: boolean }
  | { readonly kind: "wait"; readonly ms: number }
  | { readonly kind: "fault"; readonly fault: Fault; readonly isLocalFull: boolean }
  | { readonly kind: "channel"; readonly isOpen: boolean }
  | { readonly kind: "clear" };

const page = fc.nat(2);
const EVENTS: fc.Arbitrary<Event> = fc.oneof(
  {
    weight: 12,
    arbitrary: fc.record({
      kind: fc.constantFrom("type" as const, "run" as const, "drag" as const),
      page,
      field: fc.nat(FIELDS.length - 1),
      keys: fc.integer({ min: 1, max: 4 }),
      end: fc.constantFrom("commit" as const, "commit" as const, "stay" as const, "cancel" as const),
    }),
  },
  { weight: 3, arbitrary: fc.record({ kind: fc.constantFrom("undo" as const, "redo" as const), page }) },
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constantFrom("close" as const, "kill" as const, "reload" as const, "hide" as const, "show" as const),
      page,
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constantFrom(
        "create" as const,
        "bin" as const,
        "copy" as const,
        "openOther" as const,
        "bringBack" as const,
      ),
      page,
      which: fc.nat(3),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({ kind: fc.constant("open" as const), isWithout: fc.nat(5).map((dice) => dice === 0) }),
  },
  {
    weight: 7,
    arbitrary: fc.record({
      kind: fc.constant("wait" as const),
      ms: fc.constantFrom(0, 1, 5, 20, 60, 90, 120, 300, 1000, 5000),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant("fault" as const),
      fault: fc.constantFrom<Fault>("none", "none", "full", "aborted", "silent", "unheard", "late"),
      isLocalFull: fc.constantFrom(false, false, false, true),
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant("channel" as const), isOpen: fc.boolean() }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant("clear" as const) }) },
);

const tally = { sequences: 0, events: 0, ends: 0, copies: 0 };

async function play(events: readonly Event[]): Promise<readonly string[]> {
  const world = newWorld();
  const model = new Model();
  /** When there was last nothing that took what a page has to leave. */
  let stuckAt = -Infinity;
  const looks = (): void => {
    if (world.isLocalFull) stuckAt = world.now;
  };
  await openPage(world, sampleWork);
  for (const event of events) {
    tally.events += 1;
    looks();
    const pages = [...world.pages];
    const on = "page" in event ? pages[event.page % Math.max(1, pages.length)] : undefined;
    if ("page" in event && on === undefined) continue;
    await happens(event, on);
  }
  world.fault = "none";
  world.isLocalFull = false;
  for (const open of world.pages) end(open, () => model.does(world, open, () => open.close()));
  await passes(world, 200);
  const last = await openPage(world, sampleWork);
  await passes(world, 1000);
  tally.sequences += 1;
  const kept = [...world.shelf.works.values()].map(({ saved }) => saved.work);
  tally.copies += kept.filter(({ name }) => name.endsWith("(copy)")).length;
  return [...model.lost([...kept, last.work()]), ...left(world)];

  async function happens(event: Event, on: Page | undefined): Promise<void> {
    switch (event.kind) {
      case "wait":
        return passes(world, event.ms);
      case "open":
        // One in a few finds a browser that keeps nothing but what is left in local storage.
        if (world.pages.size < 3)
          await openPage(world, sampleWork, event.isWithout ? { code: "storage/silent" } : null);
        return;
      case "fault":
        world.fault = event.fault;
        world.isLocalFull = event.isLocalFull;
        return;
      case "channel":
        world.isChannelOpen = event.isOpen;
        return;
      case "clear":
        world.shelf.works.clear();
        world.shelf.page.clear();
        world.local.clear();
        return model.forgetAll();
      default:
    }
    if (on === undefined) return;
    switch (event.kind) {
      case "run":
        return model.does(world, on, () => {
          const field = FIELDS[event.field];
          if (field !== undefined) run(on.store, model.next(field));
        });
      case "type":
      case "drag":
        return gesture(on, event);
      case "undo":
        return model.does(world, on, () => undo(on.store));
      case "redo":
        return model.does(world, on, () => redo(on.store));
      case "hide":
        on.isHidden = true;
        return void on.session.flush();
      case "show":
        on.isHidden = false;
        return void on.session.pageIsBack();
      case "kill":
        return end(on, () => {
          model.killed(world, on);
          on.kill();
        });
      case "close":
      case "reload":
        end(on, () => {
          // A hand that is still dragging lets go of it.
          model.does(world, on, () => on.close());
        });
        if (event.kind === "reload") await openPage(world, sampleWork);
        return;
      case "create":
        return void on.session.create({ ...sampleWork, name: `blank ${event.which}` });
      case "copy":
        return void on.session.copy(on.state().openId);
      case "bin":
        return void on.session.bin(on.state().openId);
      case "openOther": {
        const other = on.state().entries[event.which];
        if (other !== undefined) void on.session.open(other.id);
        return;
      }
      case "bringBack": {
        const other = on.state().binned[event.which];
        if (other !== undefined) void on.session.bringBack(other.id);
        return;
      }
    }
  }

  function end(on: Page, how: () => void): void {
    tally.ends += 1;
    // What is not saved and could not be left anywhere goes with the page: it says so as long as it is there.
    const { state } = on.state().storage;
    how();
    const isSaved = state === "saved" && on.state().storage.state === "saved";
    if (!isSaved && world.now - stuckAt < STUCK) model.nowhereToGo(on);
  }

  async function gesture(
    on: Page,
    { kind, field: at, keys, end: how }: Extract<Event, { kind: "type" | "run" | "drag" }>,
  ) {
    const field = FIELDS[at];
    if (field === undefined) return;
    const hand = beginOn(on, kind === "drag" ? "drag" : "keys");
    for (let key = 0; key < keys; key += 1) {
      const command = model.next(field);
      const show = (): void => preview(on.store, hand, [command], { field: field.name, text: `${key}` });
      model.does(world, on, show);
      if (kind === "drag") model.shows(on, field);
      await passes(world, 30);
      if (!world.pages.has(on)) return;
    }
    if (how === "stay") return;
    model.does(world, on, () => (how === "commit" ? commitGesture(on.store, hand) : cancelGesture(on.store, hand)));
  }

  function beginOn(on: Page, kind: "drag" | "keys"): Hand {
    const begun: Hand[] = [];
    model.does(world, on, () => begun.push(beginGesture(on.store, kind)));
    const [hand] = begun;
    if (hand === undefined) throw new Error("no hand");
    return hand;
  }
}

/** What lies in local storage and would never go. */
const left = (world: World): readonly string[] => [...world.local.keys()].map((key) => `left over: ${key}`);

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
});
afterEach(() => {
  vi.useRealTimers();
});
afterAll(() => {
  if (SEQUENCES >= 1000) console.log(JSON.stringify({ seed: SEED, ...tally }));
});

describe("whatever happens to pages and storage", () => {
  it("nothing typed is lost", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(EVENTS, { minLength: 3, maxLength: 30 }), async (events) => {
        const lost = await play(events);
        // Pages that are gone would go on trying for ever.
        vi.clearAllTimers();
        expect(lost).toEqual([]);
      }),
      { numRuns: SEQUENCES, seed: SEED, endOnFailure: SEQUENCES >= 1000 },
    );
  }, 3_600_000);
});
