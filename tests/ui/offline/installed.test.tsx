import { readFileSync } from "node:fs";
import { join } from "node:path";
import { act, screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { hearInstallOffer } from "../../../src/ui/offline/installOffer";
import { usePageState } from "../../../src/ui/session/pageState";
import { WorksMenu } from "../../../src/ui/works/WorksMenu";
import { renderWork } from "../renderWork";

const publicFile = (name: string): Buffer => readFileSync(join(process.cwd(), "public", name));

interface Manifest {
  readonly start_url: string;
  readonly scope: string;
  readonly icons: readonly {
    readonly src: string;
    readonly sizes: string;
    readonly type: string;
    readonly purpose: string;
  }[];
}

/** Width and height as they stand in the first chunk of a PNG. */
function sizeOf(png: Buffer): string {
  expect(png.subarray(1, 4).toString("latin1")).toBe("PNG");
  return `${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`;
}

describe("what the page is installed by", () => {
  const manifest: Manifest = JSON.parse(publicFile("manifest.webmanifest").toString());

  it("holds in any folder of any server", () => {
    expect([manifest.start_url, manifest.scope]).toEqual(["./", "./"]);
    for (const { src } of manifest.icons) expect(src).not.toMatch(/^\/|:/);
  });

  it("has the icons that it names, as large as it says", () => {
    const drawn = manifest.icons.filter(({ type }) => type === "image/png");
    expect(drawn.map(({ sizes, purpose }) => `${sizes} ${purpose}`)).toEqual([
      "192x192 any",
      "512x512 any",
      "512x512 maskable",
    ]);
    for (const { src, sizes } of drawn) expect(sizeOf(publicFile(src))).toBe(sizes);
    expect(publicFile("favicon.svg").toString()).toContain("<svg");
    expect(sizeOf(publicFile("icons/touch-180.png"))).toBe("180x180");
  });
});

class Offer extends Event {
  asked = 0;
  readonly prompt = async (): Promise<void> => {
    this.asked += 1;
  };
}

describe("installing", () => {
  it("stands under Works where the browser offers it, once for each offer, and nowhere else", async () => {
    const { user } = await renderWork(<WorksMenu />);
    const browser = new EventTarget();
    hearInstallOffer(browser);
    await user.click(screen.getByRole("button", { name: "Works" }));
    await screen.findByText("Works kept in this browser");
    expect(screen.queryByRole("button", { name: "Install on this device" })).toBeNull();

    const offer = new Offer("beforeinstallprompt", { cancelable: true });
    act(() => void browser.dispatchEvent(offer));
    expect(offer.defaultPrevented).toBe(true);
    await user.click(screen.getByRole("button", { name: "Install on this device" }));
    expect(offer.asked).toBe(1);
    expect(screen.queryByRole("button", { name: "Install on this device" })).toBeNull();
  });

  it("is not offered any more once it is done, by whatever way", () => {
    const browser = new EventTarget();
    hearInstallOffer(browser);
    browser.dispatchEvent(new Offer("beforeinstallprompt"));
    expect(usePageState.getState().install).not.toBeNull();
    browser.dispatchEvent(new Event("appinstalled"));
    expect(usePageState.getState().install).toBeNull();
  });
});
