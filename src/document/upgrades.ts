/**
 * Bringing older files up to date: one pure step from each version to the next, applied in order. What a step is given
 * has not been parsed, and what it returns the schema then judges. A step may throw at what it cannot bring up to date.
 */
export const CURRENT_VERSION = 9;

export type Upgrades = Readonly<Record<number, (work: unknown) => unknown>>;

/** By the version a step starts from. */
export const UPGRADES: Upgrades = {
  1: patternsGetAStyle,
  2: measuresBecomeReadings,
  3: paperMayBeChosen,
  4: frameIsABaseSize,
  5: wearerMayBeNamed,
  6: adviceMayBeAnswered,
  7: trialsMayBeKept,
  8: dressMayBeDecided,
};

/** Version 2 names the style of a pattern: before it there was but one, and none had straps. */
function patternsGetAStyle(work: unknown): unknown {
  if (!isRecord(work) || !isRecord(work.pattern)) return work;
  return { ...work, pattern: { ...work.pattern, style: "sideDart", strap: "wide" } };
}

/** Version 3 keeps every reading, by the day: before it there was one of each measure, of no day. */
function measuresBecomeReadings(work: unknown): unknown {
  if (!isRecord(work) || !isRecord(work.measures)) return work;
  const { measures, ...others } = work;
  const readings = Object.fromEntries(Object.entries(measures).map(([name, value]) => [name, [value]]));
  return { ...others, tapes: [{ readings }] };
}

/** Version 4 may hold allowances, the paper for true-scale pieces and buttons: without them the usual ones count, and a zip, as before. */
function paperMayBeChosen(work: unknown): unknown {
  return work;
}

/** Version 5 calls the size that neck, shoulder and armhole follow the base size: before it was the frame. */
function frameIsABaseSize(work: unknown): unknown {
  if (!isRecord(work) || !isRecord(work.picks) || !("frame" in work.picks)) return work;
  const { frame, ...picks } = work.picks;
  return { ...work, picks: { baseSize: frame, ...picks } };
}

/** Version 6 may hold the wearer's name and what she sees of sewn darts: before it nothing was said of either. */
function wearerMayBeNamed(work: unknown): unknown {
  return work;
}

/** Fits whose amounts were all round, or right across, also where they were for one half alone. */
const WHOLE_FITS: readonly unknown[] = [
  "sideSeamBust",
  "sideSeamWaist",
  "sideSeamHip",
  "chestWidth",
  "backWidth",
  "backNeckGape",
];

/**
 * Version 7 may hold what the pattern says of lengths, and her answers to advice: before it nothing was said of either. A fit
 * for one half alone has the amount on that half: before it one that is measured all round had that of both.
 */
function adviceMayBeAnswered(work: unknown): unknown {
  if (!isRecord(work) || !Array.isArray(work.alterations)) return work;
  return { ...work, alterations: work.alterations.map(onItsHalf) };
}

function onItsHalf(alteration: unknown): unknown {
  if (!isRecord(alteration) || alteration.half === undefined || !WHOLE_FITS.includes(alteration.fit)) return alteration;
  return typeof alteration.amount === "number" ? { ...alteration, amount: alteration.amount / 2 } : alteration;
}

/**
 * Version 8 may hold trial garments, alterations of darts and cup versions for one half alone: before it nothing was said of
 * them.
 */
function trialsMayBeKept(work: unknown): unknown {
  return work;
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Version 9 may hold the rest of the dress: before it nothing was said of it. */
function dressMayBeDecided(work: unknown): unknown {
  return work;
}

/** The work of a file of some version as the current version has it. */
export function upgradeWork(work: unknown, from: number, to: number, upgrades: Upgrades): unknown {
  let upgraded = work;
  for (let version = from; version < to; version += 1) {
    const step = upgrades[version];
    // A missing step is our own mistake; the schema then says what does not fit.
    if (step !== undefined) upgraded = step(upgraded);
  }
  return upgraded;
}
