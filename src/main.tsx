import "./ui/styles/index.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { invariant } from "./core/result";
import { firstDemo } from "./document/firstDemo";
import { openLibrary } from "./store/browserLibrary";
import { App } from "./ui/app/App";
import { beginSession } from "./ui/app/beginSession";
import { PageBoundary } from "./ui/app/PageBoundary";
import { WorkSessionProvider } from "./ui/works/WorkSessionProvider";

const root = invariant(document.getElementById("root"), "an element with the id root in index.html");
// What stands in index.html is seen until the first drawing, and again should React itself give up.
const opening = Array.from(root.childNodes, (node) => node.cloneNode(true));

async function begin(): Promise<void> {
  const { store, session } = await beginSession(openLibrary, firstDemo());
  const giveUp = (error: unknown): void => {
    root.replaceChildren(...opening);
    // Heard by opening.js, which says it in words.
    reportError(error);
  };
  createRoot(root, { onUncaughtError: giveUp }).render(
    <StrictMode>
      <PageBoundary session={session}>
        <WorkSessionProvider store={store} session={session}>
          <App />
        </WorkSessionProvider>
      </PageBoundary>
    </StrictMode>,
  );
}

// Without its stylesheet the page is not started: what opening.js says of it stands there.
if (document.documentElement.dataset["opening"] !== "lost") void begin();
