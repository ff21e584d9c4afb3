/** Browsers cut elements off that are higher than some ten million pixels. */
export const MOST_HEIGHT = 8_000_000;
/** Rows drawn beyond the seen ones on either side, so that a scroll finds them there. */
const BEYOND = 6;

export interface View {
  readonly total: number;
  /** of a row [px] */
  readonly rowHeight: number;
  /** of what is seen [px] */
  readonly viewport: number;
  readonly scrollTop: number;
}

export interface Drawn {
  /** first row that is drawn, and one past the last */
  readonly first: number;
  readonly until: number;
  /** empty room above and below the drawn rows [px] */
  readonly above: number;
  readonly below: number;
}

/**
 * Which rows of a long table are drawn.
 *
 * A table that would be higher than a browser can draw is squeezed: its scroll then runs over the places in proportion.
 */
export function drawnRows({ total, rowHeight, viewport, scrollTop }: View): Drawn {
  const whole = total * rowHeight;
  const height = Math.min(whole, MOST_HEIGHT);
  const seen = Math.ceil(viewport / rowHeight) + 1;
  const room = height - viewport;
  const top = Math.min(Math.max(0, scrollTop), Math.max(0, room));
  const offset = whole > MOST_HEIGHT && room > 0 ? (top / room) * (whole - viewport) : top;
  const at = Math.min(Math.floor(offset / rowHeight), Math.max(0, total - 1));
  const first = Math.max(0, at - BEYOND);
  const until = Math.min(total, at + seen + BEYOND);
  const above = Math.max(0, top - (offset - first * rowHeight));
  return { first, until, above, below: Math.max(0, height - above - (until - first) * rowHeight) };
}

/** @returns where to scroll so that a row is seen; as it is where it is seen already */
export function scrollToRow({ total, rowHeight, viewport, scrollTop }: View, row: number): number {
  const whole = total * rowHeight;
  const height = Math.min(whole, MOST_HEIGHT);
  const scale = whole > MOST_HEIGHT ? (height - viewport) / (whole - viewport) : 1;
  const offset = scrollTop / scale;
  if (row * rowHeight < offset) return row * rowHeight * scale;
  const end = (row + 1) * rowHeight - viewport;
  return end > offset ? end * scale : scrollTop;
}

/** @returns starts of the pages that hold the drawn rows */
export function pagesOf({ first, until }: Pick<Drawn, "first" | "until">, size: number): number[] {
  const starts: number[] = [];
  for (let start = Math.floor(first / size) * size; start < until; start += size) starts.push(start);
  return starts;
}
