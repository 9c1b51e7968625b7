/**
 * The bench: prints tables, asserts nothing. `npm run bench` prints all; `-- bodies`, `-- bust`, `-- dresses`, `-- estimates`, `-- halves`, `-- many`, `-- open`,
 * `-- overlay`, `-- paper`, `-- plans` and `-- proposals` each a part, and `-- node` leaves the browser out.
 */
import { benchBodies } from "./bodies";
import { benchBrowser } from "./browser";
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
const asked = Object.entries(PARTS).filter(([name]) => process.argv.includes(name));

for (const [, part] of asked.length > 0 ? asked : Object.entries(PARTS)) part();
if (asked.length === 0 && !process.argv.includes("node")) await benchBrowser();
