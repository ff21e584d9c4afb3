import type { FeltTimes } from "./feltBench.ts";
import { atMost, ms, type Row, s, told } from "./row.ts";
import type { ScreenTimes } from "./screenBench.ts";

function feltRows({ arrival, slowArrival, change, slowDrag, slower }: FeltTimes): Row[] {
  const slow = `on a processor ${slower} times slower`;
  return [
    atMost("Match opened cold, until its first verdict is painted", arrival.verdict, 1, s),
    atMost(`the same ${slow}`, slowArrival.verdict, 2, s),
    atMost("Match opened cold, until all its panels are there", arrival.whole, 2.5, s),
    told(`the same ${slow}`, s(slowArrival.whole)),
    atMost("longest task while Match opens", arrival.held, 0.1, ms),
    told(`the same ${slow}`, ms(slowArrival.held)),
    atMost(
      `change to a view seen before, slowest of ${change.views} (${change.again.name})`,
      change.again.time,
      0.1,
      ms,
    ),
    told(`change to a view that is fetched first, slowest (${change.first.name})`, ms(change.first.time)),
    told(`handle dragged on the demo, ${slow}: model and redraw, median`, ms(slowDrag.work.median)),
    told("handle's event to painted frame, median", ms(slowDrag.painted.median)),
    atMost("the same, 95th percentile", slowDrag.painted.p95, 0.05, ms),
  ];
}

/** @returns the lines of what a browser needs; where none is found, that alone */
export function screenRows({ drag, firstLoad, felt }: ScreenTimes): Row[] {
  const none = "no Chromium, Chrome or Edge found";
  if (!drag || !firstLoad || !felt)
    return [told("handle dragged in Match", none), told("first load of Match", none)];
  const shown = `${drag.curves} curves and ${drag.readings} readings shown`;
  return [
    atMost(`handle dragged, ${shown}: model and redraw, median`, drag.work.median, 0.008, ms),
    atMost("the same, 95th percentile", drag.work.p95, 0.016, ms),
    told("handle's event to painted frame, median", ms(drag.painted.median)),
    told("the same, 95th percentile", ms(drag.painted.p95)),
    told("processor time of the page for a move, mean", ms(drag.processor)),
    atMost("script of Match's first load, gzipped", firstLoad.script, 200, (kB) => `${Math.round(kB)} kB`),
    told("script of its workers, gzipped", `${Math.round(firstLoad.workers)} kB`),
    atMost("answers of more than a kilobyte that came uncompressed", firstLoad.plain, 0, (count) =>
      String(count),
    ),
    ...feltRows(felt),
  ];
}
