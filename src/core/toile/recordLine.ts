/** Writing a line of a trial's record: what one part of it being written does to the others. */
import type { Half } from "../decisions/alteration";
import type { Observation, TrialPlace, TrialSign, TrialWay } from "../decisions/trial";
import type { DartRef } from "../pattern/piece";
import type { Mm } from "../units";
import { isMark, SIGNS_AT, waysAt } from "./signsAt";

/** A line of another place: of a dart only at a dart's end. */
export function linePlaced(line: Observation, place: TrialPlace | null, dart: DartRef | null = null): Observation {
  const { place: _place, dart: kept, ...rest } = line;
  if (place === null) return rest;
  const of = place === "dartEnd" ? (dart ?? (line.place === "dartEnd" ? kept : undefined)) : undefined;
  return { ...rest, place, ...(of === undefined ? {} : { dart: of }) };
}

export function lineOfDart(line: Observation, dart: DartRef | null): Observation {
  const { dart: _dart, ...rest } = line;
  return dart === null ? rest : { ...rest, dart };
}

/** A line of another sign: what that sign is not told by is taken out of it. */
export function lineOfSign(line: Observation, sign: TrialSign | null): Observation {
  const { sign: _sign, towards, way, amount, mark, ...rest } = line;
  if (sign === null)
    return { ...rest, ...(amount === undefined ? {} : { amount, ...(way === undefined ? {} : { way }) }) };
  if (isMark(sign)) return { ...rest, sign, ...(mark === undefined ? {} : { mark }) };
  const ways = waysAt(sign, line.place);
  const told = way !== undefined && ways.includes(way) ? way : ways[0];
  return {
    ...rest,
    sign,
    ...(sign === "dragLines" && towards !== undefined ? { towards } : {}),
    ...(way === undefined && amount === undefined ? {} : told === undefined ? {} : { way: told }),
    ...(amount === undefined ? {} : { amount }),
  };
}

export function lineTowards(line: Observation, towards: TrialPlace | null): Observation {
  const { towards: _towards, ...rest } = line;
  return towards === null ? rest : { ...rest, towards };
}

/** A line told in another way; null: she cannot say how much. */
export function lineTold(line: Observation, way: TrialWay | null): Observation {
  const { way: _way, amount, ...rest } = line;
  return way === null ? rest : { ...rest, way, ...(amount === undefined ? {} : { amount }) };
}

/** @param amount mm as measured on the cloth; null: none. One of no way yet is told in the usual way of its sign. */
export function lineOfAmount(line: Observation, amount: Mm | null): Observation {
  const { amount: _amount, ...rest } = line;
  if (amount === null) return rest;
  const way = line.way ?? (line.sign === undefined ? undefined : waysAt(line.sign, line.place)[0]);
  return { ...rest, amount, ...(way === undefined ? {} : { way }) };
}

/** @param part mm, out or down from where it was sewn or drawn; null: none of that direction */
export function lineMarked(line: Observation, part: "out" | "down", value: Mm | null): Observation {
  const { mark, ...rest } = line;
  const { out = 0, down = 0 } = mark ?? {};
  const next = { out, down, [part]: value ?? 0 };
  return value === null && next.out === 0 && next.down === 0 ? rest : { ...rest, mark: next };
}

export function lineOnHalf(line: Observation, half: Half | null): Observation {
  const { half: _half, ...rest } = line;
  return half === null ? rest : { ...rest, half };
}

export function lineChanged(line: Observation, changed: string | null): Observation {
  const { changed: _changed, ...rest } = line;
  return changed === null ? rest : { ...rest, changed };
}

/** The signs to choose from for a line: those of its place, and the one that stands there already. */
export function signsFor({ place, sign }: Observation, all: readonly TrialSign[]): readonly TrialSign[] {
  // Where both bust points are marked is asked before anything else is.
  const here = place === undefined ? all : SIGNS_AT[place].filter((one) => one !== "bustPoint");
  return sign === undefined || here.includes(sign) ? here : [...here, sign];
}

/** The mark of a bust point of one half, which is asked for above the lines. */
export const isBustMark = ({ place, sign, half }: Observation): boolean =>
  place === "bust" && sign === "bustPoint" && half !== undefined;

/** The lines of a record as they are numbered: without the marks of the bust points, which stand above them. */
export const numberedLines = (observations: readonly Observation[]): readonly Observation[] =>
  observations.filter((line) => !isBustMark(line));
