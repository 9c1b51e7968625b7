import { OPACITIES, UNDER_NAMES, type Under } from "../../core/decisions/dress";
import type { DressPlan } from "../../core/dress/dressPlan";
import { LINE_IT, missingWords, OPACITY_WORDS, showingWords, underOutcome, underWords } from "../../words/dressClosure";
import { linedOf } from "../../words/dressLining";
import { Choice } from "../fields/Choice";
import { useRun } from "../session/useWork";
import { setLining } from "./dressCommands";
import { DressFoldView } from "./DressFolds";
import { useDressDecided } from "./useDress";
import * as say from "../../words/dressFolds";

const CLOTH = OPACITIES.map((value) => ({ value, label: OPACITY_WORDS[value] }));

/** What shows through the cloth, and what goes under it then. */
export function UnderFold({ dress: { under: advice } }: { readonly dress: DressPlan }) {
  const { opacity = "opaque", under, lining, skirt } = useDressDecided();
  const run = useRun();
  const showing = showingWords(advice);
  const missing = missingWords(advice);
  const chosen: readonly { readonly value: Under | "usual"; readonly label: string }[] = [
    { value: "usual", label: say.asRecommended(underWords(advice.recommended)) },
    ...UNDER_NAMES.map((value) => ({ value, label: underWords(value) })),
  ];
  return (
    <DressFoldView fold="under" outcome={underOutcome(opacity, advice)} isDoubt={missing !== null}>
      <Choice
        legend={say.heldToTheLight}
        options={CLOTH}
        value={opacity}
        onChange={(value) => run({ kind: "setDress", part: "opacity", value: value === "opaque" ? null : value })}
      />
      <Choice
        legend={say.underItGoes}
        options={chosen}
        value={under ?? "usual"}
        onChange={(value) => run({ kind: "setDress", part: "under", value: value === "usual" ? null : value })}
      />
      {missing !== null && (
        <p className="note doubt" role="status">
          {missing}
        </p>
      )}
      {advice.chosen === "lining" && linedOf(lining) === "nothing" && (
        <p>
          <button
            type="button"
            className="button"
            onClick={() => run(setLining({ ...lining, bodice: true, ...(skirt === undefined ? {} : { skirt: true }) }))}
          >
            {LINE_IT}
          </button>
        </p>
      )}
      {showing !== null && <p>{showing}</p>}
    </DressFoldView>
  );
}
