import { createContext, useContext } from "react";
import { useStore } from "zustand";
import { offerMade } from "./offerMade";
import { openPaperWorker } from "./openPaperWorker";
import { createPaperRoom, type PaperRoom, type PaperRoomState } from "./paperRoom";

/** One for the page: a file goes on being made while she looks at another step. Nothing is started before it is asked for. */
const PaperRoomContext = createContext<PaperRoom>(createPaperRoom(openPaperWorker, offerMade));
export const PaperRoomProvider = PaperRoomContext.Provider;

export const usePaperRoom = (): PaperRoom => useContext(PaperRoomContext);

export const usePaperRoomState = <T>(selector: (state: PaperRoomState) => T): T =>
  useStore(usePaperRoom().state, selector);
