import { useEffect } from "react";
import { usePageState } from "../session/pageState";

/** A file that is let go anywhere on the page is opened on Tissue; the browser would leave the page for it. */
export function useFileDrop(): void {
  useEffect(() => {
    const onFile = (event: DragEvent): void => {
      const data = event.dataTransfer;
      if (data?.types.includes("Files") !== true) return;
      event.preventDefault();
      const [file] = data.files;
      if (event.type !== "drop" || file === undefined) return;
      usePageState.getState().drop(file);
      window.location.hash = "#tissue";
    };
    window.addEventListener("dragover", onFile);
    window.addEventListener("drop", onFile);
    return () => {
      window.removeEventListener("dragover", onFile);
      window.removeEventListener("drop", onFile);
    };
  }, []);
}
