import type { ComponentType } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { atRest } from "./atRest.ts";
import { Problem } from "./Problem.tsx";
import { whenNear } from "./whenNear.ts";

export interface LaterProps<P> {
  readonly load: () => Promise<{ default: ComponentType<P> }>;
  /** what it is, for the message where it can't be loaded */
  readonly what: string;
  readonly props: P;
  /** it was asked for: fetched at once, wherever its place is */
  readonly atOnce?: boolean;
  /** fetched as well once this is true and the page has nothing else to do, one such panel after another */
  readonly rested?: boolean;
  /** of its place, for the height that it will have */
  readonly class?: string;
}

/** A panel in a chunk of its own, fetched once its place comes near the screen, at once, or when the page rests. */
export function Later<P extends object>({
  load,
  what,
  props,
  atOnce = false,
  rested = false,
  class: extra = "",
}: LaterProps<P>) {
  const [Panel, setPanel] = useState<{ readonly Of: ComponentType<P> } | null>(null);
  const [failed, setFailed] = useState(false);
  const place = useRef<HTMLDivElement>(null);
  const wanted = useRef(true);
  const asked = useRef(false);
  const fetched = async () => {
    if (asked.current) return;
    asked.current = true;
    await load().then(
      (module) => wanted.current && setPanel({ Of: module.default }),
      () => wanted.current && setFailed(true),
    );
  };
  useEffect(() => {
    wanted.current = true;
    const end = place.current && !atOnce ? whenNear(place.current, () => void fetched()) : () => {};
    if (atOnce) void fetched();
    return () => {
      wanted.current = false;
      end();
    };
  }, []);
  useEffect(() => (rested ? atRest(fetched) : undefined), [rested]);
  if (failed) return <Problem message={`“${what}” could not be loaded; reload the page.`} />;
  return Panel ? <Panel.Of {...props} /> : <div ref={place} class={`later-place ${extra}`} />;
}
