import "./ui/styles/index.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { invariant } from "./core/result";
import { firstDemo } from "./document/firstDemo";
import { createWorkSession } from "./store/workSession";
import { openLibrary } from "./store/browserLibrary";
import { createWorkStore } from "./store/workStore";
import { App } from "./ui/app/App";
import { WorkSessionProvider } from "./ui/works/WorkSessionProvider";

const root = invariant(document.getElementById("root"), "an element with the id root in index.html");
const first = firstDemo();

const store = createWorkStore(first);
const library = await openLibrary();
const session = library.ok
  ? createWorkSession(store, library.value, first)
  : createWorkSession(store, null, first, library.failure);
await session.start();

createRoot(root).render(
  <StrictMode>
    <WorkSessionProvider store={store} session={session}>
      <App />
    </WorkSessionProvider>
  </StrictMode>,
);
