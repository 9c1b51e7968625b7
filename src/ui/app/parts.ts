/** Everything that is loaded after the page, in one place, so that it can be fetched ahead. It is about the page, not about a work. */
import { PHOTOGRAPHS } from "../works/photographsPart";
import { BASES } from "../works/basesPart";
import { PLAN_AHEAD } from "../works/planAheadPart";
import { STANDING } from "../standing/standingPart";
import { POINTED_DART } from "../darts/pointedDartPart";
import { CHART_FIT } from "../envelope/chartFitPart";
import { SKIRTED_BUTTONS } from "../envelope/skirtedButtonsPart";
import { createLater, type Later } from "../parts/later";
import { SEWN } from "../sewn/sewnPart";
import { VERSIONS } from "../versions/versionsPart";
import { OWN_PATTERN } from "../tissue/ownPatternPart";
import { TABLE_MENU } from "../table/tableMenuPart";
import { BODIES } from "../tape/bodiesPart";
import { COMPARE_DAYS } from "../tape/compareDaysPart";
import { PLAN_NOTE } from "../tape/planNotePart";
import { COLLISIONS } from "../works/collisionsPart";
import { DEMOS } from "../works/demosPart";
import { WORKS_LIST } from "../works/worksListPart";
import { SALVAGE } from "../works/salvagePart";
import { OFFLINE } from "../offline/offlinePart";
import { FRONT_DRAWING } from "../works/frontDrawingPart";

/** The steps but Tape, which comes with the page. */
export const STEP_PARTS = {
  envelope: createLater(async () => (await import("../envelope/EnvelopeStep")).EnvelopeStep),
  tissue: createLater(async () => (await import("../tissue/TissueStep")).TissueStep),
  blend: createLater(async () => (await import("../blend/BlendStep")).BlendStep),
  darts: createLater(async () => (await import("../darts/DartsPanel")).DartsPanel),
  fit: createLater(async () => (await import("../fit/FitStep")).FitStep),
  trial: createLater(async () => (await import("../trial/TrialStep")).TrialStep),
  dress: createLater(async () => (await import("../dress/DressStep")).DressStep),
  paper: createLater(async () => (await import("../paper/PaperStep")).PaperStep),
};

export const TABLE = createLater(async () => (await import("../table/Table")).Table);
export const LEDGER = createLater(async () => (await import("../ledger/Ledger")).Ledger);

/** In the order in which they are fetched ahead: first what stands on the page, then the sheets, which may be printed from anywhere. */
export const AHEAD: readonly Pick<Later<unknown>, "fetchAhead">[] = [
  TABLE,
  LEDGER,
  TABLE_MENU,
  PLAN_AHEAD,
  WORKS_LIST,
  BODIES,
  PLAN_NOTE,
  COMPARE_DAYS,
  STEP_PARTS.paper,
  STEP_PARTS.envelope,
  STEP_PARTS.tissue,
  STEP_PARTS.blend,
  STEP_PARTS.darts,
  STEP_PARTS.fit,
  STEP_PARTS.trial,
  STEP_PARTS.dress,
  POINTED_DART,
  SEWN,
  OWN_PATTERN,
  CHART_FIT,
  SKIRTED_BUTTONS,
  VERSIONS,

  STANDING,
  BASES,
  PHOTOGRAPHS,
  DEMOS,
  COLLISIONS,
  SALVAGE,
  FRONT_DRAWING,
  OFFLINE,
];
