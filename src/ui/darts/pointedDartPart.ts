import { createLater } from "../parts/later";

export const POINTED_DART = createLater(async () => (await import("./PointedDartQuestions")).PointedDartQuestions);
