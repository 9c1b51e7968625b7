/** What she can do to the trial garments of a work. */
import type { Alteration } from "../decisions/alteration";
import { LIMITS } from "../decisions/limits";
import type { Observation, TakenAnswer, ToileLength, Trial, TrialCheck, TrialVerdict } from "../decisions/trial";
import type { Decided, Picks } from "../decisions/decided";
import type { Work } from "../decisions/work";
import { putOrTakeOut } from "./putAlteration";
import { isSame } from "../same";
import type { Mm } from "../units";
import { without, withPart } from "./workParts";

/** The parts of a trial that are words of her own. */
type TrialText = "cloth" | "pinnedBy" | "bra" | "shoes" | "because";

export type TrialCommand =
  /** A trial of what is decided now: it begins with nothing seen. The id is the page's to choose. */
  | { readonly kind: "beginTrial"; readonly id: string; readonly day: string }
  | { readonly kind: "removeTrial"; readonly trial: string }
  /** The day it was tried on, yyyy-mm-dd; null: not said. */
  | { readonly kind: "setTrialDay"; readonly trial: string; readonly day: string | null }
  /** Blank or null: not said. */
  | { readonly kind: "setTrialText"; readonly trial: string; readonly of: TrialText; readonly text: string | null }
  /** What the toile measures as it was sewn; null: not measured. */
  | {
      readonly kind: "setToileLength";
      readonly trial: string;
      readonly length: ToileLength;
      readonly value: Mm | null;
    }
  /** A line of the record, in place of the one with its id, or after the last. */
  | { readonly kind: "putObservation"; readonly trial: string; readonly observation: Observation }
  | { readonly kind: "removeObservation"; readonly trial: string; readonly id: string }
  /** null: not looked at. */
  | { readonly kind: "setTrialCheck"; readonly trial: string; readonly check: TrialCheck; readonly is: boolean | null }
  /**
   * An answer to what was seen, as one step: alterations put as they stand here (`Alteration` of no amount: taken out), and the
   * bust alteration of the picks where the answer has one. `answer` is kept with the trial.
   */
  | {
      readonly kind: "takeTrialAnswer";
      readonly trial: string;
      readonly answer: TakenAnswer;
      readonly alterations: readonly Alteration[];
      /** null: as the planner finds it. */
      readonly bustAlteration?: Mm | null;
      /** null: both halves have the same. */
      readonly halfCups?: Picks["halfCups"] | null;
      /** What the toile was drawn from, held where the bust is altered; null: as the planner finds it. */
      readonly baseSize?: string | null;
      readonly cup?: string | null;
    }
  /** null: it is open again. A trial that is not kept is no base. */
  | { readonly kind: "setVerdict"; readonly trial: string; readonly verdict: TrialVerdict | null }
  | { readonly kind: "setBase"; readonly trial: string; readonly isBase: boolean }
  /** All that was decided when that trial was sewn, in place of what is decided now; the skirt and what else hangs on it stay. */
  | { readonly kind: "returnToTrial"; readonly trial: string };

/** All that a plan follows from, as it is decided in a work. Of the dress that hangs on it, its upper edge alone shapes the bodice. */
export function decidedIn(work: Decided): Decided {
  const { tapes, pattern, easeWanted, picks, alterations } = work;
  const { trusted, age, bustRadius, seen, allowances, dress } = work;
  return {
    tapes,
    ...(trusted === undefined ? {} : { trusted }),
    ...(age === undefined ? {} : { age }),
    pattern,
    easeWanted,
    ...(bustRadius === undefined ? {} : { bustRadius }),
    picks,
    alterations,
    ...(seen === undefined ? {} : { seen }),
    ...(allowances === undefined ? {} : { allowances }),
    ...(dress?.neckline === undefined ? {} : { dress: { neckline: dress.neckline } }),
  };
}

/** The work after the command; the very same work where it changes nothing. */
export function trialCommand(work: Work, command: TrialCommand): Work {
  const { trials = [] } = work;
  if (command.kind === "beginTrial") {
    const { id, day } = command;
    if (trials.length >= LIMITS.trials || trials.some((one) => one.id === id) || id.length > LIMITS.text) return work;
    return { ...work, trials: [{ id, day, sewn: decidedIn(work), observations: [] }, ...trials] };
  }
  const trial = trials.find(({ id }) => id === command.trial);
  if (trial === undefined) return work;
  const changed = (next: Trial): Work =>
    next === trial ? work : { ...work, trials: trials.map((one) => (one === trial ? next : one)) };
  switch (command.kind) {
    case "removeTrial": {
      const left = trials.filter((one) => one !== trial);
      return left.length === 0 ? without(work, "trials") : { ...work, trials: left };
    }
    case "setTrialDay":
      return changed(command.day === null ? without(trial, "day") : withPart(trial, "day", command.day));
    case "setTrialText": {
      const text = (command.text ?? "").slice(0, LIMITS.text);
      return changed(text.trim() === "" ? without(trial, command.of) : withPart(trial, command.of, text));
    }
    case "setToileLength": {
      const { length, value } = command;
      if (value !== null && value < 0) return work;
      const measured = value === null ? without(trial.measured ?? {}, length) : { ...trial.measured, [length]: value };
      return changed(
        Object.keys(measured).length === 0 ? without(trial, "measured") : withPart(trial, "measured", measured),
      );
    }
    case "putObservation":
      return changed(withPart(trial, "observations", putLine(trial.observations, command.observation)));
    case "removeObservation":
      return changed(
        withPart(
          trial,
          "observations",
          trial.observations.filter(({ id }) => id !== command.id),
        ),
      );
    case "setTrialCheck": {
      const { check, is } = command;
      const checks = is === null ? without(trial.checks ?? {}, check) : { ...trial.checks, [check]: is };
      return changed(Object.keys(checks).length === 0 ? without(trial, "checks") : withPart(trial, "checks", checks));
    }
    case "takeTrialAnswer":
      return answerTaken(changed(withPart(trial, "taken", taken(trial, command.answer))), command);
    case "setVerdict": {
      if (command.verdict === null) return changed(without(without(trial, "verdict"), "base"));
      const closed = withPart(trial, "verdict", command.verdict);
      return changed(command.verdict === "keep" ? closed : without(closed, "base"));
    }
    case "setBase":
      if (command.isBase && trial.verdict !== "keep") return work;
      return changed(command.isBase ? withPart(trial, "base", true) : without(trial, "base"));
    case "returnToTrial": {
      const { name, wearer, invented, begunFrom, unit, paper, standingLeft, sheetFormat, printerMargin, unread } = work;
      const { dress: sewnDress, ...sewn } = trial.sewn;
      const { neckline: _, ...hung } = work.dress ?? {};
      const dress = { ...hung, ...sewnDress };
      const returned: Work = {
        ...sewn,
        ...(Object.keys(dress).length === 0 ? {} : { dress }),
        name,
        ...(wearer === undefined ? {} : { wearer }),
        invented,
        ...(begunFrom === undefined ? {} : { begunFrom }),
        unit,
        paper,
        trials,
        ...(standingLeft === undefined ? {} : { standingLeft }),
        ...(sheetFormat === undefined ? {} : { sheetFormat }),
        ...(printerMargin === undefined ? {} : { printerMargin }),
        unread,
      };
      return isSame(decidedIn(work), trial.sewn) ? work : returned;
    }
  }
}

/** An answer takes the place of those that were taken for the same halves; one for both, of all. */
const taken = ({ taken: before = [] }: Trial, answer: TakenAnswer): readonly TakenAnswer[] =>
  [...before.filter(({ half }) => answer.half !== undefined && half !== answer.half), answer].slice(
    -LIMITS.observations,
  );

function answerTaken(work: Work, command: Extract<TrialCommand, { readonly kind: "takeTrialAnswer" }>): Work {
  const { alterations, bustAlteration, halfCups, baseSize, cup } = command;
  const bust = withPick(withPick(work.picks, "bustAlteration", bustAlteration), "halfCups", halfCups);
  const picks = withPick(withPick(bust, "baseSize", baseSize), "cup", cup);
  return withPart(withPart(work, "picks", picks), "alterations", alterations.reduce(putOrTakeOut, work.alterations));
}

/** undefined: as it is; null: none. */
function withPick<K extends "bustAlteration" | "halfCups" | "baseSize" | "cup">(
  picks: Picks,
  pick: K,
  value: Picks[K] | null | undefined,
): Picks {
  if (value === undefined) return picks;
  return value === null ? without(picks, pick) : { ...picks, [pick]: value };
}

const isBeyond = (value: number): boolean => value < -LIMITS.seenAmount || value > LIMITS.seenAmount;

/** A line beyond what a record holds, or one of amounts that no cloth has, is not put. */
function putLine(list: readonly Observation[], line: Observation): readonly Observation[] {
  const { id, amount = 0, mark, changed = "" } = line;
  const numbers = [amount, mark?.out ?? 0, mark?.down ?? 0];
  if (id.length > LIMITS.text || amount < 0 || numbers.some(isBeyond)) return list;
  const kept = changed.length > LIMITS.text ? { ...line, changed: changed.slice(0, LIMITS.text) } : line;
  const at = list.findIndex((one) => one.id === id);
  if (at >= 0) return list.with(at, kept);
  return list.length >= LIMITS.observations ? list : [...list, kept];
}
