import { useEffect } from "react";

/** rem. A screen lower than this has no room for what stays in place, as in app.css. */
const LOW = 34;

/**
 * Some browsers lay the keyboard over the page and say so only here. How much of the page's foot it hides is written down for
 * the styles, and that the rest is low, so that the bar lies on the keyboard and the pieces make way.
 */
export function useKeyboardRoom(): void {
  useEffect(() => {
    const seen = window.visualViewport;
    if (seen === null || seen === undefined) return undefined;
    const root = document.documentElement;
    const measure = (): void => {
      // Zoomed in with two fingers she sees a part of the page, and nothing hides the rest.
      const hidden = seen.scale > 1.01 ? 0 : Math.max(0, Math.round(window.innerHeight - seen.height - seen.offsetTop));
      if (hidden === 0) root.style.removeProperty("--keyboard");
      else root.style.setProperty("--keyboard", `${hidden}px`);
      const rem = Number.parseFloat(getComputedStyle(root).fontSize);
      root.toggleAttribute("data-low", hidden > 0 && seen.height < LOW * rem);
      // What is typed in stays in sight when keys come up.
      if (seen.scale <= 1.01 && document.activeElement?.matches("input, textarea") === true)
        document.activeElement.scrollIntoView({ block: "nearest" });
    };
    seen.addEventListener("resize", measure);
    return () => {
      seen.removeEventListener("resize", measure);
    };
  }, []);
}
