/** A material that things on board are printed, cut or cast of. */
export interface Stuff {
  /** as shown */
  readonly name: string;
  /** [kg/m³] */
  readonly density: number;
  /** standard uncertainty of that, from grade to grade [-] */
  readonly spread: number;
  readonly isPrinted: boolean;
  readonly source: string;
}

const PRINTED = "common practice, no source; value from memory";
const CALLISTER =
  "Callister & Rethwisch, Materials Science and Engineering, 9th ed., table B.1; value from memory";
const WOOD = "Wood Handbook, FPL-GTR-282 (2021), ch. 5, at 12 % moisture; value from memory";
const FOAM = "common practice, no source; foams differ by grade";

const stuff = (name: string, density: number, spread: number, source: string): Stuff => ({
  name,
  density,
  spread,
  isPrinted: source === PRINTED,
  source,
});

/** Densities of solid material; what a print or a foam really weighs is told by a scale. */
export const DENSITIES = {
  pla: stuff("PLA, printed", 1240, 0.02, PRINTED),
  petg: stuff("PETG, printed", 1270, 0.02, PRINTED),
  abs: stuff("ABS or ASA, printed", 1050, 0.02, PRINTED),
  tpu: stuff("TPU, printed", 1210, 0.03, PRINTED),
  nylon: stuff("Polyamide 12, sintered", 1000, 0.03, PRINTED),
  resin: stuff("Tough resin, cured", 1150, 0.03, PRINTED),
  polycarbonate: stuff("Polycarbonate, sheet", 1200, 0.01, CALLISTER),
  acrylic: stuff("Acrylic, sheet", 1190, 0.01, CALLISTER),
  pet: stuff("PET, sheet or film", 1350, 0.02, CALLISTER),
  polypropylene: stuff("Polypropylene, sheet", 905, 0.01, CALLISTER),
  epoxyGlass: stuff(
    "Epoxy with glass fibre, board",
    1850,
    0.05,
    "common practice, no source; value from memory, differs with the glass",
  ),
  epoxyCarbon: stuff("Epoxy with carbon fibre, plate", 1600, 0.03, CALLISTER),
  aluminium: stuff("Aluminium alloy 6061", 2700, 0.005, CALLISTER),
  steel: stuff("Steel, plain carbon", 7850, 0.005, CALLISTER),
  brass: stuff("Brass, cartridge", 8530, 0.005, CALLISTER),
  balsa: stuff("Balsa", 160, 0.25, WOOD),
  birch: stuff("Birch, plywood", 680, 0.05, "common practice, no source; value from memory"),
  hardFoam: stuff("Polystyrene foam, extruded", 33, 0.15, FOAM),
  softFoam: stuff("Foam rubber, closed cells", 120, 0.3, FOAM),
} as const satisfies Readonly<Record<string, Stuff>>;

export type StuffKey = keyof typeof DENSITIES;
export const STUFF_KEYS = Object.keys(DENSITIES) as [StuffKey, ...StuffKey[]];
