import type { LeakTest } from "../../model/tests/leak.ts";
import { airFrom } from "../../physics/air.ts";
import { predict } from "../../physics/predict.ts";
import { leakFlow } from "../../physics/restriction/leak.ts";
import { skirtLeak, taped } from "../../physics/skirt.ts";
import { findById } from "../book.ts";
import { type Asked, type Planned, plannedHead, scatter, withTest } from "./planned.ts";
import { dropFor, plateOf } from "./plate.ts";

/** Suctions to read, in operating pressures [-]. */
const SHARES = [0.25, 0.4, 0.55, 0.7, 0.85, 1, 1.15, 1.3];
/** What single flow readings scatter by [-]. Judgement. */
const SCATTER = 0.02;
const PERCENT = { percent: 1 };

/** @returns leak readings of the build's skirt on its surface, openings taped, where its leak is now thought to lie; null without a flow to read */
export function plannedLeak({ book, build, resolved }: Asked): Planned | null {
  const skirt = build.skirt && findById(book.skirts, build.skirt);
  const surface = findById(book.surfaces, build.surface);
  if (!resolved.input || !skirt || !surface || build.overrides.gap !== undefined) return null;
  const { point } = predict(resolved.input, []);
  if (!point || !(point.pressure > 0)) return null;
  const air = airFrom(build.air);
  const leak = skirtLeak(taped(resolved.input.skirt), air);
  const plate = plateOf(book);
  const zs = scatter(SHARES.length);
  const rows = SHARES.flatMap((share, i) => {
    const pressure = share * point.pressure;
    const found = dropFor(plate, air, leakFlow(leak, air, pressure) * (1 + SCATTER * zs[i]));
    if (!found) return [];
    const [read, over] = [pressure, found.drop].map((value) => ({ value, unit: "Pa" }));
    return [{ pressure: read, platePressure: over, open: found.open }];
  });
  if (rows.length < SHARES.length / 2) return null;
  const test: LeakTest = {
    kind: "leak",
    ...plannedHead,
    skirt: skirt.id,
    surface: surface.id,
    flowFrom: "bleed-plate",
    plate,
    instruments: { pressure: PERCENT },
    rows,
  };
  return {
    key: "leak",
    kind: "leak",
    title: `Leak test, ${skirt.data.name} on ${surface.data.name}, eight readings`,
    takes: "a blower, the bleed plate in series and a pressure sensor; openings taped; 15 minutes",
    book: withTest(book, "leak", test),
    build,
  };
}
