import { useEffect } from "react";
import { planOf } from "../../core/plan/planOf";
import { stepTaken } from "../../store/stepTaken";
import { stepSentence } from "../../words/told";
import { useSaid } from "../session/useSaid";
import { useWorkStore } from "../session/useWork";

/** Tells each step once, when it has come to rest, whatever it was taken by. */
export function useTeller(): void {
  const store = useWorkStore();
  const say = useSaid((said) => said.say);
  useEffect(() => {
    let later = 0;
    const stop = store.subscribe((now, was) => {
      const step = stepTaken(was, now);
      if (step === null) return;
      const plan = planOf(now.work);
      const sentence = stepSentence(step, plan.ok ? plan.value : null);
      if (sentence === null) return;
      const { text, leftOut } = sentence;
      // A handle that has the focus is a slider: that its figures are other ones is told of itself. What was undone is not.
      const slider = step.way === "done" ? (document.activeElement?.closest(".handle") ?? null) : null;
      const figures = slider?.getAttribute("aria-valuetext");
      const isToldElsewhere = (): boolean =>
        leftOut === null ? slider?.getAttribute("aria-valuetext") !== figures : isAlerted(leftOut);
      // Both are asked once they had the time to: the field that asked for it may say why not.
      if (leftOut !== null || slider !== null) later = window.setTimeout(() => isToldElsewhere() || say(text), 0);
      else say(text);
    });
    return () => {
      window.clearTimeout(later);
      stop();
    };
  }, [store, say]);
}

const isAlerted = (text: string): boolean =>
  [...document.querySelectorAll("[role=alert]")].some((alert) => alert.textContent.includes(text));
