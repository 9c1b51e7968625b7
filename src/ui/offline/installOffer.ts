/** The browser's offer to install the page: kept until she asks for it, under Works. */
import { usePageState } from "../session/pageState";

interface InstallOffer extends Event {
  prompt(): Promise<unknown>;
}

const isOffer = (event: Event): event is InstallOffer => "prompt" in event && typeof event.prompt === "function";

const withdraw = (): void => usePageState.setState({ install: null });

export function hearInstallOffer(page: EventTarget): void {
  page.addEventListener("beforeinstallprompt", (event) => {
    if (!isOffer(event)) return;
    // Else some browsers lay a bar of their own over the page.
    event.preventDefault();
    const install = (): void => {
      // An offer holds once; whoever says no is not asked again before the browser offers it again.
      withdraw();
      void event.prompt().catch(() => {});
    };
    usePageState.setState({ install });
  });
  page.addEventListener("appinstalled", withdraw);
}
