/** Why a work file could not be read. Takes the codes alone, since words know nothing of the document layer. */
export type WorkFileFailureLike =
  | { readonly code: "file/not-json" }
  | { readonly code: "file/foreign" }
  | { readonly code: "file/newer"; readonly version: number; readonly known: number }
  | { readonly code: "file/damaged"; readonly places: readonly string[] }
  | { readonly code: "file/too-large"; readonly most: number }
  | { readonly code: "file/too-deep" | "file/too-slow" | "file/out-of-reach" };

export function workFileFailureSentence(failure: WorkFileFailureLike): string {
  switch (failure.code) {
    case "file/not-json":
      return "This is not a work file: it does not read as one. Nothing was changed.";
    case "file/foreign":
      return "This is a file of something else, not a saved work. Nothing was changed.";
    case "file/newer":
      return `This work was saved by a newer version of Bodicewright (${failure.version}; this one reads up to ${failure.known}). Nothing was changed.`;
    case "file/damaged":
      return `This work file is damaged at ${failure.places.join(", ")}. Nothing was changed.`;
    case "file/too-large":
      return `This file is too large for what Bodicewright saves: ${Math.round(failure.most / 1_000_000)} megabytes is the most that is read. Is it the one you meant? Nothing was changed.`;
    case "file/too-deep":
      return "This file is put together in a way that Bodicewright never saves, so it was not read. Is it the one you meant? Nothing was changed.";
    case "file/too-slow":
      return "Reading this file took too long and was given up. Nothing was changed.";
    case "file/out-of-reach":
      return "The browser could not read this file: it may have been moved, or be kept elsewhere. Nothing was changed.";
  }
}
