import { createContext, useContext } from "react";
import { useStore } from "zustand";
import { ofWork, useShowing, type Showing } from "../session/ofWork";
import { offerMade } from "./downloadPaper";
import { openPaperWorker } from "./openPaperWorker";
import { createPaperRoom, type PaperRoom, type PaperRoomState } from "./paperRoom";

/** One for the open work: a file goes on being made while she looks at another step. Nothing is started before it is asked for. */
const roomOf = ofWork(
  () => createPaperRoom(openPaperWorker, offerMade),
  (room) => room.end(),
);

/** Which room is whose; tests bring one with workers of their own. */
const RoomOfContext = createContext<(showing: Showing) => PaperRoom>(roomOf);
export const PaperRoomProvider = RoomOfContext.Provider;

export const usePaperRoom = (): PaperRoom => useContext(RoomOfContext)(useShowing());

export const usePaperRoomState = <T>(selector: (state: PaperRoomState) => T): T =>
  useStore(usePaperRoom().state, selector);
