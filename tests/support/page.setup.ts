/** Before the tests that need a page: what Testing Library does by itself only where test functions are global. */
import { cleanup, configure } from "@testing-library/react";
import { afterAll, afterEach, beforeAll, vi } from "vitest";

// Parts of the page are loaded when they are asked for, here too: the first time each is transformed on the way.
configure({ asyncUtilTimeout: 30_000 });

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
