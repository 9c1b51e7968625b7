import { test } from "@playwright/test";
test("alike", async () => {});
