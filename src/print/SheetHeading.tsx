import type { ReactNode } from "react";
import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/decisions/work";
import { bustOfHalves, cupsWords, shareWords, offsetWords } from "../words/blend";
import { piecesSentences } from "../words/pieceSource";
import { capital, levelWords } from "../words/terms/names";
import { Blank } from "./Blank";
import { Words } from "./Words";
import { WorkName } from "./WorkName";
import * as say from "../words/printedChecklist";
import { INVENTED_SHEET } from "../words/invented";

function Size({
  title,
  value,
  children,
}: {
  readonly title: string;
  readonly value: string;
  readonly children: ReactNode;
}) {
  return (
    <div className="pc-size">
      <dt>{title}</dt>
      <dd>
        <b>{value}</b>
        <span>{children}</span>
      </dd>
    </div>
  );
}

/** Names, what to fill in by hand, and the sizes this sheet was made for. */
export function SheetHeading({ work, plan }: { readonly work: Work; readonly plan: Plan }) {
  const { baseSize } = plan.sizing;
  const leftOut = plan.ledger.some(({ what, outcome }) => what.kind === "bust" && !outcome.ok);
  return (
    <header className="pc-heading">
      <div className="pc-names">
        <p className="pc-kind">{say.alterationChecklist}</p>
        <WorkName work={work} />
        <p className="pc-pattern">{say.pattern(work.pattern.name)}</p>
        {plan.nest.source !== "standIn" && (
          <p className="pc-source">
            {say.pieces} <Words>{piecesSentences(plan, work).join(" ")}</Words>
          </p>
        )}
        {work.invented && <p className="pc-invented">{INVENTED_SHEET}</p>}
      </div>
      <div className="pc-by-hand">
        <div>
          <Blank label={say.date} />
          <Blank label={say.trialNo} />
        </div>
        <Blank label={say.cloth} />
      </div>
      <dl className="pc-sizes">
        <Size title={say.frame} value={baseSize.label}>
          {say.neckShoulderArmhole}
        </Size>
        <Size title={say.cupAndBust} value={cupsWords(plan) ?? say.asDrafted}>
          <Words>{bustOfHalves(plan, work.unit)}</Words>
          {leftOut && <b>{say.notInOrder}</b>}
        </Size>
        {plan.levels
          .filter((level) => level.level !== "bust")
          .map((level) => {
            const line = plan.left.cutLines.find((one) => one.level === level.level);
            const { between, share } = line ?? level;
            const where = shareWords(between, share);
            return (
              <Size key={level.level} title={capital(levelWords(level.level))} value={sizeValue(between, share)}>
                <Words>
                  {line === undefined || where.startsWith(say.onThe)
                    ? where
                    : `${where}; ${offsetWords(line, work.unit)}`}
                </Words>
              </Size>
            );
          })}
      </dl>
    </header>
  );
}

/** "12 – 14" between two lines, "12" on one. */
function sizeValue([lower, upper]: readonly [string, string], share: number): string {
  if (shareWords([lower, upper], share) === say.onTheLine(lower)) return lower;
  if (shareWords([lower, upper], share) === say.onTheLine(upper)) return upper;
  if (share < 0) return `below ${lower}`;
  return share > 1 ? `beyond ${upper}` : `${lower} – ${upper}`;
}
