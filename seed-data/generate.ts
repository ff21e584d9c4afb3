import { mkdirSync, writeFileSync } from "node:fs";
import { byCollection, type CollectionName } from "../shared/model/collections.ts";
import { COLLECTIONS } from "../shared/model/schemas.ts";
import { benchTest } from "../shared/model/tests/index.ts";
import { instruments, plates } from "./instruments.ts";
import { builds, gears, motors, packs, rotors, skirts, surfaces } from "./parts.ts";
import { tests } from "./tests.ts";

/** Writes the demo's files: `npm run seed`. The same seed gives the same files. */
const FOLDER = "seed-data";
const records: Record<CollectionName, { id: string; data: unknown }[]> = {
  ...byCollection(() => []),
  rotors,
  motors,
  packs,
  skirts,
  surfaces,
  instruments,
  plates,
  gears,
  builds,
  tests: tests().map((test) => ({ ...test, data: benchTest.parse(test.data) })),
};

mkdirSync(FOLDER, { recursive: true });
for (const [name, list] of Object.entries(records)) {
  const schema = COLLECTIONS[name as CollectionName];
  for (const record of list) schema.parse(record.data);
  writeFileSync(`${FOLDER}/${name}.json`, `${JSON.stringify(list, null, 1)}\n`);
}
console.log(
  Object.entries(records)
    .map(([name, list]) => `${name} ${list.length}`)
    .join(", "),
);
