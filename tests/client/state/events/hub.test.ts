import { describe, expect, it, vi } from "vitest";
import { Hub, LEAVE, type Tab } from "#client/state/events/hub.ts";
import type { News } from "#client/state/events/stream.ts";

const CHANGE: News = { change: { collection: "builds", id: "b", revision: 2, change: "replaced" } };

function hubWithStream() {
  let report: (news: News) => void = () => undefined;
  const end = vi.fn();
  const follow = vi.fn((receive: (news: News) => void) => {
    report = receive;
    return end;
  });
  return { hub: new Hub(follow), follow, end, report: (news: News) => report(news) };
}

function newTab() {
  const heard: News[] = [];
  const tab: Tab = { onmessage: null, postMessage: (news: News) => void heard.push(news) };
  const leave = () => tab.onmessage?.call(tab as MessagePort, new MessageEvent("message", { data: LEAVE }));
  return { tab, heard, leave };
}

describe("the hub of event streams", () => {
  it("opens one stream for seven pages and hands each what it reports", () => {
    const { hub, follow, report } = hubWithStream();
    const tabs = Array.from({ length: 7 }, newTab);
    for (const { tab } of tabs) hub.join(tab);
    report(CHANGE);
    expect(follow).toHaveBeenCalledTimes(1);
    for (const { heard } of tabs) expect(heard).toEqual([CHANGE]);
  });

  it("tells a page that joins later how the connection stands", () => {
    const { hub, report } = hubWithStream();
    hub.join(newTab().tab);
    report({ connected: false });
    const late = newTab();
    hub.join(late.tab);
    expect(late.heard).toEqual([{ connected: false }]);
  });

  it("hands nothing on to a page that left, and keeps the stream for the others", () => {
    const { hub, end, report } = hubWithStream();
    const [gone, stays] = [newTab(), newTab()];
    hub.join(gone.tab);
    hub.join(stays.tab);
    gone.leave();
    report(CHANGE);
    expect(gone.heard).toEqual([]);
    expect(stays.heard).toEqual([CHANGE]);
    expect(end).not.toHaveBeenCalled();
  });

  it("ends the stream with the last page, and opens another for the next", () => {
    const { hub, follow, end, report } = hubWithStream();
    const only = newTab();
    hub.join(only.tab);
    report({ connected: true });
    only.leave();
    expect(end).toHaveBeenCalledTimes(1);
    const next = newTab();
    hub.join(next.tab);
    expect(follow).toHaveBeenCalledTimes(2);
    expect(next.heard).toEqual([]);
  });
});
