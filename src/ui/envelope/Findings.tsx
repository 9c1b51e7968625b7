import type { ChartFinding } from "../../core/chart/readChart";
import { chartFindingSentence } from "../../words/chart";
import { useSettledWork } from "../session/useWork";
import * as say from "../../words/envelopeStep";
import { Fractions } from "../fields/Fractions";

/** What was found, said where it was found. What keeps the chart from being used is told apart from what only looks odd. */
export function Findings({ findings }: { readonly findings: readonly ChartFinding[] }) {
  const unit = useSettledWork((work) => work.unit);
  return findings.map((finding) => (
    <p key={`${finding.code} ${finding.column ?? ""}`} className="finding" data-severity={finding.severity}>
      {finding.severity === "blocks" ? say.toPutRight : say.toLookAt}
      <Fractions text={chartFindingSentence(finding, unit)} />
    </p>
  ));
}
