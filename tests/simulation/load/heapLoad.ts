/** Many drags of a dart's end on one page, and what of them stays in its memory. */
import type { CDPSession, Locator, Page } from "@playwright/test";
import { HISTORY_LIMIT } from "../../../src/store/workStore";

interface Heap {
  /** Moves made until then. */
  readonly moves: number;
  /** Bytes in use after everything that can be collected was. */
  readonly bytes: number;
  readonly nodes: number;
  readonly listeners: number;
}

/** Moves of a gesture; every so manieth gesture is taken back. */
const MOVES = 10;
const TAKEN_BACK = 10;

/** Moves after which no step is added to the history but another is dropped. */
const FULL = (MOVES * HISTORY_LIMIT * TAKEN_BACK) / (TAKEN_BACK - 1);

/** Twice, since what the first lets go of may hold more. */
async function heapOf(cdp: CDPSession, moves: number): Promise<Heap> {
  for (let turn = 0; turn < 2; turn += 1) await cdp.send("HeapProfiler.collectGarbage");
  const { usedSize } = await cdp.send("Runtime.getHeapUsage");
  const { nodes, jsEventListeners } = await cdp.send("Memory.getDOMCounters");
  return { moves, bytes: usedSize, nodes, listeners: jsEventListeners };
}

/**
 * Gestures of a mouse within the page, without a frame to wait for: what asks for the next one has it at once, so that every move
 * is previewed for itself and drawn before the next.
 */
const gesturesIn = (handle: Locator, first: number, gestures: number): Promise<void> =>
  handle.evaluate(
    async (element, { from, until, moves }) => {
      const asked: FrameRequestCallback[] = [];
      const later = window.requestAnimationFrame.bind(window);
      window.requestAnimationFrame = (callback) => asked.push(callback);
      try {
        for (let gesture = from; gesture < until; gesture += 1) {
          const { left, top, width, height } = element.getBoundingClientRect();
          const [x, y] = [left + width / 2, top + height / 2];
          // There and back by another way each time, so that the dart stays within reach.
          const turn = gesture % 2 === 0 ? 1 : -1;
          // No function with a name: what a compiler makes of one is not there in the page.
          for (let step = 0; step <= moves + 1; step += 1) {
            const type = step === 0 ? "pointerdown" : step > moves ? "pointerup" : "pointermove";
            const done = Math.min(step, moves) / moves;
            const along = Math.sin(Math.PI * done);
            element.dispatchEvent(
              new PointerEvent(type, {
                // The mouse is always there, so that it can be caught; a finger only where one is.
                pointerId: 1,
                pointerType: "mouse",
                isPrimary: true,
                bubbles: true,
                cancelable: true,
                button: type === "pointermove" ? -1 : 0,
                buttons: type === "pointerup" ? 0 : 1,
                clientX: x + turn * (4 * along + done * (gesture % 5)),
                clientY: y + turn * 14 * along,
              }),
            );
            for (const callback of asked.splice(0)) callback(performance.now());
            await Promise.resolve();
          }
          await new Promise((done) => setTimeout(done, 0));
        }
      } finally {
        window.requestAnimationFrame = later;
      }
    },
    { from: first, until: first + gestures, moves: MOVES },
  );

/** Drags about until so many moves are made, and looks at the memory every so many. */
export async function heapOverDrags(
  page: Page,
  handle: Locator,
  moves: number,
  every: number,
  told: (heap: Heap) => void = () => undefined,
): Promise<readonly Heap[]> {
  const cdp = await page.context().newCDPSession(page);
  const found: Heap[] = [];
  const look = async (made: number): Promise<void> => {
    const heap = await heapOf(cdp, made);
    found.push(heap);
    told(heap);
  };
  await look(0);
  let next = every;
  for (let made = 0; made < moves;) {
    await gesturesIn(handle, made / MOVES, TAKEN_BACK);
    made += MOVES * TAKEN_BACK;
    await page.keyboard.press("Control+z");
    if (made < next) continue;
    next += every;
    await look(made);
  }
  await cdp.detach();
  return found;
}

/** Bytes a move that are no leak: the rounding of what a collection leaves. */
const FLAT = 60;
/** Elements that come and go with what is written on the table. */
const NODES = 200;
const LISTENERS = 20;

/** What grows though the history is full; null: too few moves to say. */
export function growing(heaps: readonly Heap[]): readonly string[] | null {
  const late = heaps.filter(({ moves }) => moves >= FULL);
  const [first, last] = [late[0], late.at(-1)];
  if (first === undefined || last === undefined || late.length < 3) return null;
  const slope = slopeOf(late);
  const found: string[] = [];
  if (slope >= FLAT) found.push(`heap: ${slope.toFixed(0)} bytes a move`);
  if (last.nodes - first.nodes > NODES) found.push(`nodes: ${first.nodes} to ${last.nodes}`);
  if (last.listeners - first.listeners > LISTENERS) found.push(`listeners: ${first.listeners} to ${last.listeners}`);
  return found;
}

/** Bytes a move that the measures grow by: the slope of the line nearest to them. */
export function slopeOf(heaps: readonly Heap[]): number {
  const mean = (of: (heap: Heap) => number): number => heaps.reduce((sum, one) => sum + of(one), 0) / heaps.length;
  const [moves, bytes] = [mean((one) => one.moves), mean((one) => one.bytes)];
  const along = heaps.reduce((sum, one) => sum + (one.moves - moves) * (one.bytes - bytes), 0);
  return along / heaps.reduce((sum, one) => sum + (one.moves - moves) ** 2, 0);
}
