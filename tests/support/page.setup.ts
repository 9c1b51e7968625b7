/** Before the tests that need a page: what Testing Library does by itself only where test functions are global. */
import { cleanup, configure } from "@testing-library/react";
import * as React from "react";
import { afterAll, afterEach, beforeAll, vi } from "vitest";

// For each element React's development build notes where it was made, up to ten thousand times a second: a sixth of the time
// that a page takes here, and nobody looks at it. So many have been noted from the outset.
const noted: unknown = Reflect.get(React, "__CLIENT_INTERNALS_DO_NOT_USE_OR_WARN_USERS_THEY_CANNOT_UPGRADE");
if (typeof noted === "object" && noted !== null && "recentlyCreatedOwnerStacks" in noted)
  Object.defineProperty(noted, "recentlyCreatedOwnerStacks", {
    configurable: true,
    get: () => 10_000,
    set: () => {
      // It goes on counting.
    },
  });

// Parts of the page are loaded when they are asked for, here too: the first time each is transformed on the way.
configure({ asyncUtilTimeout: 90_000 });

const actEnvironment = (on: boolean) => Reflect.set(globalThis, "IS_REACT_ACT_ENVIRONMENT", on);

beforeAll(() => {
  actEnvironment(true);
});
afterEach(() => {
  cleanup();
});
afterAll(async () => {
  // A part still on its way when a file ends would never come in the next one of this process.
  await vi.dynamicImportSettled();
  actEnvironment(false);
});
