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
      // The field that asked for it may say why not: it is asked once it had the time to.
      if (leftOut !== null) later = window.setTimeout(() => isAlerted(leftOut) || say(text), 0);
      // A handle that has the focus is a slider: that its value is another one is told of itself.
      else if (step.way !== "done" || document.activeElement?.closest(".handle") === null) say(text);
    });
    return () => {
      window.clearTimeout(later);
      stop();
    };
  }, [store, say]);
}

const isAlerted = (text: string): boolean =>
  [...document.querySelectorAll("[role=alert]")].some((alert) => alert.textContent.includes(text));
