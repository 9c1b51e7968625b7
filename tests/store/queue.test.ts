import { describe, expect, it } from "vitest";
import { createQueue } from "../../src/store/queue";

describe("a queue", () => {
  it("begins a job when the one before it has ended, even where that one broke", async () => {
    const queue = createQueue();
    const seen: string[] = [];
    let end = (): void => {};
    const first = queue(async () => {
      seen.push("first begins");
      await new Promise<void>((resolve) => {
        end = resolve;
      });
      seen.push("first ends");
      throw new Error("broken");
    });
    const second = queue(async () => void seen.push("second"));
    await Promise.resolve();
    expect(seen).toEqual(["first begins"]);
    end();
    await expect(first).rejects.toThrow("broken");
    await second;
    expect(seen).toEqual(["first begins", "first ends", "second"]);
  });
});
