import { Component, type ReactNode } from "react";
import type { WorkSession } from "../../store/workSession";

export interface PageBoundaryProps {
  readonly session: Pick<WorkSession, "download" | "flush">;
  readonly children: ReactNode;
}

/** Where nothing of the page can be shown any more: the work is still there, and can be had as a file. */
export class PageBoundary extends Component<PageBoundaryProps, { readonly isBroken: boolean }> {
  override state = { isBroken: false };

  static getDerivedStateFromError() {
    return { isBroken: true };
  }

  /** Whoever would have saved the last change when the page is left is gone with it. */
  override componentDidCatch(): void {
    void this.props.session.flush();
  }

  override render() {
    if (!this.state.isBroken) return this.props.children;
    const { session } = this.props;
    return (
      <main className="page-failed">
        <h1 className="brand">Bodicewright</h1>
        <div className="note bad part-failed" role="alert">
          <p>
            <strong>The page cannot be shown: something in it went wrong.</strong> Your work is kept. Load the page
            again; if that does not help, download your work, so that you have it safe.
          </p>
          <div className="part-failed-answers">
            <button type="button" className="button main" onClick={() => window.location.reload()}>
              Load the page again
            </button>
            <button type="button" className="button" onClick={() => void session.download()}>
              Download this work
            </button>
          </div>
        </div>
      </main>
    );
  }
}
