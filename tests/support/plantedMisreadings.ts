/** Misreadings planted on the taped women, and how many of them are seen: each kind at each measure it can happen to. */
import type { MisreadingKind } from "../../src/core/bodies/misreading";
import { suspicionsOf } from "../../src/core/bodies/suspicion";
import { MEASURE_NAMES, type MeasureName } from "../../src/core/measures/measure";
import { bodyWith, type TapedWoman, type TapeValues } from "./tapedWomen";

export const SIX_MEASURES: readonly MeasureName[] = [
  "bustGirth",
  "upperChestGirth",
  "underBustGirth",
  "waistGirth",
  "hipGirth",
  "backWaistLength",
];
/** What most give who give six. */
export const SIX_WITH_HEIGHT: readonly MeasureName[] = [...SIX_MEASURES.slice(0, 5), "height"];
/** All that the survey knows of. */
export const THIRTEEN_MEASURES = MEASURE_NAMES.filter((name) => name !== "acrossFront");

type Spoilt = Readonly<Partial<Record<MeasureName, number>>>;

export interface Planted {
  /** `other`: moved by an amount that no misreading we know of has. */
  readonly kind: MisreadingKind | "other";
  readonly at: readonly MeasureName[];
  readonly how: string;
  /** What is wrong with her values; null where it cannot happen to them. */
  readonly spoil: (woman: TapedWoman) => Spoilt | null;
}

const by = (
  kind: Planted["kind"],
  how: string,
  name: MeasureName,
  wrong: (value: number, woman: TapedWoman) => number | null,
): Planted => ({
  kind,
  at: [name],
  how,
  spoil: (woman) => {
    const value = wrong(woman.values[name], woman);
    return value === null ? null : { [name]: value };
  },
});

const turned = (value: number): number | null => {
  const centimetres = Math.floor(value / 10);
  const [tens, ones] = [Math.floor(centimetres / 10), centimetres % 10];
  return centimetres > 99 || tens === ones ? null : 10 * (10 * ones + tens) + (value % 10);
};

const swapped = (a: MeasureName, b: MeasureName): Planted => ({
  kind: "swapped",
  at: [a, b],
  how: "",
  spoil: ({ values }) => ({ [a]: values[b], [b]: values[a] }),
});

export const PLANTED: readonly Planted[] = [
  ...SIX_MEASURES.flatMap((name) => [
    by("inchesAsCentimetres", "", name, (value) => Math.round(value / 2.54)),
    by("centimetresAsInches", "", name, (value) => value * 2.54),
    ...(name === "backWaistLength" ? [] : [by("half", "", name, (value) => Math.round(value / 2))]),
    by("tenOut", "too much", name, (value) => value + 100),
    by("tenOut", "too little", name, (value) => value - 100),
    by("digitsSwapped", "", name, turned),
  ]),
  swapped("bustGirth", "upperChestGirth"),
  swapped("bustGirth", "underBustGirth"),
  swapped("bustGirth", "waistGirth"),
  swapped("upperChestGirth", "underBustGirth"),
  swapped("underBustGirth", "waistGirth"),
  swapped("waistGirth", "hipGirth"),
  swapped("backWaistLength", "frontWaistLength"),
  swapped("sideNeckToBustPoint", "frontWaistLength"),
  swapped("acrossBack", "acrossFront"),
  by("waistAtNavel", "", "waistGirth", (_, { waistAtNavel }) => waistAtNavel),
  by("waistAtHip", "1 cm less", "waistGirth", (_, { values }) => values.hipGirth - 10),
  by("upperChestOverBust", "5 mm less", "upperChestGirth", (_, { values }) => values.bustGirth - 5),
  by("other", "7 cm too little", "bustGirth", (value) => value - 70),
  by("other", "7 cm too much", "waistGirth", (value) => value + 70),
  by("other", "5 cm too much", "backWaistLength", (value) => value + 50),
];

/** Shares, 0 to 1. */
export interface Seen {
  readonly tried: number;
  /** All that is wrong was doubted. */
  readonly caught: number;
  /** Caught, and the misreading said rightly. */
  readonly named: number;
  /** Something wrong was doubted, and another misreading said. */
  readonly misnamed: number;
  /** A measure that was right was doubted too, or instead. */
  readonly blamed: number;
}

/** What is seen of a planted misreading where these measures are given; null where it needs others. */
export function seenOf(planted: Planted, women: readonly TapedWoman[], given: readonly MeasureName[]): Seen | null {
  if (planted.at.some((name) => !given.includes(name))) return null;
  const looks = women.flatMap((woman) => {
    const wrong = planted.spoil(woman);
    return wrong === null ? [] : [look(planted, { ...woman.values, ...wrong }, woman.age, given)];
  });
  const share = (which: (one: ReturnType<typeof look>) => boolean): number => looks.filter(which).length / looks.length;
  return {
    tried: looks.length,
    caught: share((one) => one.caught),
    named: share((one) => one.named),
    misnamed: share((one) => one.misnamed),
    blamed: share((one) => one.blamed),
  };
}

function look({ kind, at }: Planted, values: TapeValues, age: number, given: readonly MeasureName[]) {
  const found = suspicionsOf(bodyWith(values, given), age);
  const rightly = found.filter(({ measure }) => at.includes(measure));
  const caught = rightly.length === at.length;
  return {
    caught,
    named: caught && rightly.every(({ misreading }) => misreading?.kind === kind),
    misnamed: rightly.some(({ misreading }) => misreading !== null && misreading.kind !== kind),
    blamed: found.length > rightly.length,
  };
}

/**
 * Share of women, all of whose measures are right, who are asked to take one again.
 *
 * @param kind only those of whom a measure is doubted, or who are merely asked to take one once more; absent: both
 */
export const askedInVain = (
  women: readonly TapedWoman[],
  given: readonly MeasureName[],
  kind?: "doubted" | "onceMore",
): number =>
  women.filter(({ values, age }) =>
    suspicionsOf(bodyWith(values, given), age).some(
      ({ onceMore }) => kind === undefined || onceMore === (kind === "onceMore"),
    ),
  ).length / women.length;

/** What comes of one measure read so much too much (or too little, negative). Shares, 0 to 1. */
export interface AskedAbout {
  /** Something was asked. */
  readonly asked: number;
  /** The measure that was wrong was asked for. */
  readonly rightly: number;
}

export function askedAbout(
  women: readonly TapedWoman[],
  given: readonly MeasureName[],
  name: MeasureName,
  wrong: number,
): AskedAbout {
  const found = women.map(({ values, age }) =>
    suspicionsOf(bodyWith({ ...values, [name]: values[name] + wrong }, given), age),
  );
  return {
    asked: found.filter((all) => all.length > 0).length / found.length,
    rightly: found.filter((all) => all.some(({ measure }) => measure === name)).length / found.length,
  };
}
