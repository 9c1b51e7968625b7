/** Before the tests that need a page: what Testing Library does by itself only where test functions are global. */
import { cleanup } from "@testing-library/react";
import { afterAll, afterEach, beforeAll } from "vitest";

const actEnvironment = (on: boolean) => Reflect.set(globalThis, "IS_REACT_ACT_ENVIRONMENT", on);

beforeAll(() => {
  actEnvironment(true);
});
afterEach(() => {
  cleanup();
});
afterAll(() => {
  actEnvironment(false);
});
