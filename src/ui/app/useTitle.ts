import { useEffect } from "react";
import { usePageState } from "../session/pageState";
import { useSettledWork } from "../session/useWork";
import { STEP_TITLES } from "./Thread";

/** The window, the tab and the history tell the step and the work; a sheet saved as a file begins with it, too. */
export function useTitle(): void {
  const step = usePageState((page) => page.step);
  const name = useSettledWork((work) => work.name);
  useEffect(() => {
    document.title = [STEP_TITLES[step], name, "Bodicewright"].filter((part) => part !== "").join(" · ");
  }, [step, name]);
}
