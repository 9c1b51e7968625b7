import "./ui/styles/index.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { CoreBug } from "./core/result";
import { demoWorks } from "./document/demo";
import { createKeeper } from "./store/keeper";
import { openLibrary } from "./store/library";
import { createWorkStore } from "./store/workStore";
import { App } from "./ui/app/App";
import { WorksRoot } from "./ui/works/WorksRoot";

const root = document.getElementById("root");
if (root === null) throw new CoreBug("index.html has no element with the id root");
const [first] = demoWorks();
if (first === undefined) throw new CoreBug("there is no demo work");

const store = createWorkStore(first);
const library = await openLibrary();
const keeper = createKeeper(store, library.ok ? library.value : null, first, library.ok ? null : library.failure);
await keeper.start();

// The last change before the page goes must not wait for its turn.
document.addEventListener("visibilitychange", () => {
  if (document.visibilityState === "hidden") void keeper.flush();
});
window.addEventListener("pagehide", () => void keeper.flush());

createRoot(root).render(
  <StrictMode>
    <WorksRoot store={store} keeper={keeper}>
      <App />
    </WorksRoot>
  </StrictMode>,
);
