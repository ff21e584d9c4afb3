import { describe, expect, it } from "vitest";
import { type PropellerPredictInput, predictPropeller } from "#shared/physics/propeller.ts";

const INPUT: PropellerPredictInput = {
  air: { temperature: 293.15, pressure: 101325, humidity: 0.5 },
  rotor: {
    kind: "propeller",
    diameter: 0.127,
    thrust: [0.12, 0.01],
    power: [0.06, -0.004],
    referenceReynolds: 40000,
    chord: 0.012,
  },
  motor: { kv: 2300, resistance: 0.12, frictionTorque: 3e-3, viscousTorque: 0, thermalResistance: null },
  pack: { series: 2, parallel: 1, openCircuitVoltage: 3.8, cellResistance: 0.01, wireResistance: 0.01 },
  supply: { duty: 1, driverResistance: 0.01, auxCurrent: 0.2 },
  vehicle: {
    mass: 0.3,
    wheelFriction: 0.7,
    skirtFriction: 0.3,
    skirtShare: 0,
    rollingResistance: 0.02,
    driven: "both",
    wheelbase: 0.12,
    track: 0.1,
    cgHeight: 0.02,
    cgFromRear: 0.06,
    suctionFromRear: 0.06,
    jolt: 0,
    jetArea: null,
    jetAngle: 0,
  } as PropellerPredictInput["vehicle"],
};

describe("an open propeller's operating point", () => {
  it.each([null, 8])(
    "with R_th %s balances k·I − M_c = C_P(Re)ρn²D⁵/(2π) and presses with C_T(Re)ρn²D⁴",
    (thermalResistance) => {
      const prediction = predictPropeller({ ...INPUT, motor: { ...INPUT.motor, thermalResistance } });
      const { point, air, suction } = prediction;
      if (!point) return expect.fail("no point");
      const n = point.speed / (2 * Math.PI);
      const drift = Math.log((air.density * 0.75 * Math.PI * n * 0.127 * 0.012) / air.viscosity / 40000);
      const torque = ((0.06 - 0.004 * drift) * air.density * n ** 2 * 0.127 ** 5) / (2 * Math.PI);
      const k = 60 / (2 * Math.PI * 2300);
      expect(k * point.motorCurrent - 3e-3).toBeCloseToRelative(torque, 1e-9);
      expect(point.thrust).toBeCloseToRelative(
        (0.12 + 0.01 * drift) * air.density * n ** 2 * 0.127 ** 4,
        1e-12,
      );
      expect(suction).toBe(point.thrust);
      expect(prediction.attitudes[2].margins.liftOff).toBeCloseToRelative(
        point.thrust / (0.3 * 9.80665),
        1e-12,
      );
      expect(point.windingTemperature > 300).toBe(thermalResistance !== null);
    },
  );

  it("in cold air, without load but friction, turns at the speed of its cold winding", () => {
    const cold = { ...INPUT.motor, frictionTorque: 1e-4, thermalResistance: 0.01 };
    const { point } = predictPropeller({
      ...INPUT,
      air: { ...INPUT.air, temperature: 258.15 },
      rotor: { ...INPUT.rotor, power: [0, 0] },
      motor: cold,
    });
    const k = 60 / (2 * Math.PI * 2300);
    // R = R₂₀(1 + 0.00393·(T − 20 °C)), T = −15 °C: docs/method/motor.md, Winding
    const resistance = 0.12 * (1 + 0.00393 * -35) + 0.01 + 0.03;
    const voltage = 2 * 3.8 - 0.03 * 0.2;
    expect(point?.speed).toBeCloseToRelative((voltage - (1e-4 / k) * resistance) / k, 1e-6);
  });

  it("of a motor whose settled winding can't overcome its friction is none, with a warning", () => {
    // Cold: k·V/R = 0.2 N·m against 0.15 N·m of friction; the standing current then heats the winding by far.
    const hot = { ...INPUT.motor, frictionTorque: 0.15, thermalResistance: 20 };
    expect(predictPropeller({ ...INPUT, motor: { ...hot, thermalResistance: null } }).point).not.toBeNull();
    const prediction = predictPropeller({ ...INPUT, motor: hot });
    expect(prediction.point).toBeNull();
    expect(prediction.warnings.map((warning) => warning.code)).toContain("motor-stalled");
  });

  it("whose power coefficient gives power instead of taking it is refused by name", () => {
    expect(() => predictPropeller({ ...INPUT, rotor: { ...INPUT.rotor, power: [-1, 0] } })).toThrow(
      /rotor\.power/,
    );
  });

  it("of a motor that can't overcome its friction is none, with a warning", () => {
    const prediction = predictPropeller({ ...INPUT, motor: { ...INPUT.motor, frictionTorque: 1 } });
    expect(prediction.point).toBeNull();
    expect(prediction.suction).toBe(0);
    expect(prediction.warnings.map((warning) => warning.code)).toContain("motor-stalled");
  });
});
