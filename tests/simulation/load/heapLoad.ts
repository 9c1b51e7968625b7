/** Many drags of a dart's end on one page, and what of them stays in its memory. */
import type { CDPSession, Locator, Page } from "@playwright/test";

interface Heap {
  /** Moves made until then. */
  readonly moves: number;
  /** Bytes in use after everything that can be collected was. */
  readonly bytes: number;
  readonly nodes: number;
  readonly listeners: number;
}

/** Moves of a gesture; every so manieth gesture is taken back. */
const MOVES = 20;
const TAKEN_BACK = 10;

/** Twice, since what the first lets go of may hold more. */
async function heapOf(cdp: CDPSession, moves: number): Promise<Heap> {
  for (let turn = 0; turn < 2; turn += 1) await cdp.send("HeapProfiler.collectGarbage");
  const { usedSize } = await cdp.send("Runtime.getHeapUsage");
  const { nodes, jsEventListeners } = await cdp.send("Memory.getDOMCounters");
  return { moves, bytes: usedSize, nodes, listeners: jsEventListeners };
}

/** Drags about until so many moves are made, and looks at the memory every so many. */
export async function heapOverDrags(
  page: Page,
  handle: Locator,
  moves: number,
  every: number,
  told: (heap: Heap) => void = () => undefined,
): Promise<readonly Heap[]> {
  const cdp = await page.context().newCDPSession(page);
  const send = (type: "mousePressed" | "mouseMoved" | "mouseReleased", x: number, y: number, buttons: number) => {
    const button = buttons === 0 && type === "mouseMoved" ? "none" : "left";
    return cdp.send("Input.dispatchMouseEvent", { type, x, y, button, buttons, clickCount: button === "none" ? 0 : 1 });
  };
  const found: Heap[] = [];
  const look = async (made: number): Promise<void> => {
    const heap = await heapOf(cdp, made);
    found.push(heap);
    told(heap);
  };
  await look(0);
  let made = 0;
  for (let gesture = 1; made < moves; gesture += 1) {
    const box = await handle.boundingBox();
    if (box === null) throw new Error("the handle is gone");
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await send("mouseMoved", x, y, 0);
    await send("mousePressed", x, y, 1);
    // There and back by another way each time, so that the dart stays within reach.
    const turn = gesture % 2 === 0 ? 1 : -1;
    for (let step = 1; step <= MOVES; step += 1) {
      const along = Math.sin((Math.PI * step) / MOVES);
      await send("mouseMoved", x + turn * (4 * along + (step / MOVES) * (gesture % 5)), y + turn * 14 * along, 1);
      made += 1;
      if (made % every === 0) {
        await send("mouseMoved", x, y, 1);
        await look(made);
      }
    }
    await send("mouseReleased", x, y, 0);
    if (gesture % TAKEN_BACK === 0) await page.keyboard.press("Control+z");
  }
  await cdp.detach();
  return found;
}

/** Bytes a move that the later half of the measures grow by: the slope of the line nearest to them. */
export function slopeOf(heaps: readonly Heap[]): number {
  const late = heaps.slice(Math.floor(heaps.length / 2));
  const mean = (of: (heap: Heap) => number): number => late.reduce((sum, one) => sum + of(one), 0) / late.length;
  const [moves, bytes] = [mean((one) => one.moves), mean((one) => one.bytes)];
  const along = late.reduce((sum, one) => sum + (one.moves - moves) * (one.bytes - bytes), 0);
  return along / late.reduce((sum, one) => sum + (one.moves - moves) ** 2, 0);
}
