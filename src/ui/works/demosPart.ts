import { createLater } from "../parts/later";

export const DEMOS = createLater(async () => {
  const { demoStories, demoWorks } = await import("../../document/demo");
  return [...demoWorks(), ...demoStories()];
});
