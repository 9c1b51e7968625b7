import "./ui/styles/index.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { must } from "./core/result";
import { firstDemo } from "./document/firstDemo";
import { createKeeper } from "./store/keeper";
import { openLibrary } from "./store/library";
import { createWorkStore } from "./store/workStore";
import { App } from "./ui/app/App";
import { KeptWorks } from "./ui/works/KeptWorks";

const root = must(document.getElementById("root"), "an element with the id root in index.html");
const first = firstDemo();

const store = createWorkStore(first);
const library = await openLibrary();
const keeper = library.ok
  ? createKeeper(store, library.value, first)
  : createKeeper(store, null, first, library.failure);
await keeper.start();

createRoot(root).render(
  <StrictMode>
    <KeptWorks store={store} keeper={keeper}>
      <App />
    </KeptWorks>
  </StrictMode>,
);
