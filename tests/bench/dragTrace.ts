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

const eventSchema = z.looseObject({
  name: z.string(),
  ph: z.string(),
  pid: z.number(),
  tid: z.number(),
  ts: z.number(),
  dur: z.optional(z.number()),
  tdur: z.optional(z.number()),
  args: z.optional(z.looseObject({ data: z.optional(z.unknown()) })),
});
const traceSchema = z.looseObject({ traceEvents: z.array(eventSchema) });
type TraceEvent = z.infer<typeof eventSchema>;

const moveSchema = z.looseObject({ type: z.literal("pointermove") });
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
    .filter(({ ph }) => ph === "X")
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

export interface TaskCost {
  /** The longest task, on the clock and as it ran, ms. */
  readonly longest: number;
  readonly longestRun: number;
  /** All script together, as it ran. */
  readonly script: number;
}

export function readTasks(trace: string): TaskCost {
  const main = onMainThread(trace);
  const tasks = main.filter(({ name }) => name === TASK);
  return {
    longest: longestOf(tasks, "dur"),
    longestRun: longestOf(tasks, "tdur"),
    script: sum(outermost(main, SCRIPT), "tdur"),
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
  return { moves: costs, ...readTasks(trace) };
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
  await rest(1500);
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
