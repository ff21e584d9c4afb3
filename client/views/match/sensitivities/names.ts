/** What a number of a build is called. */
const NAMES: Readonly<Record<string, string>> = {
  "skirt.gap": "Gap",
  "skirt.roughness": "Surface roughness",
  "skirt.perimeter": "Skirt perimeter",
  "skirt.area": "Skirt area",
  "skirt.land": "Lip width",
  "skirt.lossSum": "Lip loss sum",
  "skirt.landFriction": "Friction along the lip",
  "skirt.measuredLeak.coefficient": "Measured leak",
  "skirt.joint.span": "Lip over the joint",
  "skirt.joint.depth": "Joint's depth",
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
  "supply.duty": "Throttle",
  "supply.driverResistance": "Speed controller resistance",
  "supply.auxCurrent": "Other current",
  "vehicle.mass": "Mass",
  "vehicle.pullFactor": "Pull factor κ",
  "vehicle.verticalStiffness": "Vertical stiffness",
  "vehicle.gapLoad": "Load when the gap was set",
  "vehicle.wheelFriction": "Wheel friction μ",
  "vehicle.skirtFriction": "Skirt friction",
  "vehicle.skirtShare": "Skirt's share of the load",
  "vehicle.rollingResistance": "Rolling resistance",
  "vehicle.cgHeight": "Height of the centre of gravity",
  "vehicle.track": "Track width",
  "air.pressure": "Air pressure",
  "air.temperature": "Air temperature (kelvin)",
};

/** Lists of a skirt: what one of each is called. */
const LISTED: Readonly<Record<string, string>> = {
  openings: "Opening",
  holes: "Drilled holes",
  honeycombs: "Honeycomb",
};
const OF_LIST = /^skirt\.(\w+)\.(\d+)\.(\w+)$/;
/** Numbers of a list's row: what they are called. */
const OF_ROW: Readonly<Record<string, string>> = {
  area: "area",
  diameter: "bore",
  thickness: "wall",
  length: "length of the tubes",
};

/** @returns what a path is called in a sentence or beside a bar */
export function inputName(path: string): string {
  const [, list = "", place, number = ""] = OF_LIST.exec(path) ?? [];
  const [one, what] = [LISTED[list], OF_ROW[number]];
  return one && what ? `${one} ${Number(place) + 1}, ${what}` : (NAMES[path] ?? path);
}

/** @returns a text with every path in it called by its name */
export function withNames(text: string): string {
  return text.replace(/\b(?:skirt|rotor|motor|pack|supply|vehicle|air)(?:\.\w+)+/g, (path) => {
    const name = inputName(path);
    return name.charAt(0).toLowerCase() + name.slice(1);
  });
}
