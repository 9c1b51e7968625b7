import { useEffect } from "react";
import { stepOf, usePageState } from "../session/pageState";

/** Keeps the step in the page's address, so that back, reload and a bookmark find it again. */
export function useHashStep(): void {
  const setStep = usePageState((page) => page.setStep);
  useEffect(() => {
    const follow = (): void => {
      const step = stepOf(window.location.hash);
      if (step !== undefined) setStep(step);
    };
    follow();
    window.addEventListener("hashchange", follow);
    return () => window.removeEventListener("hashchange", follow);
  }, [setStep]);
}
