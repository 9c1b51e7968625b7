/** The search for a lay, once every ring is known: all that a worker needs to hold. */
import { ringArea } from "../geometry/ringArea";
import type { Cloth, ClothName } from "../decisions/dress";
import type { LengthUnit } from "../decisions/work";
import { invariant } from "../result";
import type { Mm } from "../units";
import type { ClothLay, LaidPart } from "./cutting";
import { packCloth } from "./packCloth";
import type { Copy } from "./rings";
import { lengthToBuy, SELVAGE, usableWidth } from "./usualCloth";

export interface LayOptions {
  /** Told shares from 0 to 1. */
  readonly progress?: (share: number) => void;
  /** How long it is searched: 1 as usual. */
  readonly effort?: number;
  /** mm. Short enough, as laid: no more is searched for. */
  readonly goal?: Mm;
  /** Another row of choices of the search. */
  readonly seed?: number;
}

/** What is laid, before it is: plain data, all geometry done. */
export interface Prepared {
  readonly name: ClothName;
  readonly cloth: Cloth;
  readonly unit: LengthUnit;
  readonly width: Mm;
  readonly copies: readonly Copy[];
}

/** Cells that are looked at for a lay: a second on a machine with much else to do. */
const LOOKS = 58_500_000;

export function layPrepared(
  { name, cloth, unit, width, copies }: Prepared,
  { progress = () => undefined, effort = 1, goal = 0, seed = 0 }: LayOptions = {},
): ClothLay {
  const onFold = cloth.fold === true;
  const usable = usableWidth(width, onFold);
  const leastByLongest = Math.max(...copies.map(({ ways }) => Math.min(...ways.map((way) => way.length))));
  const places = packCloth(copies, {
    usable,
    looks: LOOKS * effort,
    // No lay is shorter than its longest part: one that is no longer need not be bettered.
    goal: Math.max(goal, leastByLongest),
    progress,
    seed,
  });
  const from = onFold ? 0 : SELVAGE;
  const parts = copies.map(({ key, copy, layers, isPaperMirrored }, index): LaidPart => {
    const { way, x, y } = invariant(places[index], "place");
    return {
      key,
      copy,
      layers,
      ring: way.ring.map((spot) => ({ x: from + x + spot.x, y: y + spot.y })),
      x: from + x,
      y,
      width: way.width,
      length: way.length,
      turn: way.turn,
      isTurnedOver: way.isTurnedOver,
      isPaperDown: isPaperMirrored !== undefined && way.isTurnedOver !== isPaperMirrored,
      atFold: way.atFold,
    };
  });
  const length = Math.max(...parts.map((part) => part.y + part.length));
  const area = parts.reduce((sum, { ring }) => sum + ringArea(ring), 0);
  return {
    cloth: name,
    width,
    onFold,
    oneWay: cloth.oneWay === true,
    parts,
    length,
    toBuy: lengthToBuy(length, cloth, unit),
    leastByArea: area / usable,
    leastByLongest,
    used: area / usable / length,
  };
}
