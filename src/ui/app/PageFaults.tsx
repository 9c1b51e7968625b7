import { useEffect, useState } from "react";
import { useWorks } from "../works/useWorks";

/** What is no fault of ours: something given up on purpose, or what browsers say of sizes that settle a moment later. */
function isFault(thrown: unknown): boolean {
  if (thrown === null || thrown === undefined) return false;
  return !(thrown instanceof DOMException && thrown.name === "AbortError");
}

/** What went wrong outside of what is drawn, as on a press of a button, and would else be seen by nobody. */
export function PageFaults() {
  const [isSaid, setSaid] = useState(false);
  const { download } = useWorks();
  useEffect(() => {
    const onError = ({ error }: ErrorEvent): void => {
      if (isFault(error)) setSaid(true);
    };
    const onRejection = ({ reason }: PromiseRejectionEvent): void => {
      if (isFault(reason)) setSaid(true);
    };
    window.addEventListener("error", onError);
    window.addEventListener("unhandledrejection", onRejection);
    return () => {
      window.removeEventListener("error", onError);
      window.removeEventListener("unhandledrejection", onRejection);
    };
  }, []);
  if (!isSaid) return null;
  return (
    <div className="note bad" role="alert">
      <p>
        <strong>Something in the page went wrong just now.</strong> Your work is kept. If the page does not do what it
        should, load it again.
      </p>
      <div className="part-failed-answers">
        <button type="button" className="button small" onClick={() => window.location.reload()}>
          Load the page again
        </button>
        <button type="button" className="button small" onClick={download}>
          Download this work
        </button>
        <button type="button" className="button small" onClick={() => setSaid(false)}>
          Dismiss
        </button>
      </div>
    </div>
  );
}
