/** The open trial as data for other programs: what was seen, the answers to it ranked, and what none explains. */
import type { Alteration, Half } from "../core/decisions/alteration";
import {
  TRIAL_CHECKS,
  type Observation,
  type ToileLength,
  type Trial,
  type TrialCheck,
  type TrialPlace,
  type TrialSign,
  type TrialWay,
} from "../core/decisions/trial";
import type { LengthUnit, Work } from "../core/decisions/work";
import type { DartName, PieceName } from "../core/pattern/piece";
import { numberedLines } from "../core/toile/recordLine";
import { readTrial } from "../core/trial/readTrial";
import type { Cause, SignAt, TrialAnswer, TrialReading } from "../core/trial/trialReading";
import { alterationTitle } from "../words/planned";
import { causeName, causeWords } from "../words/trialRules";
import { rounded } from "./rounded";
import { openTrial } from "./turnWork";

/** On one half alone; absent: on both. */
interface OnHalf {
  readonly half?: Half;
}

export interface ReportLine extends OnHalf {
  readonly id: string;
  /** Its number on the record, from 1; null: a bust point, which is marked above the lines. */
  readonly line: number | null;
  readonly place: TrialPlace | null;
  readonly sign: TrialSign | null;
  readonly towards?: TrialPlace;
  readonly dart?: { readonly piece: PieceName; readonly name: DartName };
  readonly way?: TrialWay;
  /** As it was measured; null: she could not say. */
  readonly amount_mm: number | null;
  readonly mark?: { readonly out_mm: number; readonly down_mm: number };
  readonly changed?: string;
  /** Whether place and sign are there and go together. */
  readonly read: boolean;
}

interface ReportSign extends OnHalf {
  readonly place: TrialPlace;
  readonly sign: TrialSign;
}

/** A sign at a place, or something ticked. */
type ReportLook = ReportSign | { readonly check: TrialCheck };

interface ReportCause extends OnHalf {
  readonly name: string;
  readonly text: string;
  readonly amount_mm: number;
  readonly amount_by: Cause["amountBy"];
  readonly explains: readonly string[];
  readonly expects: readonly ReportSign[];
  readonly against: readonly ReportLook[];
}

export interface ReportAlteration extends OnHalf {
  readonly id: string;
  readonly kind: string;
  /** 0: it is taken out. Only of a fit alteration. */
  readonly amount_mm?: number;
  readonly text: string;
}

export interface ReportAnswer {
  /** From 1: what `--take` takes. */
  readonly answer: number;
  readonly key: string;
  readonly causes: readonly ReportCause[];
  readonly explains: readonly string[];
  readonly leaves: readonly string[];
  readonly alterations: readonly ReportAlteration[];
  /** Whole change of the bust girth by alteration; null: as it is. */
  readonly bust_alteration_mm: number | null;
  /** Cup versions of one half alone by label; absent: as they are. */
  readonly half_cups?: Readonly<Partial<Record<Half, string>>>;
  readonly tells_apart: readonly (ReportLook & { readonly speaks_for: boolean })[];
}

export interface ReportTrial {
  readonly id: string;
  readonly day: string | null;
  readonly seen: readonly ReportLine[];
  readonly checks: readonly { readonly check: TrialCheck; readonly is: boolean }[];
  readonly sewn_off: readonly {
    readonly length: ToileLength;
    readonly sewn_mm: number;
    readonly planned_mm: number;
    readonly explains: readonly string[];
  }[];
  readonly answers: readonly ReportAnswer[];
  readonly unexplained: readonly string[];
  readonly taken: readonly (OnHalf & { readonly causes: readonly string[]; readonly because: readonly string[] })[];
}

const mm = (value: number): number => rounded(value, 2);
const onHalf = ({ half }: OnHalf): OnHalf => (half === undefined ? {} : { half });

/** @returns null where no trial is open */
export function trialReport(work: Work): ReportTrial | null {
  const trial = openTrial(work);
  if (trial === null) return null;
  const reading = readTrial(trial, work.trials);
  // What was sewn was planned once; where it is no longer, nothing is made of what was seen.
  return reportOf(trial, reading.ok ? reading.value : NOTHING_READ, work.unit);
}

const NOTHING_READ: TrialReading = { read: [], answers: [], unexplained: [], sewnOff: [] };

function reportOf(trial: Trial, reading: TrialReading, unit: LengthUnit): ReportTrial {
  const numbered = numberedLines(trial.observations);
  const numberOf = (line: Observation): number | null => {
    const at = numbered.indexOf(line);
    return at < 0 ? null : at + 1;
  };
  return {
    id: trial.id,
    day: trial.day ?? null,
    seen: trial.observations.map((line) => lineReport(line, numberOf(line), reading.read.includes(line.id))),
    checks: TRIAL_CHECKS.flatMap((check) => {
      const is = trial.checks?.[check];
      return is === undefined ? [] : [{ check, is }];
    }),
    sewn_off: reading.sewnOff.map(({ length, sewn, planned, explains }) => ({
      length,
      sewn_mm: mm(sewn),
      planned_mm: mm(planned),
      explains,
    })),
    answers: reading.answers.map((answer, at) => answerReport(answer, at + 1, unit)),
    unexplained: reading.unexplained,
    taken: (trial.taken ?? []).map(({ causes, because, ...one }) => ({
      ...onHalf(one),
      causes,
      because,
    })),
  };
}

function lineReport(line: Observation, number: number | null, isRead: boolean): ReportLine {
  const { id, place, sign, towards, dart, way, amount, mark, changed } = line;
  return {
    id,
    line: number,
    place: place ?? null,
    sign: sign ?? null,
    ...(towards === undefined ? {} : { towards }),
    ...(dart === undefined ? {} : { dart: { piece: dart.piece, name: dart.dart } }),
    ...(way === undefined ? {} : { way }),
    amount_mm: amount === undefined ? null : mm(amount),
    ...(mark === undefined ? {} : { mark: { out_mm: mm(mark.out), down_mm: mm(mark.down) } }),
    ...onHalf(line),
    ...(changed === undefined ? {} : { changed }),
    read: isRead,
  };
}

const signReport = (at: SignAt): ReportSign => ({ place: at.place, sign: at.sign, ...onHalf(at) });

const lookReport = (look: SignAt | TrialCheck): ReportLook =>
  typeof look === "string" ? { check: look } : signReport(look);

function answerReport(
  { key, causes, explains, leaves, alterations, bustAlteration, halfCups, tellsApart }: TrialAnswer,
  number: number,
  unit: LengthUnit,
): ReportAnswer {
  return {
    answer: number,
    key,
    causes: causes.map((cause) => ({
      name: cause.rule,
      text: `${causeName(cause)}. ${causeWords(cause, unit)}`,
      ...onHalf(cause),
      amount_mm: mm(cause.amount),
      amount_by: cause.amountBy,
      explains: cause.explains,
      expects: cause.expects.map(signReport),
      against: cause.against.map(lookReport),
    })),
    explains,
    leaves,
    alterations: alterations.map((one) => alterationReport(one, unit)),
    bust_alteration_mm: bustAlteration === undefined ? null : mm(bustAlteration),
    ...(halfCups === undefined ? {} : { half_cups: halfCups }),
    tells_apart: tellsApart.map(({ look, speaksFor }) => ({ ...lookReport(look), speaks_for: speaksFor })),
  };
}

export function alterationReport(alteration: Alteration, unit: LengthUnit): ReportAlteration {
  return {
    id: alteration.id,
    kind: alteration.kind === "fit" ? alteration.fit : alteration.kind,
    ...onHalf(alteration),
    ...(alteration.kind === "fit" ? { amount_mm: mm(alteration.amount) } : {}),
    text: alterationTitle(alteration, unit),
  };
}
