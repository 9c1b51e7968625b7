import type { DressPlan } from "../../core/dress/dressPlan";
import { notionsOutcome, PRINT_DRESS, sewingOutcome } from "../../words/dressStep";
import { notionWords } from "../../words/notions";
import { sewingStepWords } from "../../words/sewing";
import { Fractions } from "../fields/Fractions";
import { useSettledWork } from "../session/useWork";
import { DressFigures } from "./DressFigures";
import { usePageState } from "../session/pageState";
import { DressFoldView } from "./DressFolds";
import * as say from "../../words/dressFolds";

/** What else it takes, and the order in which it is sewn; both are printed whole. */
export function SewingFolds({ dress: { notions, sewing } }: { readonly dress: DressPlan }) {
  const unit = useSettledWork((work) => work.unit);
  const showSheet = usePageState((page) => page.showSheet);
  return (
    <>
      <DressFoldView fold="notions" outcome={notionsOutcome(notions, unit)}>
        <DressFigures
          lines={notions.map((notion) => {
            const { what, amount } = notionWords(notion, unit);
            return { words: what, figure: amount };
          })}
          label={say.notions}
        />
      </DressFoldView>
      <DressFoldView fold="sewing" outcome={sewingOutcome(sewing.length)}>
        <ol className="sewing-order">
          {sewing.map((step, at) => {
            const { text, seams, allowance, cautions } = sewingStepWords(step, unit);
            return (
              <li key={at}>
                <Fractions text={text} />
                {seams.length > 0 && (
                  <span className="aside">
                    {" "}
                    <Fractions text={seams.join("; ")} />.
                  </span>
                )}
                {allowance !== null && (
                  <span className="aside">
                    {" "}
                    {say.allowance} <Fractions text={allowance} />.
                  </span>
                )}
                {cautions.map((caution) => (
                  <span key={caution} className="sewing-caution">
                    {" "}
                    <Fractions text={caution} />
                  </span>
                ))}
              </li>
            );
          })}
        </ol>
        <p className="actions">
          <a className="button" href="#paper" onClick={() => showSheet("dress")}>
            {PRINT_DRESS}
          </a>
        </p>
      </DressFoldView>
    </>
  );
}
