import { createContext, useContext, useEffect } from "react";
import { useStore } from "zustand";
import { clothAskedOf } from "../../../core/dress/dressCloth";
import type { DressDecided } from "../../../core/dress/dressOf";
import { CLOTH_NAMES } from "../../../core/decisions/dress";
import { ofWork, useShowing, type Showing } from "../../session/ofWork";
import { createClothRoom, type ClothRoom, type ClothRoomState } from "./clothRoom";
import { openClothWorker } from "./openClothWorker";

/** One for the open work. Nothing is started before it is asked for. */
const roomOf = ofWork(
  () => createClothRoom(openClothWorker),
  (room) => room.end(),
);

/** Which room is whose; tests bring one with workers of their own. */
const RoomOfContext = createContext<(showing: Showing) => ClothRoom>(roomOf);
export const ClothRoomProvider = RoomOfContext.Provider;

export const useClothRoom = (): ClothRoom => useContext(RoomOfContext)(useShowing());

/** Lays of every cloth of the work as it is, made anew whenever it changes, and what was asked about them. */
export function useCloth(work: DressDecided): ClothRoomState {
  const room = useClothRoom();
  useEffect(() => {
    room.forgetQuestions();
    room.lay(CLOTH_NAMES.flatMap((name) => clothAskedOf(work, name) ?? []));
  }, [room, work]);
  return useStore(room.state);
}
