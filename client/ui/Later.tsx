import type { ComponentType } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { Problem } from "./Problem.tsx";
import { whenNear } from "./whenNear.ts";

export interface LaterProps<P> {
  readonly load: () => Promise<{ default: ComponentType<P> }>;
  /** what it is, for the message where it can't be loaded */
  readonly what: string;
  readonly props: P;
  /** it was asked for: fetched at once, wherever its place is */
  readonly atOnce?: boolean;
}

/** A panel in a chunk of its own, fetched once its place comes near the screen: nothing is worked out that nobody looks at. */
export function Later<P extends object>({ load, what, props, atOnce = false }: LaterProps<P>) {
  const [Panel, setPanel] = useState<{ readonly Of: ComponentType<P> } | null>(null);
  const [failed, setFailed] = useState(false);
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    let wanted = true;
    const fetched = () =>
      load().then(
        (module) => wanted && setPanel({ Of: module.default }),
        () => wanted && setFailed(true),
      );
    const end = place.current && !atOnce ? whenNear(place.current, fetched) : () => {};
    if (atOnce) void fetched();
    return () => {
      wanted = false;
      end();
    };
  }, []);
  if (failed) return <Problem message={`“${what}” could not be loaded; reload the page.`} />;
  return Panel ? <Panel.Of {...props} /> : <div ref={place} class="later-place" />;
}
