/** What hangs on the showing of a work lives as long as the work is on the page, and no longer. */
import { act, render } from "@testing-library/react";
import { StrictMode, type ReactNode } from "react";
import { describe, expect, it, vi } from "vitest";
import { createWorkSession } from "../../../src/store/workSession";
import { createWorkStore } from "../../../src/store/workStore";
import { ofWork, useShowing } from "../../../src/ui/session/ofWork";
import { WorkSessionProvider } from "../../../src/ui/works/WorkSessionProvider";
import { sampleWork } from "../../support/sampleWork";
import { alone } from "../../support/surroundings";

const Plain = ({ children }: { readonly children: ReactNode }) => children;

describe.each([
  ["a page", Plain],
  ["a page in development", StrictMode],
])("on %s", (_name, Mode) => {
  const show = async () => {
    const end = vi.fn<(thing: object) => void>();
    const thingOf = ofWork(() => ({}), end);
    const seen: object[] = [];
    const User = () => {
      seen.push(thingOf(useShowing()));
      return null;
    };
    const store = createWorkStore(sampleWork);
    const session = createWorkSession(store, alone(), sampleWork);
    await session.start();
    const page = render(
      <Mode>
        <WorkSessionProvider store={store} session={session}>
          <User />
        </WorkSessionProvider>
      </Mode>,
    );
    // Whatever ends, ends a breath later.
    await act(async () => {});
    return { end, seen, session, page, last: () => seen.at(-1) };
  };

  it("what is in use has not ended", async () => {
    const { end, last } = await show();
    expect(end.mock.calls.flat()).not.toContain(last());
  });

  it("another work ends it, once, and has one of its own", async () => {
    const { end, last, session } = await show();
    const first = last();
    await act(() => session.create({ ...sampleWork, name: "Another" }));
    expect(last()).not.toBe(first);
    expect(end.mock.calls.flat().filter((thing) => thing === first)).toHaveLength(1);
    expect(end.mock.calls.flat()).not.toContain(last());
  });

  it("the page's own end ends it", async () => {
    const { end, last, page } = await show();
    page.unmount();
    await act(async () => {});
    expect(end.mock.calls.flat()).toContain(last());
  });
});
