/**
 * The lines of a file are by far the largest part of a work, and its trials were sewn by the same ones: they are written once,
 * read once, and are one object afterwards, so that what is remembered by them holds for every trial.
 */
import type { FileDrawing } from "../core/decisions/fileDrawing";
import type { Trial } from "../core/decisions/trial";
import type { Decided } from "../core/decisions/decided";
import type { Work } from "../core/decisions/work";
import { ok, type Result } from "../core/result";
import { isSame } from "../core/same";

const EMPTY: FileDrawing = { format: "svg", unit: null, lines: [], points: [], writings: [], hiddenLayers: [] };

type Fields = Readonly<Record<string, unknown>>;
const isFields = (value: unknown): value is Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The drawing in what was decided, whatever lies there. */
export function drawingIn(decided: unknown): unknown {
  const pattern = isFields(decided) ? decided["pattern"] : undefined;
  const own = isFields(pattern) ? pattern["own"] : undefined;
  return isFields(own) ? own["drawing"] : undefined;
}

export function withDrawing(decided: unknown, drawing: unknown): unknown {
  if (!isFields(decided) || !isFields(decided["pattern"]) || !isFields(decided["pattern"]["own"])) return decided;
  const { pattern } = decided;
  return { ...decided, pattern: { ...pattern, own: { ...decided["pattern"]["own"], drawing } } };
}

const trialsIn = (work: unknown): readonly unknown[] => {
  const trials: unknown = isFields(work) ? work["trials"] : undefined;
  return Array.isArray(trials) ? trials : [];
};

/** All that a drawing may lie in: the work itself, then what each trial was sewn by. */
const holdersIn = (work: unknown): readonly unknown[] => [
  work,
  ...trialsIn(work).map((trial) => (isFields(trial) ? trial["sewn"] : undefined)),
];

function withHolders(work: unknown, [first, ...sewn]: readonly unknown[]): unknown {
  if (!isFields(first) || sewn.length === 0) return first;
  const trials = trialsIn(work).map((trial, at) =>
    isFields(trial) && sewn[at] !== trial["sewn"] ? { ...trial, sewn: sewn[at] } : trial,
  );
  return { ...first, trials };
}

/** Which holder a drawing is to be read from, where that is written in its place: 0 the work, 1 its first trial. */
const placeOf = (drawing: unknown): number | null =>
  isFields(drawing) && Object.keys(drawing).length === 1 && typeof drawing["as"] === "number" ? drawing["as"] : null;

/** A work to be written, with each drawing once: where it stands again, the place is told at which it stands first. */
export function drawingsOnce(work: Work): unknown {
  if (work.trials === undefined) return work;
  const drawings = [work, ...work.trials.map(({ sewn }) => sewn)].map(({ pattern }) => pattern.own?.drawing);
  const holders = holdersIn(work).map((holder, at) => {
    const drawing = drawings[at];
    const first = drawing === undefined ? at : drawings.findIndex((other) => isSame(other, drawing));
    return first < at ? withDrawing(holder, { as: first }) : holder;
  });
  return withHolders(work, holders);
}

/** What was written once, in all its places again: one object each. What tells of no place is left as it is. */
export function withDrawingsAgain(work: unknown): unknown {
  if (trialsIn(work).length === 0) return work;
  const holders = holdersIn(work);
  const drawings = holders.map(drawingIn);
  const again = holders.map((holder, at) => {
    const place = placeOf(drawings[at]);
    const drawing = place === null || place >= at ? undefined : drawings[place];
    return drawing === undefined ? holder : withDrawing(holder, drawing);
  });
  return withHolders(work, again);
}

/** Drawings and trials read so far. */
export interface Drawings {
  /** Reads a work by way of a reader; what is known of it is not read again. */
  readonly during: <F>(work: unknown, read: (work: unknown) => Result<Work, F>) => Result<Work, F>;
}

export function createDrawings(): Drawings {
  const keys = new Map<unknown, string>();
  const known = new Map<string, FileDrawing>();
  const knownTrials = new Map<unknown, readonly Trial[]>();
  const keyOf = (raw: unknown): string => {
    const key = keys.get(raw) ?? JSON.stringify(raw);
    keys.set(raw, key);
    return key;
  };
  return {
    during: (given, read) => {
      const rawTrials = isFields(given) ? given["trials"] : undefined;
      const trials = knownTrials.get(rawTrials);
      const whole = withDrawingsAgain(trials === undefined ? given : without(given, "trials"));
      const holders = holdersIn(whole);
      const firsts = new Map<string, number>();
      const places = holders.map((holder, at) => {
        const raw = drawingIn(holder);
        if (!isFields(raw) || placeOf(raw) !== null) return null;
        const key = keyOf(raw);
        if (!known.has(key) && !firsts.has(key)) firsts.set(key, at);
        return { key, isRead: firsts.get(key) === at };
      });
      const bare = holders.map((holder, at) => (places[at]?.isRead === false ? withDrawing(holder, EMPTY) : holder));
      const done = read(withHolders(whole, bare));
      if (!done.ok) return done;
      const made: readonly Decided[] = [done.value, ...(done.value.trials ?? []).map(({ sewn }) => sewn)];
      for (const [key, at] of firsts) {
        const drawing = made[at]?.pattern.own?.drawing;
        if (drawing !== undefined) known.set(key, drawing);
      }
      const drawn = made.map((decided, at) => {
        const drawing = known.get(places[at]?.key ?? "");
        const { own } = decided.pattern;
        return drawing === undefined || own === undefined || own.drawing === drawing
          ? decided.pattern
          : { ...decided.pattern, own: { ...own, drawing } };
      });
      const work = sharing(done.value, drawn);
      if (work.trials !== undefined) knownTrials.set(rawTrials, work.trials);
      return ok(trials === undefined ? work : withTrials(work, trials));
    },
  };
}

function without(fields: unknown, key: string): unknown {
  if (!isFields(fields)) return fields;
  const { [key]: _gone, ...others } = fields;
  return others;
}

/** With its trials where the schema puts them, so that equal works are written alike. */
function withTrials(work: Work, trials: readonly Trial[]): Work {
  const { standingLeft, sheetFormat, printerMargin, unread, ...others } = work;
  return {
    ...others,
    trials,
    ...(standingLeft === undefined ? {} : { standingLeft }),
    ...(sheetFormat === undefined ? {} : { sheetFormat }),
    ...(printerMargin === undefined ? {} : { printerMargin }),
    unread,
  };
}

/** Equal patterns and equal tapes are one object each, so that one plan is worked out of them. */
function sharing(work: Work, [own = work.pattern, ...patterns]: readonly Work["pattern"][]): Work {
  const whole = own === work.pattern ? work : { ...work, pattern: own };
  if (whole.trials === undefined) return whole;
  const before: Pick<Decided, "pattern" | "tapes">[] = [whole];
  const trials = whole.trials.map((trial, at) => {
    const { sewn } = trial;
    const drawn = patterns[at] ?? sewn.pattern;
    const pattern = before.find((other) => isSame(other.pattern, drawn))?.pattern ?? drawn;
    const tapes = before.find((other) => isSame(other.tapes, sewn.tapes))?.tapes ?? sewn.tapes;
    before.push({ pattern, tapes });
    return { ...trial, sewn: { ...sewn, tapes, pattern } };
  });
  return { ...whole, trials };
}
