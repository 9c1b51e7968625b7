import type { Sizing } from "../../core/sizing/sizing";
import { alternativeSentence, alternativeTitle } from "../../words/blend";
import { useRun, useSettledWork } from "../session/useWork";
import { Fractions } from "../fields/Fractions";
import * as say from "../../words/blendStep";

/** Other ways to cut the same body from the same chart, cheapest first. */
export function Alternatives({ sizing }: { readonly sizing: Sizing }) {
  const { alternatives: ways } = sizing;
  const run = useRun();
  const unit = useSettledWork((work) => work.unit);
  return (
    <section className="alternatives" aria-label={say.otherWaysToCutIt}>
      <details>
        <summary>
          <h3>{say.otherWaysToCutIt}</h3>
        </summary>
        <p className="aside">{say.alternativesAbout}</p>
        <ol className="ways">
          {ways.map((way) => (
            <li key={`${way.baseSize} ${way.cup ?? ""}`} className="way" data-picked={way.picked ? "" : undefined}>
              <div>
                <h4>{alternativeTitle(way)}</h4>
                <p>
                  <Fractions text={alternativeSentence(way, unit)} />
                </p>
              </div>
              {way.picked ? (
                <span className="tag own">{say.cutThisWay}</span>
              ) : (
                <button
                  type="button"
                  className="button small"
                  aria-label={say.takeThisWay(alternativeTitle(way))}
                  onClick={() =>
                    run({
                      kind: "setPick",
                      picks: way.cup === null ? { baseSize: way.baseSize } : { baseSize: way.baseSize, cup: way.cup },
                    })
                  }
                >
                  {say.takeThis}
                </button>
              )}
            </li>
          ))}
        </ol>
      </details>
    </section>
  );
}
