import type { Suspicion } from "../../core/bodies/suspicion";
import { bodyOf } from "../../core/measures/tape";
import { measureWords } from "../../words/measures";
import { IT_IS_RIGHT } from "../../words/tapeDoubts";
import { useRunAll } from "../session/useRunAll";
import { useSettledWork } from "../session/useWork";

/** Answers a doubt: the reading stands as it is, and so does the one that it may have been swapped with. */
export function ItIsRight({ suspicion: { measure, misreading } }: { readonly suspicion: Suspicion }) {
  const runAll = useRunAll();
  const body = useSettledWork((work) => bodyOf(work.tapes));
  const names = misreading?.other === undefined ? [measure] : [measure, misreading.other];
  const trust = names.flatMap((name) => {
    const measured = body[name];
    return measured === undefined ? [] : [{ kind: "setTrusted", measure: name, value: measured.value } as const];
  });
  return (
    <button
      type="button"
      className="button small"
      onClick={() => runAll(trust)}
      aria-label={`${IT_IS_RIGHT}: ${names.map((name) => measureWords(name).short).join(" and ")}`}
    >
      {IT_IS_RIGHT}
    </button>
  );
}
