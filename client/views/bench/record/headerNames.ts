/** What headers of files call a reading that several kinds of test have: lower case, no spaces. Common practice, no source. */
export const NAMES = {
  speed: ["n", "rpm", "rps", "omega", "ω", "rev", "drehzahl"],
  pressure: ["p", "dp", "δp", "pressure", "deltap", "druck", "suction", "depression"],
  flow: ["q", "volumeflow", "vdot", "airflow"],
  voltage: ["u", "v", "volt", "volts", "spannung"],
  current: ["i", "amp", "amps", "strom"],
  torque: ["moment", "drehmoment"],
  throttle: ["gas", "duty"],
} as const;
