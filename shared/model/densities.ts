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

const FILAMENT =
  "TigerTag material list (open data, GitHub, id_material.json): PLA 1.24, PETG 1.27, ABS 1.04, ASA 1.05, TPU 1.21 g/cm³; spread from memory";
const POWDER =
  "HP 3D High Reusability PA 12, fact sheet: 1.01 g/cm³ of fused parts (ASTM D792); laser-sintered parts 0.88 to 0.96 g/cm³ (additive.tools, PA12)";
const MEMORY = "common practice, no source; value from memory";
const CALLISTER =
  "Callister & Rethwisch, Fundamentals of Materials Science and Engineering, 3rd ed., table B.1; spread from memory";
const CARBON =
  "rule of mixtures, 60 % fibre of 1.78 g/cm³ (Callister & Rethwisch, table B.1) in epoxy of 1.23 g/cm³ (Mechanical Engineer's Data Handbook, 6.2.1); spread from memory";
const BOARD =
  "typical properties of plastics, glass-fibre sheet 1.87 g/cm³ (Engineers Edge, no. 14630); spread from memory";
const POLYCARBONATE =
  "K-mac Plastics, polycarbonate technical data: specific gravity 1.2 (ASTM D792); spread from memory";
const BALSA =
  "Righteous Woods, Balsa: 10 lb/ft³ air-dry on average in the trade, 8 to 14; spread of an even distribution";
const BIRCH =
  "Birch plywood datasheet of 4 to 50 mm boards (vdocuments.site): 650 to 710 kg/m³ by thickness; spread of an even distribution";
const EXTRUDED =
  "extruded polystyrene, 28 to 45 kg/m³ by grade (ATDM Polymer, Polypedia); spread of an even distribution";

const stuff = (name: string, density: number, spread: number, source: string): Stuff => ({
  name,
  density,
  spread,
  isPrinted: false,
  source,
});

const printed = (...of: Parameters<typeof stuff>): Stuff => ({ ...stuff(...of), isPrinted: true });

/** Densities of solid material; what a print or a foam really weighs is told by a scale. */
export const DENSITIES = {
  pla: printed("PLA, printed", 1240, 0.02, FILAMENT),
  petg: printed("PETG, printed", 1270, 0.02, FILAMENT),
  abs: printed("ABS or ASA, printed", 1050, 0.02, FILAMENT),
  tpu: printed("TPU, printed", 1210, 0.03, FILAMENT),
  nylon: printed("Polyamide 12, fused or sintered", 970, 0.04, POWDER),
  resin: printed("Tough resin, cured", 1150, 0.03, MEMORY),
  polycarbonate: stuff("Polycarbonate, sheet", 1200, 0.01, POLYCARBONATE),
  acrylic: stuff("Acrylic, sheet", 1190, 0.01, CALLISTER),
  pet: stuff("PET, sheet or film", 1350, 0.02, CALLISTER),
  polypropylene: stuff("Polypropylene, sheet", 905, 0.01, CALLISTER),
  epoxyGlass: stuff("Epoxy with glass fibre, board", 1870, 0.05, BOARD),
  epoxyCarbon: stuff("Epoxy with carbon fibre, plate", 1560, 0.03, CARBON),
  aluminium: stuff("Aluminium alloy 6061", 2700, 0.005, CALLISTER),
  steel: stuff("Steel, plain carbon", 7850, 0.005, CALLISTER),
  brass: stuff("Brass, cartridge", 8530, 0.005, CALLISTER),
  balsa: stuff("Balsa", 160, 0.17, BALSA),
  birch: stuff("Birch, plywood", 680, 0.025, BIRCH),
  hardFoam: stuff("Polystyrene foam, extruded", 36, 0.14, EXTRUDED),
  softFoam: stuff("Foam rubber, closed cells", 120, 0.3, "common practice, no source; foams differ by grade"),
} as const satisfies Readonly<Record<string, Stuff>>;

export type StuffKey = keyof typeof DENSITIES;
export const STUFF_KEYS = Object.keys(DENSITIES) as [StuffKey, ...StuffKey[]];
