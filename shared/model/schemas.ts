import type { z } from "zod";
import { build } from "./build.ts";
import type { CollectionName } from "./collections.ts";
import { gear } from "./parts/gear.ts";
import { instrument } from "./parts/instrument.ts";
import { motor } from "./parts/motor.ts";
import { pack } from "./parts/pack.ts";
import { plate } from "./parts/plate.ts";
import { rotor } from "./parts/rotor.ts";
import { skirt } from "./parts/skirt.ts";
import { surface } from "./parts/surface.ts";
import { benchTest } from "./tests/index.ts";

/** What the records of each collection keep: the second half of the table of collections. */
export const COLLECTIONS = {
  rotors: rotor,
  motors: motor,
  packs: pack,
  skirts: skirt,
  surfaces: surface,
  instruments: instrument,
  plates: plate,
  gears: gear,
  tests: benchTest,
  builds: build,
} as const satisfies Readonly<Record<CollectionName, z.ZodType>>;
