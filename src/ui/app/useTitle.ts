import { useEffect } from "react";
import { usePageState } from "../session/pageState";
import { useSettledWork } from "../session/useWork";
import * as say from "../../words/page";

/** The window, the tab and the history tell the step and the work; a sheet saved as a file begins with it, too. */
export function useTitle(): void {
  const step = usePageState((page) => page.step);
  const name = useSettledWork((work) => work.name);
  useEffect(() => {
    document.title = [say.stepTitles[step], name, say.bodicewright].filter((part) => part !== "").join(" · ");
  }, [step, name]);
}
