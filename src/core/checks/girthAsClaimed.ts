/** The girths measured on the final pieces are those that chart, picks and slips add up to. */
import { SEWN_AGREEMENT } from "../tolerance";
import { near, type Check } from "./context";

export const girthAsClaimed: Check = ({ levels }) =>
  levels.map(({ level, finished, claim }) =>
    near({
      name: "girthAsClaimed",
      measured: finished,
      expected: claim,
      tolerance: SEWN_AGREEMENT,
      unit: "mm",
      pieces: level === "hip" ? ["frontBasque", "backBasque"] : ["front", "back"],
      level,
    }),
  );
