import { expect, it } from "vitest";
import { FIT_NAMES, FITS, fitOf } from "../../../../src/core/alterations/fit/index";
import { FIT_PHASES } from "../../../../src/core/alterations/fit/names";

it("each fit alteration is listed once, in the phase that it says itself", () => {
  expect(FIT_NAMES.toSorted()).toEqual(Object.keys(FITS).toSorted());
  expect(FIT_PHASES).toEqual(Object.fromEntries(FIT_NAMES.map((name) => [name, fitOf(name).phase])));
});
