import type { DressPlan } from "../../core/dress/dressPlan";
import { checksCount, dressCheckFigures, dressClaim } from "../../words/dressChecks";
import { Fractions } from "../fields/Fractions";
import { useSettledWork } from "../session/useWork";
import { DressFoldView } from "./DressFolds";
import * as say from "../../words/dressFolds";

/** What the dress is held against, as the ledger tells it of the pieces. */
export function DressChecksFold({ dress: { checks } }: { readonly dress: DressPlan }) {
  const unit = useSettledWork((work) => work.unit);
  const failing = checks.filter(({ ok }) => !ok);
  const names = [...new Set(checks.map(({ name }) => name))];
  if (names.length === 0) return null;
  return (
    <DressFoldView fold="checks" outcome={checksCount(failing.length)} isDoubt={failing.length > 0}>
      <div className="checks">
        <ul>
          {names.map((name) => {
            const results = checks.filter((check) => check.name === name);
            const bad = results.filter(({ ok }) => !ok);
            const shown = bad.length === 0 ? results.slice(0, 1) : bad;
            return (
              <li key={name} data-ok={bad.length === 0 ? "" : undefined}>
                <span className="check-mark" aria-hidden="true">
                  {bad.length === 0 ? "✓" : "!"}
                </span>
                <div>
                  <span className="check-claim">
                    {dressClaim(name)}
                    <span className="visually-hidden">{bad.length === 0 ? say.holds : say.doesNotHold}</span>
                  </span>
                  {shown.map((check, at) => (
                    <p key={at} className={check.ok ? "aside" : undefined}>
                      <Fractions text={dressCheckFigures(check, unit)} />
                    </p>
                  ))}
                </div>
              </li>
            );
          })}
        </ul>
      </div>
    </DressFoldView>
  );
}
