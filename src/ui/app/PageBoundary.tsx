import { Component, type ReactNode } from "react";
import type { WorkSession } from "../../store/workSession";
import * as say from "../../words/page";

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
        <h1 className="brand">{say.bodicewright}</h1>
        <div className="note bad part-failed" role="alert">
          <p>
            <strong>{say.pageFailed}</strong> {say.pageFailedRemedy}
          </p>
          <div className="part-failed-answers">
            <button type="button" className="button main" onClick={() => window.location.reload()}>
              {say.loadAgain}
            </button>
            <button type="button" className="button" onClick={() => void session.download()}>
              {say.downloadWork}
            </button>
          </div>
        </div>
      </main>
    );
  }
}
