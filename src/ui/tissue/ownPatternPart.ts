import { createLater } from "../parts/later";

export const OWN_PATTERN = createLater(async () => (await import("../ownPattern/OwnPatternPanel")).OwnPatternPanel);
