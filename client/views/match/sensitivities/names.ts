/** What a number of a build is called. */
const NAMES: Readonly<Record<string, string>> = {
  "skirt.gap": "Gap",
  "skirt.roughness": "Surface roughness",
  "skirt.perimeter": "Skirt perimeter",
  "skirt.area": "Skirt area",
  "skirt.land": "Lip width",
  "skirt.lossSum": "Lip loss sum",
  "skirt.measuredLeak.coefficient": "Measured leak",
  "rotor.diameter": "Rotor diameter",
  "rotor.psi": "Rotor pressure ψ",
  "rotor.lambda": "Rotor power λ",
  "rotor.thrust": "Thrust C_T",
  "rotor.power": "Power C_P",
  "motor.kv": "Motor kv",
  "motor.resistance": "Winding resistance",
  "motor.thermalResistance": "Winding's heat path",
  "motor.frictionTorque": "Motor friction",
  "motor.viscousTorque": "Motor drag by speed",
  "pack.openCircuitVoltage": "Voltage a cell",
  "pack.cellResistance": "Cell resistance",
  "pack.wireResistance": "Wire resistance",
  "supply.duty": "Duty",
  "supply.driverResistance": "Driver resistance",
  "supply.auxCurrent": "Other current",
  "vehicle.mass": "Mass",
  "vehicle.wheelFriction": "Wheel friction μ",
  "vehicle.skirtFriction": "Skirt friction",
  "vehicle.skirtShare": "Skirt's share of the load",
  "vehicle.rollingResistance": "Rolling resistance",
  "vehicle.cgHeight": "Height of the centre of gravity",
  "vehicle.track": "Track width",
  "air.pressure": "Air pressure",
  "air.temperature": "Air temperature (kelvin)",
};

const OPENING = /^skirt\.openings\.(\d+)\.area$/;

/** @returns what a path is called in a sentence or beside a bar */
export function inputName(path: string): string {
  const opening = OPENING.exec(path);
  return opening ? `Opening ${Number(opening[1]) + 1}, area` : (NAMES[path] ?? path);
}

/** @returns a text with every path in it called by its name */
export function withNames(text: string): string {
  return text.replace(/\b(?:skirt|rotor|motor|pack|supply|vehicle|air)(?:\.\w+)+/g, (path) => {
    const name = inputName(path);
    return name.charAt(0).toLowerCase() + name.slice(1);
  });
}
