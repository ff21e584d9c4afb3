import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { useSaid } from "./useSaid.ts";

interface Props {
  readonly class?: string;
  /** whether what it shows at first is said: as of {@link useSaid} */
  readonly first?: "silent" | "said";
  readonly children: ComponentChildren;
}

/** What has become of something: seen where it stands, and said once. */
export function Status({ class: name, first = "said", children }: Props) {
  const line = useRef<HTMLParagraphElement>(null);
  const [text, setText] = useState<string | null>(null);
  useLayoutEffect(() => setText(line.current?.textContent?.trim() || null));
  useSaid(text, first);
  return (
    <p class={name} ref={line}>
      {children}
    </p>
  );
}
