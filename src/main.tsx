import "./ui/styles/index.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { invariant } from "./core/result";
import { firstDemo } from "./document/firstDemo";
import { openLibrary } from "./store/browserLibrary";
import { App } from "./ui/app/App";
import { beginSession } from "./ui/app/beginSession";
import { PageBoundary } from "./ui/app/PageBoundary";
import { hearInstallOffer } from "./ui/offline/installOffer";
import { OFFLINE } from "./ui/offline/offlinePart";
import { WorkSessionProvider } from "./ui/works/WorkSessionProvider";

const root = invariant(document.getElementById("root"), "an element with the id root in index.html");
// What stands in index.html is seen until the first drawing, and again should React itself give up.
const opening = Array.from(root.childNodes, (node) => node.cloneNode(true));

// Browsers offer it once, and early.
hearInstallOffer(window);

async function begin(): Promise<void> {
  const { store, session } = await beginSession(openLibrary, firstDemo());
  const giveUp = (error: unknown): void => {
    root.replaceChildren(...opening);
    // Heard by opening.js, which says it in words.
    reportError(error);
  };
  let isKeeping = false;
  // Only now, so that it takes nothing from what is waited for. In development files change under the page, and none is kept.
  const keepAll = async (): Promise<void> => {
    if (isKeeping || !import.meta.env.PROD) return;
    isKeeping = true;
    await OFFLINE.load();
    const keepHere = OFFLINE.get();
    if (keepHere.kind === "here") await keepHere.value(store, session);
  };
  createRoot(root, { onUncaughtError: giveUp }).render(
    <StrictMode>
      <PageBoundary session={session}>
        <WorkSessionProvider store={store} session={session}>
          <App onAllHere={() => void keepAll()} />
        </WorkSessionProvider>
      </PageBoundary>
    </StrictMode>,
  );
}

// Without its stylesheet the page is not started: what opening.js says of it stands there.
if (document.documentElement.dataset["opening"] !== "lost") void begin();
