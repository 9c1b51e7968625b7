/** What the page and the worker that lays parts on cloth say to each other. */
import type { ClothLay } from "../../../core/cloth/cutting";
import type { LayWanted } from "../../../core/cloth/laySearch";

/** `id` comes back with every answer. */
export interface ClothAsk {
  readonly id: number;
  readonly wanted: LayWanted;
}

export type ClothAnswer =
  /** From 0 to 1. */
  | { readonly kind: "progress"; readonly id: number; readonly share: number }
  | { readonly kind: "laid"; readonly id: number; readonly lay: ClothLay }
  /** No answer came: the worker could not be fetched, or something of ours is at fault. */
  | { readonly kind: "broke"; readonly why: ClothBreak };

export type ClothBreak = "worker" | "fault";

/** One worker. It lays one after the other and is closed where it is no longer wanted. */
export interface ClothWorker {
  readonly ask: (ask: ClothAsk) => void;
  readonly close: () => void;
}

/** Starts a worker; `hear` gets every answer. */
export type OpenClothWorker = (hear: (answer: ClothAnswer) => void) => ClothWorker;
