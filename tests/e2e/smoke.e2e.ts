import { expect, test } from "@playwright/test";

test("the page opens, shows its heading and logs no error", async ({ page }) => {
  const errors: string[] = [];
  page.on("pageerror", (error) => errors.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") errors.push(message.text());
  });
  page.on("requestfailed", (request) => errors.push(`failed: ${request.url()}`));

  await page.goto("./");

  await expect(page).toHaveTitle(/Bodicewright/);
  await expect(page.getByRole("heading", { name: "Bodicewright" })).toBeVisible();
  expect(errors).toEqual([]);
});
