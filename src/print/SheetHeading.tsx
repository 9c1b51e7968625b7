import type { ReactNode } from "react";
import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/decisions/work";
import { bustOfHalves, cupsWords, shareWords, offsetWords } from "../words/blend";
import { piecesSentences } from "../words/pieceSource";
import { capital, levelWords } from "../words/terms/names";
import { Blank } from "./Blank";
import { Words } from "./Words";
import { WorkName } from "./WorkName";

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
        <p className="pc-kind">Alteration checklist</p>
        <WorkName work={work} />
        <p className="pc-pattern">Pattern: {work.pattern.name}</p>
        {plan.nest.source !== "standIn" && (
          <p className="pc-source">
            Pieces: <Words>{piecesSentences(plan, work).join(" ")}</Words>
          </p>
        )}
        {work.invented && <p className="pc-invented">Invented demo: no real person and no real pattern.</p>}
      </div>
      <div className="pc-by-hand">
        <div>
          <Blank label="Date" />
          <Blank label="Trial no." />
        </div>
        <Blank label="Cloth" />
      </div>
      <dl className="pc-sizes">
        <Size title="Frame" value={baseSize.label}>
          neck, shoulder, armhole
        </Size>
        <Size title="Cup and bust" value={cupsWords(plan) ?? "as drafted"}>
          <Words>{bustOfHalves(plan, work.unit)}</Words>
          {leftOut && <b> Not in the order of work: see below.</b>}
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
                  {line === undefined || where.startsWith("on the")
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
  if (shareWords([lower, upper], share) === `on the ${lower} line`) return lower;
  if (shareWords([lower, upper], share) === `on the ${upper} line`) return upper;
  if (share < 0) return `below ${lower}`;
  return share > 1 ? `beyond ${upper}` : `${lower} – ${upper}`;
}
