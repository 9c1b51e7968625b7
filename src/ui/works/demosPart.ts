import { createLater } from "../parts/later";

export const DEMOS = createLater(async () => {
  const { demoDresses, demoStories, demoWorks } = await import("../../document/demo");
  return [...demoWorks(), ...demoStories(), ...demoDresses()];
});
