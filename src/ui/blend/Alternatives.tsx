import type { Sizing } from "../../core/sizing/sizing";
import { alternativeSentence, alternativeTitle } from "../../words/blend";
import { useRun, useSettledWork } from "../session/useWork";
import { Fractions } from "../fields/Fractions";

/** Other ways to cut the same body from the same chart, cheapest first. */
export function Alternatives({ sizing }: { readonly sizing: Sizing }) {
  const { alternatives: ways } = sizing;
  const run = useRun();
  const unit = useSettledWork((work) => work.unit);
  return (
    <section className="alternatives" aria-label="Other ways to cut it">
      <details>
        <summary>
          <h3>Other ways to cut it</h3>
        </summary>
        <p className="aside">
          The planner’s own first, then by what they harm: a frame that does not fit most, then what is altered at the
          bust.
        </p>
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
                <span className="tag own">cut this way</span>
              ) : (
                <button
                  type="button"
                  className="button small"
                  aria-label={`Take this: ${alternativeTitle(way)}`}
                  onClick={() =>
                    run({
                      kind: "setPick",
                      picks: way.cup === null ? { baseSize: way.baseSize } : { baseSize: way.baseSize, cup: way.cup },
                    })
                  }
                >
                  Take this
                </button>
              )}
            </li>
          ))}
        </ol>
      </details>
    </section>
  );
}
