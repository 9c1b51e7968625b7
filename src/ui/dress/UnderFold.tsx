import { OPACITIES, UNDER_NAMES, type Under } from "../../core/decisions/dress";
import type { DressPlan } from "../../core/dress/dressPlan";
import { missingWords, OPACITY_WORDS, showingWords, underOutcome, underWords } from "../../words/dressClosure";
import { Choice } from "../fields/Choice";
import { useRun } from "../session/useWork";
import { DressFoldView } from "./DressFolds";
import { useDressDecided } from "./useDress";

const CLOTH = OPACITIES.map((value) => ({ value, label: OPACITY_WORDS[value] }));

/** What shows through the cloth, and what goes under it then. */
export function UnderFold({ dress: { under: advice } }: { readonly dress: DressPlan }) {
  const { opacity = "opaque", under } = useDressDecided();
  const run = useRun();
  const showing = showingWords(advice);
  const missing = missingWords(advice);
  const chosen: readonly { readonly value: Under | "usual"; readonly label: string }[] = [
    { value: "usual", label: `as recommended: ${underWords(advice.recommended)}` },
    ...UNDER_NAMES.map((value) => ({ value, label: underWords(value) })),
  ];
  return (
    <DressFoldView fold="under" outcome={underOutcome(opacity, advice)} isDoubt={missing !== null}>
      <Choice
        legend="Held to the light"
        options={CLOTH}
        value={opacity}
        onChange={(value) => run({ kind: "setDress", part: "opacity", value: value === "opaque" ? null : value })}
      />
      <Choice
        legend="Under it goes"
        options={chosen}
        value={under ?? "usual"}
        onChange={(value) => run({ kind: "setDress", part: "under", value: value === "usual" ? null : value })}
      />
      {missing !== null && (
        <p className="note doubt" role="status">
          {missing}
        </p>
      )}
      {showing !== null && <p>{showing}</p>}
    </DressFoldView>
  );
}
