import { useEffect, useState, type RefObject } from "react";

/**
 * Whether any of it is on the screen, or a browser cannot tell.
 *
 * @param untilTold what counts before the browser has looked
 */
export function useInSight(element: RefObject<Element | null>, untilTold = false): boolean {
  const [isSeen, setSeen] = useState(untilTold || typeof IntersectionObserver === "undefined");
  useEffect(() => {
    if (element.current === null || typeof IntersectionObserver === "undefined") return undefined;
    const observer = new IntersectionObserver((seen) => setSeen(seen.at(-1)?.isIntersecting === true));
    observer.observe(element.current);
    return () => observer.disconnect();
  }, [element]);
  return isSeen;
}
