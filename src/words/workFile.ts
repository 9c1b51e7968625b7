/** Why a work file could not be read. Takes the codes alone, since words know nothing of the document layer. */
export type WorkFileFailureLike =
  | { readonly code: "file/not-json" }
  | { readonly code: "file/foreign" }
  | { readonly code: "file/newer"; readonly version: number; readonly known: number }
  | { readonly code: "file/damaged"; readonly places: readonly string[] };

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
  }
}
