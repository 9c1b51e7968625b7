/** Lays parts on cloth away from the page, so that the page never waits. All geometry is done before: only boxes and rings come here. */
import { layPrepared } from "../../../core/cloth/layPrepared";
import type { ClothAnswer, ClothAsk } from "./clothMessages";

self.addEventListener("message", ({ data }: MessageEvent<ClothAsk>) => answer(data));

function answer({ id, wanted: { prepared, effort, goal } }: ClothAsk): void {
  try {
    const progress = (share: number): void => say({ kind: "progress", id, share });
    say({ kind: "laid", id, lay: layPrepared(prepared, { progress, effort, goal }) });
  } catch {
    say({ kind: "broke", why: "fault" });
  }
}

const say = (message: ClothAnswer): void => self.postMessage(message, { transfer: [] });
