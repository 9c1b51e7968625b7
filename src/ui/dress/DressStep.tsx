import "./dress.css";
import { DRESS_INTRO } from "../../words/dressStep";
import { planFailureWords } from "../../words/plan";
import { FailureNote } from "../session/FailureNote";
import { useSettledWork } from "../session/useWork";
import { ClosureFold } from "./ClosureFold";
import { ClothFold } from "./ClothFold";
import { CutListFold } from "./CutListFold";
import { DressChecksFold } from "./DressChecksFold";
import { DressOnTop } from "./DressOnTop";
import { LiningFold } from "./LiningFold";
import { MeasuresFold } from "./MeasuresFold";
import { NecklineFold } from "./NecklineFold";
import { SewingFolds } from "./SewingFolds";
import { SkirtFold } from "./SkirtFold";
import { UnderFold } from "./UnderFold";
import { useDress } from "./useDress";
import * as say from "../../words/dressFolds";

/** From the finished bodice to the whole dress, in the order in which it is decided. */
export function DressStep() {
  const dress = useDress();
  const work = useSettledWork((current) => current);
  return (
    <>
      <header className="step-head">
        <h2>{say.dress}</h2>
        <p>{DRESS_INTRO}</p>
      </header>
      {dress.ok ? (
        <div className="dress">
          <div className="dress-chosen">
            <DressOnTop dress={dress.value} />
            <div className="dress-folds">
              <SkirtFold dress={dress.value} />
              <MeasuresFold />
              <LiningFold dress={dress.value} />
              <NecklineFold dress={dress.value} />
              <ClosureFold dress={dress.value} />
              <UnderFold dress={dress.value} />
            </div>
          </div>
          <div className="dress-folds dress-made">
            <ClothFold dress={dress.value} />
            <CutListFold dress={dress.value} />
            <SewingFolds dress={dress.value} />
            <DressChecksFold dress={dress.value} />
          </div>
        </div>
      ) : (
        <FailureNote
          words={planFailureWords(dress.failure, work.unit, work.pattern.chart.sizes.length)}
          picks={work.picks}
        />
      )}
    </>
  );
}
