import { useMemo } from "react";
import type { Work } from "../../core/decisions/work";
import type { Plan } from "../../core/plan/plan";
import { planOf } from "../../core/plan/planOf";
import { versionsOf, type Version } from "../../core/versions/versionsOf";
import { PrintedSince } from "../../print/PrintedSince";
import { planFailureWords } from "../../words/plan";
import { SINCE_WORDS, versionInText, versionTitle } from "../../words/versions";
import { Select } from "../fields/Select";
import { FailureNote } from "../session/FailureNote";
import { useSettledWork } from "../session/useWork";
import { printedWay, useVersionsView } from "../versions/versionsView";
import { PrintRow } from "./PrintRow";
import { SheetPreview } from "./SheetPreview";
import { PlannedPaper } from "./TrueScalePaper";

/** From the paper of one version to that of another: what changes as steps, and as strips in true size. */
export function SincePaper() {
  const work = useSettledWork((current) => current);
  const { printed, print } = useVersionsView((chosen) => chosen);
  const versions = useMemo(() => versionsOf(work), [work]);
  const way = printedWay(versions, printed);
  if (way === null) return <p>{SINCE_WORDS.noTrial}</p>;
  const { from, to } = way;
  return (
    <>
      <div className="paper-pair">
        <Side label={SINCE_WORDS.from} versions={versions} value={from} onChange={(key) => print(key, to.key)} />
        <Side label={SINCE_WORDS.to} versions={versions} value={to} onChange={(key) => print(from.key, key)} />
      </div>
      <Sheets from={from} to={to} />
    </>
  );
}

interface SheetsProps {
  readonly from: Version;
  readonly to: Version;
}

function Sheets({ from, to }: SheetsProps) {
  const work = useSettledWork((current) => current);
  const [old, plan] = [planOf(from.decided), planOf(to.decided)];
  const failed = [old, plan].find((result) => !result.ok);
  if (failed !== undefined && !failed.ok)
    return <FailureNote words={planFailureWords(failed.failure, work.unit, work.pattern.chart.sizes.length)} />;
  if (!old.ok || !plan.ok) return null;
  return (
    <>
      <PrintRow label={SINCE_WORDS.print} paper={work.paper} />
      <SheetPreview>
        <PrintedSince
          work={work}
          from={{ title: versionTitle(from), plan: old.value }}
          to={{ title: versionTitle(to), plan: plan.value }}
        />
      </SheetPreview>
      <details>
        <summary>{SINCE_WORDS.strips}</summary>
        <Strips work={work} called={versionInText(from)} old={old.value} plan={plan.value} />
      </details>
    </>
  );
}

interface StripsProps {
  readonly work: Work;
  /** The old version, in the middle of a sentence. */
  readonly called: string;
  readonly old: Plan;
  readonly plan: Plan;
}

/** One object as long as the old version is the same: what is laid out goes by that. */
function Strips({ work, called, old, plan }: StripsProps) {
  const pieces = useMemo(() => ({ called, plan: old }), [called, old]);
  return <PlannedPaper work={work} plan={plan} kind="overlay" old={pieces} />;
}

interface SideProps {
  readonly label: string;
  readonly versions: readonly Version[];
  readonly value: Version;
  readonly onChange: (key: string) => void;
}

const Side = ({ label, versions, value, onChange }: SideProps) => (
  <Select
    label={label}
    value={value.key}
    options={versions.map((one) => ({ value: one.key, label: versionTitle(one) }))}
    onChange={onChange}
  />
);
