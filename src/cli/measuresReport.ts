/** Her lengths and widths held against the garment, and what they ask for, as data. */
import type { FitName } from "../core/decisions/fitNames";
import type { PrintedLength } from "../core/decisions/pattern";
import type { Work } from "../core/decisions/work";
import type { Plan } from "../core/plan/plan";
import { compareMeasures } from "../core/proposals/compare";
import { proposalsOf } from "../core/proposals/proposals";
import { proposalSentence, proposalTitle, unansweredSentence } from "../words/proposals";
import { rounded } from "./rounded";

export interface ReportMeasures {
  /** Not done: what the measures ask for, in the trade's order. */
  readonly proposals: readonly {
    readonly text: string;
    readonly sum: string;
    /** null: the ends of the bust darts are redrawn. */
    readonly fit: FitName | null;
    readonly stands_mm: number;
    readonly amount_mm: number;
    readonly missing_mm: number;
    readonly measures: readonly PrintedLength[];
  }[];
  /** Off, and with nothing proposed for it; sentences. */
  readonly unanswered: readonly string[];
  readonly compared: readonly {
    readonly measure: PrintedLength;
    readonly body_mm: number;
    readonly pattern_mm: number;
    readonly from: "printed" | "draft";
    readonly garment_mm: number;
    readonly doubt_mm: number;
    readonly agrees: boolean;
  }[];
  /** Hers from the pattern's; null where it was not measured. */
  readonly bust_point: { readonly out_mm: number; readonly down_mm: number } | null;
}

const mm = (value: number): number => rounded(value, 2);

export function measuresReport(work: Work, plan: Plan): ReportMeasures {
  const { proposals, unanswered, bustPoint } = proposalsOf(work, plan);
  return {
    proposals: proposals.map((proposal) => ({
      text: proposalTitle(proposal, work.unit),
      sum: proposalSentence(proposal, work.unit),
      fit: proposal.altered.kind === "fit" ? proposal.altered.fit : null,
      stands_mm: mm(proposal.stands),
      amount_mm: mm(proposal.amount),
      missing_mm: mm(proposal.missing),
      measures: proposal.from.map(({ measure }) => measure),
    })),
    unanswered: unanswered.map((one) => unansweredSentence(one, work.unit)),
    compared: compareMeasures(work, plan).compared.map(({ measure, body, figure, from, garment, doubt, agrees }) => ({
      measure,
      body_mm: mm(body),
      pattern_mm: mm(figure),
      from,
      garment_mm: mm(garment),
      doubt_mm: mm(doubt),
      agrees,
    })),
    bust_point: bustPoint === null ? null : { out_mm: mm(bustPoint.out), down_mm: mm(bustPoint.down) },
  };
}
