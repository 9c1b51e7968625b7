import { dressOf } from "../../core/dress/dressOf";
import { PrintedDress } from "../../print/PrintedDress";
import { planFailureWords } from "../../words/plan";
import { FailureNote } from "../session/FailureNote";
import { useSettledWork } from "../session/useWork";
import { PrintRow } from "./PrintRow";
import { SheetPreview } from "./SheetPreview";

/** The sheets of the dress, or why there are none yet. */
export function DressPaper() {
  const work = useSettledWork((current) => current);
  const result = useSettledWork(dressOf);
  if (!result.ok)
    return <FailureNote words={planFailureWords(result.failure, work.unit, work.pattern.chart.sizes.length)} />;
  return (
    <>
      <PrintRow label="Print the sheets of the dress" paper={work.paper} />
      <SheetPreview>
        <PrintedDress work={work} dress={result.value} lays={[]} />
      </SheetPreview>
    </>
  );
}
