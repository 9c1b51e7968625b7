/**
 * Makes `src/core/bodies/surveyModel.ts` from the survey of 1988: `npm run fit-bodies`. The bodies stay in the tests; what
 * goes into the page is the fit, how many women it stands on, and how far it was out for those held back.
 */
import { writeFileSync } from "node:fs";
import { surveyModelText } from "../support/surveyModelText";

writeFileSync(new URL("../../src/core/bodies/surveyModel.ts", import.meta.url), surveyModelText());
