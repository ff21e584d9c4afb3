import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import { Problem } from "./Problem.tsx";

export interface LaterProps<P> {
  readonly load: () => Promise<{ default: ComponentType<P> }>;
  /** what it is, for the message where it can't be loaded */
  readonly what: string;
  readonly props: P;
}

/** A panel in a chunk of its own, fetched once the page stands. */
export function Later<P extends object>({ load, what, props }: LaterProps<P>) {
  const [Panel, setPanel] = useState<{ readonly Of: ComponentType<P> } | null>(null);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    let wanted = true;
    load().then(
      (module) => wanted && setPanel({ Of: module.default }),
      () => wanted && setFailed(true),
    );
    return () => {
      wanted = false;
    };
  }, []);
  if (failed) return <Problem message={`“${what}” could not be loaded; reload the page.`} />;
  return Panel && <Panel.Of {...props} />;
}
