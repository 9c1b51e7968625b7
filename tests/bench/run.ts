/**
 * The bench: prints tables, asserts nothing. `npm run bench` prints all; `-- bodies`, `-- bust`, `-- dresses`, `-- estimates`, `-- halves`, `-- many`, `-- open`,
 * `-- overlay`, `-- paper`, `-- plans` and `-- proposals` each a part; `-- view`, `-- pages`, `-- drags`, `-- phone`, `-- crowded` and `-- own` those in a browser;
 * `-- node` leaves the browser out, `-- drags built` takes the page as it was built last.
 */
import { benchBodies } from "./bodies";
import { benchBrowser, IN_BROWSER } from "./browser";
import { benchDresses } from "./dresses";
import { printEstimates } from "./estimates";
import { benchBust } from "./bust";
import { benchHalves } from "./halves";
import { benchMany } from "./many";
import { benchOpening } from "./opening";
import { benchOverlays } from "./overlays";
import { benchLaying } from "./paper";
import { benchPlans } from "./plans";
import { benchProposals } from "./proposals";

const PARTS = {
  plans: benchPlans,
  halves: benchHalves,
  many: benchMany,
  dresses: benchDresses,
  bodies: benchBodies,
  bust: benchBust,
  estimates: printEstimates,
  proposals: benchProposals,
  paper: benchLaying,
  overlay: benchOverlays,
  open: benchOpening,
};
const isAsked = (name: string): boolean => process.argv.includes(name);
const isAny = [...Object.keys(PARTS), ...Object.keys(IN_BROWSER)].some(isAsked);
const inNode = Object.entries(PARTS).filter(([name]) => !isAny || isAsked(name));
const inBrowser = (["view", "pages", "drags", "phone", "crowded", "own"] as const).filter((name) =>
  isAny ? isAsked(name) : !isAsked("node"),
);

for (const [, part] of inNode) part();
if (inBrowser.length > 0) await benchBrowser(inBrowser);
