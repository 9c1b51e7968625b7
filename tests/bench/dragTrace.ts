/** What one move of a dragged dart's end costs, by the browser's own trace. */
import type { Browser, CDPSession, Locator, Page } from "@playwright/test";
import { z } from "zod";

/** Milliseconds of the page's main thread for one move and what follows it, up to the next. */
export interface MoveCost {
  /** On the clock, and as the thread ran: on a machine that others share the second is the steadier. */
  readonly script: number;
  readonly scriptRun: number;
  /** Styles and layout; painting up to the hand-over to the compositor. */
  readonly layout: number;
  readonly paint: number;
}

export interface DragCost extends TaskCost {
  readonly moves: readonly MoveCost[];
}

export const CATEGORIES = ["devtools.timeline", "v8", "toplevel"];

const SCRIPT: ReadonlySet<string> = new Set([
  "EvaluateScript",
  "FunctionCall",
  "EventDispatch",
  "FireAnimationFrame",
  "FireIdleCallback",
  "RunMicrotasks",
  "TimerFire",
  "v8.callFunction",
  "MinorGC",
  "MajorGC",
]);
const LAYOUT: ReadonlySet<string> = new Set(["UpdateLayoutTree", "Layout"]);
const PAINT: ReadonlySet<string> = new Set(["PrePaint", "Paint", "Layerize", "Commit"]);
const TASK = "ThreadControllerImpl::RunTask";
/** What a long task may be long by, besides: made of text, read, found unreadable. */
const ELSE: ReadonlySet<string> = new Set(["ParseHTML", "v8.compile", "v8.compileModule", "v8.evaluateModule"]);
const NAMED: ReadonlySet<string> = new Set([...SCRIPT, ...LAYOUT, ...PAINT, ...ELSE]);

const eventSchema = z.object({
  name: z.string(),
  ph: z.literal("X"),
  pid: z.number(),
  tid: z.number(),
  ts: z.number(),
  dur: z.optional(z.number()),
  tdur: z.optional(z.number()),
  args: z.optional(z.object({ data: z.optional(z.unknown()), fileName: z.optional(z.string()) })),
});
const traceSchema = z.object({ traceEvents: z.array(z.unknown()) });
type TraceEvent = z.infer<typeof eventSchema>;

const moveSchema = z.object({ type: z.literal("pointermove") });
const isMove = ({ name, args }: TraceEvent): boolean =>
  name === "EventDispatch" && moveSchema.safeParse(args?.data).success;

/** The outermost of those named, so that nothing is counted twice. */
function outermost(events: readonly TraceEvent[], names: ReadonlySet<string>): readonly TraceEvent[] {
  const found: TraceEvent[] = [];
  let end = -Infinity;
  for (const event of events) {
    if (!names.has(event.name) || event.ts < end) continue;
    found.push(event);
    end = event.ts + (event.dur ?? 0);
  }
  return found;
}

const sum = (events: readonly TraceEvent[], of: "dur" | "tdur"): number =>
  events.reduce((all, event) => all + (event[of] ?? 0), 0) / 1000;

/** What the page's main thread did, in order: the thread that ran most script. */
function onMainThread(trace: string): readonly TraceEvent[] {
  const { traceEvents } = traceSchema.parse(JSON.parse(trace));
  const complete = traceEvents
    .flatMap((event) => {
      const { success, data } = eventSchema.safeParse(event);
      return success && (data.name === TASK || NAMED.has(data.name)) ? [data] : [];
    })
    .toSorted((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0));
  const byThread = new Map<string, TraceEvent[]>();
  for (const event of complete) {
    const thread = `${event.pid} ${event.tid}`;
    const own = byThread.get(thread);
    if (own === undefined) byThread.set(thread, [event]);
    else own.push(event);
  }
  const scriptOf = (events: readonly TraceEvent[]): number => sum(outermost(events, SCRIPT), "tdur");
  return [...byThread.values()].reduce((most, events) => (scriptOf(events) > scriptOf(most) ? events : most), []);
}

const longestOf = (events: readonly TraceEvent[], of: "dur" | "tdur"): number =>
  events.reduce((most, event) => Math.max(most, (event[of] ?? 0) / 1000), 0);

/** A task over this keeps the hand waiting; ms. */
const LONG_TASK = 50;
/** What is this long within a long task is named as its cause; ms. */
const TELLING = 10;

const causeSchema = z.object({
  type: z.optional(z.string()),
  functionName: z.optional(z.string()),
  url: z.optional(z.string()),
});

/** What an event of a trace was: its name, what it was about, and for how long as it ran. */
function nameOf({ name, args, tdur = 0 }: TraceEvent): string {
  const { success, data } = causeSchema.safeParse(args?.data);
  const about = success ? [data.type, data.functionName, data.url?.split("/").at(-1)] : [args?.fileName];
  return `${[name, ...about.filter((one) => one !== undefined && one !== "")].join(" ")} ${Math.round(tdur / 1000)}`;
}

/** Every task long as it ran, with the longest things in it, one within the other; the longest task first. */
const longTasksOf = (main: readonly TraceEvent[]): readonly string[] =>
  main
    .filter(({ name, tdur = 0 }) => name === TASK && tdur / 1000 > LONG_TASK)
    .toSorted((one, other) => (other.tdur ?? 0) - (one.tdur ?? 0))
    .map((task) => {
      const { ts, dur = 0, tdur = 0 } = task;
      const within = main.filter(
        (one) => one !== task && one.ts >= ts && one.ts < ts + dur && (one.tdur ?? 0) / 1000 >= TELLING,
      );
      return `${Math.round(tdur / 1000)}: ${within.map(nameOf).join(" > ") || "nothing that is named"}`;
    });

export interface TaskCost {
  /** The longest task, on the clock and as it ran, ms. */
  readonly longest: number;
  readonly longestRun: number;
  /** All script together, as it ran. */
  readonly script: number;
  /** Tasks over 50 ms by the clock. */
  readonly longByClock: number;
  /** Every task over 50 ms as it ran, with its cause. */
  readonly long: readonly string[];
}

export const readTasks = (trace: string): TaskCost => tasksOf(onMainThread(trace));

function tasksOf(main: readonly TraceEvent[]): TaskCost {
  const tasks = main.filter(({ name }) => name === TASK);
  return {
    longest: longestOf(tasks, "dur"),
    longestRun: longestOf(tasks, "tdur"),
    script: sum(outermost(main, SCRIPT), "tdur"),
    longByClock: tasks.filter(({ dur = 0 }) => dur / 1000 > LONG_TASK).length,
    long: longTasksOf(main),
  };
}

/** Reads the cost of every move out of a trace. */
export function readTrace(trace: string): DragCost {
  const main = onMainThread(trace);
  const moves = main.filter(isMove);
  const costs = moves.slice(0, -1).map((move, index): MoveCost => {
    const until = moves[index + 1]?.ts ?? Infinity;
    const own = main.filter(({ ts }) => ts >= move.ts && ts < until);
    const script = outermost(own, SCRIPT);
    return {
      script: sum(script, "dur"),
      scriptRun: sum(script, "tdur"),
      layout: sum(outermost(own, LAYOUT), "tdur"),
      paint: sum(outermost(own, PAINT), "tdur"),
    };
  });
  return { moves: costs, ...tasksOf(main) };
}

export interface DragWay {
  readonly moves: number;
  /** Between one move and the next, ms: more than what it makes the page do. */
  readonly rest: number;
  /** By a finger in place of a mouse. */
  readonly touch?: boolean;
}

const rest = (ms: number): Promise<void> =>
  new Promise((done) => {
    setTimeout(done, ms);
  });

/** Waits until the page has had nothing to do for a moment, twice. With a finger down a browser may never call itself idle. */
export const untilIdle = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    for (let turn = 0; turn < 2; turn += 1)
      await new Promise<void>((done) => {
        requestIdleCallback(
          () => {
            setTimeout(done, 50);
          },
          { timeout: 500 },
        );
      });
  });

/** Drags a handle about in front of the tracing browser, lets go and takes it back. */
export async function traceDrag(browser: Browser, page: Page, handle: Locator, way: DragWay): Promise<string> {
  await handle.scrollIntoViewIfNeeded();
  const box = await handle.boundingBox();
  if (box === null) throw new Error("no handle");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const cdp = await page.context().newCDPSession(page);
  const hand = way.touch === true ? fingerOf(cdp) : mouseOf(cdp);
  await hand.down(x, y);
  // The first move chooses the dart, which is no part of dragging it.
  await hand.move(x + 1, y + 4);
  await untilIdle(page);
  await browser.startTracing(page, { categories: CATEGORIES });
  for (let i = 0; i < way.moves; i += 1) {
    await hand.move(x + Math.sin(i / 9) * 12, y + 20 + Math.cos(i / 7) * 18);
    await rest(way.rest);
  }
  const trace = await browser.stopTracing();
  await hand.up();
  await page.keyboard.press("Control+z");
  return trace.toString();
}

interface Hand {
  readonly down: (x: number, y: number) => Promise<void>;
  readonly move: (x: number, y: number) => Promise<void>;
  readonly up: () => Promise<void>;
}

/** Sent as the browser's own input: what drives it puts scripts of its own into the page at every move of a mouse. */
function mouseOf(cdp: CDPSession): Hand {
  const send = async (type: "mousePressed" | "mouseMoved" | "mouseReleased", x: number, y: number, buttons: number) => {
    const button = type === "mouseMoved" && buttons === 0 ? "none" : "left";
    await cdp.send("Input.dispatchMouseEvent", { type, x, y, button, buttons, clickCount: button === "none" ? 0 : 1 });
  };
  let at = { x: 0, y: 0 };
  return {
    down: async (x, y) => {
      at = { x, y };
      await send("mouseMoved", x, y, 0);
      await send("mousePressed", x, y, 1);
    },
    move: (x, y) => {
      at = { x, y };
      return send("mouseMoved", x, y, 1);
    },
    up: () => send("mouseReleased", at.x, at.y, 0),
  };
}

function fingerOf(cdp: CDPSession): Hand {
  const send = async (type: "touchStart" | "touchMove" | "touchEnd", touchPoints: { x: number; y: number }[]) => {
    await cdp.send("Input.dispatchTouchEvent", { type, touchPoints });
  };
  return {
    down: (x, y) => send("touchStart", [{ x, y }]),
    move: (x, y) => send("touchMove", [{ x, y }]),
    up: () => send("touchEnd", []),
  };
}
