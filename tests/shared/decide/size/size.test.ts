import { describe, expect, it } from "vitest";
import { sizedBuild } from "#shared/decide/size/build.ts";
import { sizesOf } from "#shared/decide/size/size.ts";
import { OutOfRangeError } from "#shared/numeric/errors.ts";
import { predictAny } from "#shared/physics/predictAny.ts";
import { demoBook } from "#tests/support/demoBook.ts";
import { PANE_PROPELLER } from "#tests/support/paneCrawler.ts";
import { CRAWLER, NOTHING_ALLOWED, question, questionOf } from "./examples.ts";

const DIAMETERS = [0.03, 0.036, 0.042, 0.048, 0.056, 0.066];
const book = demoBook();

function winding({ kv, resistance }: { kv: number | null; resistance: number | null }) {
  if (kv === null || resistance === null) throw new Error("No winding does it.");
  return { kv, resistance };
}

describe("sizesOf, by hand", () => {
  // Everything in closed form: an opening alone (Δp ∝ Q²), ψ = ψ₀ − cφ², no friction, a pack of one resistance.
  it("of an opening and a parabola: φ, ω, K_v and R as worked out on paper, to 10 digits", () => {
    const [psi0, c, lambda0, area, cd, inside] = [1, 16, 0.05, 5e-5, 0.61, 0.006];
    const rotor = {
      diameter: 0.04,
      psi: [psi0, 0, -c],
      lambda: [lambda0],
      phiMin: 0,
      phiMax: 0.25,
      sizeCorrection: null,
    };
    const skirt = {
      perimeter: 0.36,
      area: inside,
      gap: 0,
      roughness: 0,
      land: 0,
      lossSum: 1.5,
      openings: [{ area, dischargeCoefficient: cd }],
      measuredLeak: null,
    };
    const motor = { motorConstant: 0.005, frictionTorque: 0, viscousTorque: 0, thermalResistance: null };
    const pack = {
      series: 2,
      parallel: 1,
      openCircuitVoltage: 3.8,
      cellResistance: 0.03,
      wireResistance: 0.02,
    };
    const supply = { duty: 1, driverResistance: 0.01, auxCurrent: 0 };
    const asked = question({ rotor, skirt, motor, pack, supply }, { pull: 5 });
    const [row] = sizesOf(asked, [0.04]).rows;
    const density = predictAny(sizedBuild(asked.build, 0.04, winding(row))).air.density;
    const pressure = 5 / inside;
    const flow = cd * area * Math.sqrt((2 * pressure) / density);
    const disc = (Math.PI / 4) * 0.04 ** 2;
    // Q²/(2Δp/ρ) = A²φ²/ψ: φ² = ψ₀q/(A² + c·q) with q = Q²ρ/(2Δp)
    const q = (flow ** 2 * density) / (2 * pressure);
    const phi = Math.sqrt((psi0 * q) / (disc ** 2 + c * q));
    const tip = flow / (disc * phi);
    const speed = tip / 0.02;
    const torque = 0.5 * density * disc * tip ** 2 * lambda0 * 0.02;
    const [v, r] = [7.6, 2 * 0.03 + 0.02 + 0.01];
    const a = speed + torque / 0.005 ** 2;
    const k = (v + Math.sqrt(v * v - 4 * a * r * torque)) / (2 * a);
    expect(row.pressure).toBeCloseToRelative(pressure, 1e-10);
    expect(row.phi).toBeCloseToRelative(phi, 1e-10);
    expect(row.speed).toBeCloseToRelative(speed, 1e-10);
    expect(row.shaftPower).toBeCloseToRelative(torque * speed, 1e-10);
    expect(row.kv).toBeCloseToRelative(60 / (2 * Math.PI * k), 1e-10);
    expect(row.resistance).toBeCloseToRelative((k / 0.005) ** 2, 1e-10);
    expect(row.packPower).toBeCloseToRelative((v - (torque / k) * 0.08) * (torque / k), 1e-10);
    expect(row.windingHeat).toBeCloseToRelative((torque / 0.005) ** 2, 1e-10);
  });
});

describe("sizesOf, put back as a build", () => {
  const pullsBack = (asked: ReturnType<typeof question>, pull: number, diameters = DIAMETERS) => {
    const { rows } = sizesOf(asked, diameters);
    const done = rows.filter(({ kv }) => kv !== null);
    for (const row of done) {
      const { suction } = predictAny(sizedBuild(asked.build, row.diameter, winding(row)));
      expect(suction).toBeCloseToRelative(pull, 1e-9);
    }
    return done.length;
  };

  const builds = book.builds.map(({ data }) => data);
  it.each(builds.flatMap((build) => [1, 2, 3].map((series) => [build.name, series, build] as const)))(
    "%s of the demo with %s cells: gives the pull to 1e-9 at every size that does it",
    (_name, series, build) => {
      const pull = build.skirt ? 4 : 2;
      const asked = questionOf(book, { ...build, overrides: { ...build.overrides, series } }, { pull });
      const sizes = "thrust" in asked.build.rotor ? [0.09, 0.11, 0.13, 0.16] : DIAMETERS;
      expect(pullsBack(asked, pull, sizes)).toBeGreaterThan(0);
    },
  );

  it("with part throttle, other loads, a warm winding, a jet and a pull factor: to 1e-9", () => {
    const asked = question({
      supply: { duty: 0.8, driverResistance: 0.03, auxCurrent: 0.6 },
      motor: { ...CRAWLER.motor, thermalResistance: 6 },
      vehicle: { ...CRAWLER.vehicle, jetArea: 4e-4, jetAngle: 20, pullFactor: 0.9 },
    });
    expect(pullsBack(asked, 6)).toBeGreaterThan(2);
  });

  it("against a sealed skirt, with the size correction: to 1e-9 at no flow", () => {
    const skirt = CRAWLER.skirt && { ...CRAWLER.skirt, gap: 0 };
    const sizeCorrection = { testedDiameter: 0.044, testedTipSpeed: 60 };
    const rotor = { ...CRAWLER.rotor, sizeCorrection } as typeof CRAWLER.rotor;
    expect(pullsBack(question({ skirt, rotor }), 6)).toBeGreaterThan(2);
    expect(sizesOf(question({ skirt, rotor }), [0.05]).rows[0].flow).toBe(0);
  });

  it("of a curve with a stall hump: is the point that a vehicle set down settles at, or none", () => {
    const rotor = { ...CRAWLER.rotor, psi: [0.8, 6, -80, 120], phiMax: 0.15 } as typeof CRAWLER.rotor;
    const asked = question({ rotor }, { pull: 5 });
    const { rows } = sizesOf(
      asked,
      Array.from({ length: 30 }, (_, i) => 0.025 + 0.002 * i),
    );
    for (const row of rows.filter(({ kv }) => kv !== null))
      expect(predictAny(sizedBuild(asked.build, row.diameter, winding(row))).suction).toBeCloseToRelative(
        5,
        1e-9,
      );
    expect(rows.some(({ kv }) => kv !== null)).toBe(true);
  });

  it("of a margin on the worst attitude, driving: that margin to 1e-9", () => {
    const asked = question({}, { hold: { angle: "worst", margin: 1.5, mode: "driving" } });
    for (const row of sizesOf(asked, DIAMETERS).rows.filter(({ kv }) => kv !== null)) {
      const { worst } = predictAny(sizedBuild(asked.build, row.diameter, winding(row)));
      expect(worst.driving.margin).toBeCloseToRelative(1.5, 1e-9);
    }
  });

  it("of a vehicle whose gap gives: the margin at each mode's own gap, to 1e-8", () => {
    const vehicle = { ...CRAWLER.vehicle, verticalStiffness: 30_000 };
    const asked = question({ vehicle }, { hold: { angle: 90, margin: 1.4, mode: "parked" } });
    const rows = sizesOf(asked, [0.042, 0.05]).rows.filter(({ kv }) => kv !== null);
    expect(rows).toHaveLength(2);
    for (const row of rows) {
      const { attitudes } = predictAny(sizedBuild(asked.build, row.diameter, winding(row)));
      expect(attitudes.find(({ angle }) => angle === 90)?.parked.margin).toBeCloseToRelative(1.4, 1e-8);
    }
  });

  it("of an open propeller: the thrust to 1e-9, no cavity in the row", () => {
    const asked = question({ rotor: PANE_PROPELLER, skirt: null }, { pull: 2 });
    expect(pullsBack(asked, 2, [0.07, 0.09, 0.12])).toBeGreaterThan(1);
    expect(sizesOf(asked, [0.12]).rows[0]).toMatchObject({ pressure: null, flow: null, phi: null });
  });
});

describe("sizesOf, the least", () => {
  it("of windings: none of a scan over K_v makes as much pull with fewer watts", () => {
    const asked = question();
    const [row] = sizesOf(asked, [0.045]).rows;
    const found = winding(row);
    const root = found.resistance * found.kv ** 2;
    let tried = 0;
    for (let kv = found.kv / 4; kv < found.kv * 6; kv *= 1.02) {
      const { suction, point } = predictAny(
        sizedBuild(asked.build, 0.045, { kv, resistance: root / kv ** 2 }),
      );
      if (!point || suction < 6) continue;
      tried++;
      expect(point.packVoltage * point.packCurrent).toBeGreaterThanOrEqual((row.packPower ?? 0) * (1 - 1e-9));
    }
    expect(tried).toBeGreaterThan(10);
  });

  it("of diameters: the row of least pack watts in a scan, wherever it stands in the list", () => {
    const scan = Array.from({ length: 41 }, (_, i) => 0.03 + 0.001 * i);
    const { rows, least } = sizesOf(question(), scan);
    const power = rows.map(({ packPower }) => packPower ?? Number.POSITIVE_INFINITY);
    expect(least).toBe(power.indexOf(Math.min(...power)));
    const shuffled = [...scan].reverse();
    const back = sizesOf(question(), shuffled);
    expect(back.least === null ? null : back.rows[back.least].diameter).toBe(scan[least ?? -1]);
  });

  it("with a limit on the rotor's speed: keeps it, and says by how much another passes it", () => {
    const body = { density: 1240, poisson: 0.36, strength: 8e6, boreDiameter: 0.0015, blades: null };
    const asked = { ...question(), allows: { ...NOTHING_ALLOWED, rotor: body } };
    const { rows, nearest, least } = sizesOf(asked, DIAMETERS);
    expect(rows.some(({ exceeds }) => exceeds.includes("rotor-speed"))).toBe(true);
    expect(least === null ? [] : rows[least].exceeds).toEqual([]);
    expect([least === null, nearest]).toEqual([false, null]);
    const weak = { ...question(), allows: { ...NOTHING_ALLOWED, rotor: { ...body, strength: 4e5 } } };
    const none = sizesOf(weak, DIAMETERS);
    expect(none.least).toBeNull();
    expect(none.nearest?.pull).toBeLessThan(6);
    const less = { ...weak, need: { pull: (none.nearest?.pull ?? 0) * 0.999 } };
    expect(sizesOf(less, DIAMETERS).least).not.toBeNull();
    expect(
      sizesOf({ ...weak, need: { pull: (none.nearest?.pull ?? 0) * 1.01 } }, DIAMETERS).least,
    ).toBeNull();
  });
});

describe("sizesOf, what can't be had", () => {
  it("of a pack too weak: the missing power, and the voltage from which on it does", () => {
    const pack = { ...CRAWLER.pack, cellResistance: 0.6 };
    const asked = question({ pack }, { pull: 12 });
    const [row] = sizesOf(asked, [0.045]).rows;
    expect(row.kv).toBeNull();
    const [note] = row.notes;
    expect(note.code).toBe("power-missing");
    const [needed, most, missing] = (note.message.match(/[\d.]+(?= W)/g) ?? []).map(Number);
    expect(most).toBeCloseToRelative((7.5 - (2 * 0.6 + 0.014) * 0.35) ** 2 / (4 * (2 * 0.6 + 0.034)), 5e-3);
    expect(missing).toBeCloseToRelative(needed - most, 2e-2);
    const volts = Number(/From ([\d.]+) V/.exec(note.message)?.[1]);
    const at = (openCircuitVoltage: number) =>
      sizesOf(question({ pack: { ...pack, openCircuitVoltage } }, { pull: 12 }), [0.045]).rows[0].kv;
    expect(at(volts + 0.02)).not.toBeNull();
    expect(at(volts - 0.02)).toBeNull();
  });

  it("of copper that would heat without end: says so, and that a stronger motor does it", () => {
    const motor = { ...CRAWLER.motor, thermalResistance: 400 };
    const [row] = sizesOf(question({ motor }), [0.045]).rows;
    expect(row.kv).toBeNull();
    expect(row.notes[0].code).toBe("winding-runs-away");
  });

  it.each([
    [
      "an attitude that needs nothing",
      { hold: { angle: 0, margin: 1.5, mode: "parked" } } as const,
      /by its weight alone/,
    ],
    ["a margin of 0", { hold: { angle: 90, margin: 0, mode: "parked" } } as const, /greater than 0/],
    ["a pull of 0", { pull: 0 }, /greater than 0/],
  ])("%s: a word that says what is allowed", (_what, need, words) => {
    expect(() => sizesOf(question({}, need), [0.045])).toThrow(words);
    expect(() => sizesOf(question({}, need), [0.045])).toThrow(OutOfRangeError);
  });

  it("an attitude on which more pull brakes more than it grips: says so", () => {
    const vehicle = { ...CRAWLER.vehicle, skirtShare: 0.9, wheelFriction: 0.2 };
    const need = { hold: { angle: 120, margin: 1.2, mode: "driving" } } as const;
    expect(() => sizesOf(question({ vehicle }, need), [0.045])).toThrow(/brakes more than it grips/);
  });

  it("a jet towards the surface that pushes off: the most pull that it leaves", () => {
    const vehicle = { ...CRAWLER.vehicle, jetArea: 3e-6, jetAngle: 180 };
    expect(() => sizesOf(question({ vehicle }, { pull: 100 }), [0.045])).toThrow(/pushes the rest off/);
  });
});
