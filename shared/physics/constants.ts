/** Constants of nature and of the standards. Each is marked exact (by definition of the unit), defined (by a standard or an equation) or measured. */

/** 0 °C [K]. Exact. Source: definition of the degree Celsius, SI Brochure, 9th edition. */
export const CELSIUS_ZERO = 273.15;

/** Standard acceleration of free fall g_n [m/s²]. Defined. Source: 3rd CGPM (1901); ISO 2533. */
export const STANDARD_GRAVITY = 9.80665;

/** Standard atmosphere [Pa]. Defined. Source: 10th CGPM (1954); ISO 2533. */
export const STANDARD_PRESSURE = 101_325;

/** Specific gas constant of dry air [J/(kg·K)]. Defined. Source: ISO 2533, ICAO Doc 7488 (value from memory). */
export const DRY_AIR_GAS_CONSTANT = 287.05287;

/** Isentropic exponent of air κ [-]. Defined. Source: ISO 2533. */
export const HEAT_CAPACITY_RATIO = 1.4;

/** Density of standard air for rating fans [kg/m³]: a number, not a state. Defined. Source: ISO 5801 (clause from memory). */
export const STANDARD_AIR_DENSITY = 1.2;

/** Sutherland's law of the viscosity of air: μ₀ [Pa·s] at T₀ [K], S [K]. Measured. Source: White, Viscous Fluid Flow (μ₀, T₀); U.S. Standard Atmosphere 1976 (S). */
export const SUTHERLAND = { viscosity: 1.716e-5, temperature: CELSIUS_ZERO, constant: 110.4 } as const;

/** Temperature coefficient of the resistance of annealed copper at 20 °C [1/K]. Measured. Source: IEC 60028. */
export const COPPER_TEMPERATURE_COEFFICIENT = 0.00393;

/** Temperature at which a winding's resistance is stated, 20 °C [K]. Defined. Source: IEC 60028. */
export const WINDING_REFERENCE_TEMPERATURE = CELSIUS_ZERO + 20;

/**
 * The constants of the CIPM-2007 equation for the density of moist air; they belong together, its 2008 gas constant included. Measured.
 * Source: Picard, Davis, Gläser, Fujii, Metrologia 45 (2008) 149–155.
 */
export const CIPM_2007 = {
  /** gas constant R [J/(mol·K)] */
  gasConstant: 8.314472,
  /** molar mass of water [kg/mol] */
  waterMolarMass: 18.015_28e-3,
  /** molar mass of dry air at 400 ppm carbon dioxide [kg/mol] */
  dryAirMolarMass: 28.965_46e-3,
  /** saturation vapour pressure: A [1/K²], B [1/K], C [-], D [K] */
  saturation: { a: 1.237_884_7e-5, b: -1.912_131_6e-2, c: 33.937_110_47, d: -6.343_164_5e3 },
  /** enhancement factor: α [-], β [1/Pa], γ [1/K²] */
  enhancement: { alpha: 1.000_62, beta: 3.14e-8, gamma: 5.6e-7 },
  /** compressibility: a₀ [K/Pa], a₁ [1/Pa], a₂ [1/(K·Pa)], b₀ [K/Pa], b₁ [1/Pa], c₀ [K/Pa], c₁ [1/Pa], d, e [K²/Pa²] */
  compressibility: {
    a0: 1.581_23e-6,
    a1: -2.9331e-8,
    a2: 1.1043e-10,
    b0: 5.707e-6,
    b1: -2.051e-8,
    c0: 1.9898e-4,
    c1: -2.376e-6,
    d: 1.83e-11,
    e: -0.765e-8,
  },
} as const;
