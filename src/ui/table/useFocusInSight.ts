import { useEffect } from "react";

/**
 * What the Tab key comes to is brought wholly into sight. In a strip that scrolls sideways the browser leaves it where it is as
 * soon as an edge of it shows. Only what Tab itself moves: a press, or a focus that is set, must not move the page.
 * It comes with the table, so that the first field does not wait for it.
 */
export function useFocusInSight(): void {
  useEffect(() => {
    let isTab = false;
    const onKeyDown = ({ key }: KeyboardEvent): void => {
      isTab = key === "Tab";
    };
    const onPointerDown = (): void => {
      isTab = false;
    };
    const onFocus = ({ target }: FocusEvent): void => {
      const isByTab = isTab;
      // A window that is come back to later gives the focus anew.
      isTab = false;
      if (isByTab && target instanceof HTMLElement) target.scrollIntoView({ block: "nearest", inline: "nearest" });
    };
    document.addEventListener("keydown", onKeyDown, true);
    document.addEventListener("pointerdown", onPointerDown, true);
    document.addEventListener("focusin", onFocus);
    return () => {
      document.removeEventListener("keydown", onKeyDown, true);
      document.removeEventListener("pointerdown", onPointerDown, true);
      document.removeEventListener("focusin", onFocus);
    };
  }, []);
}
