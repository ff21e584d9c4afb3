import { findById } from "#shared/book/book.ts";
import { resolveBuild } from "#shared/book/resolve.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { readingAt } from "#tests/support/rotorReadings.ts";

const BUILD = "pane-crawler";
const OVERLAYS = 7;
const READINGS = 2000;
const MISS = 0.01;
const GOLDEN = 0.618033988749895;
const GAP_STEP = 5e-5;

export interface CrowdedBook {
  /** of the build whose handle is dragged, the others laid over it */
  readonly path: string;
  readonly readings: number;
  /** own and laid over */
  readonly curves: number;
}

async function post(address: string, collection: string, data: object): Promise<string> {
  const response = await fetch(`${address}/api/v1/${collection}`, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(data),
  });
  if (response.status !== 201) throw new Error(`${response.status}: ${await response.text()}`);
  return ((await response.json()) as { id: string }).id;
}

const polynomial = (powers: readonly number[], x: number) => powers.reduceRight((sum, c) => sum * x + c, 0);

/** A curve test of the build's rotor with many readings around what its tests said before. */
function manyReadings(rotor: string, diameter: number, psi: readonly number[], phiMax: number) {
  const rows = Array.from({ length: READINGS }, (_, i) => {
    const phi = (phiMax * i) / (READINGS - 1);
    const miss = 1 + MISS * (2 * ((i * GOLDEN) % 1) - 1);
    const { rpm, flow, pressure } = readingAt({
      phi,
      psi: polynomial(psi, phi) * miss,
      rpm: 30_000,
      diameter,
    });
    return {
      speed: { value: rpm, unit: "rpm" },
      flow: { value: flow, unit: "m³/s" },
      pressure: { value: pressure, unit: "Pa" },
    };
  });
  return {
    kind: "curve",
    title: "Many readings",
    date: "2026-03-10",
    rotor,
    diameter: { value: diameter, unit: "m" },
    flowFrom: "known-flow",
    rows,
  };
}

/** Puts seven more builds and a curve test of two thousand readings into the demo's book. */
export async function crowdedBook(address: string): Promise<CrowdedBook> {
  const book = demoBook();
  const build = findById(book.builds, BUILD)?.data;
  if (!build) throw new Error(`The demo has no build ${BUILD}.`);
  const { input } = resolveBuild(book, build);
  if (!input) throw new Error(`The demo's ${BUILD} has no numbers.`);
  const { psi, phiMax } = input.rotor;
  await post(address, "tests", manyReadings(build.rotor, build.diameter, psi, phiMax));
  const ids: string[] = [];
  for (let i = 1; i <= OVERLAYS; i++) {
    const gap = input.skirt.gap + i * GAP_STEP;
    ids.push(
      await post(address, "builds", {
        ...build,
        name: `Crawler ${i}`,
        overrides: { ...build.overrides, gap },
      }),
    );
  }
  return { path: `/match/${BUILD}?over=${ids.join(",")}`, readings: READINGS, curves: OVERLAYS + 1 };
}
