import { useMemo } from "react";
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
  // One object as long as the old version is the same: what is laid out for it goes by that.
  const pieces = useMemo(
    () => (old.ok ? { called: versionInText(from), plan: old.value } : null),
    [from.key, from.number, old],
  );
  const failed = [old, plan].find((result) => !result.ok);
  if (failed !== undefined && !failed.ok)
    return <FailureNote words={planFailureWords(failed.failure, work.unit, work.pattern.chart.sizes.length)} />;
  if (!old.ok || !plan.ok || pieces === null) return null;
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
        <PlannedPaper work={work} plan={plan.value} kind="overlay" old={pieces} />
      </details>
    </>
  );
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
