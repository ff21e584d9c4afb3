import type { RefObject } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";

/** @returns a place of the page and its width, followed as it changes [px]; 0 before it is on the page */
export function useWidth<E extends Element>(): [RefObject<E | null>, number] {
  const place = useRef<E | null>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = place.current;
    if (!element) return;
    const measure = () => setWidth(Math.floor(element.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [place, width];
}
