import { part } from "../fields.ts";
import { NAMES } from "../headerNames.ts";
import type { KindSpec } from "../spec.ts";

/** Voltage and current of a pack while it is drawn. */
export const discharge: KindSpec = {
  kind: "discharge",
  name: "Discharge test",
  row: "reading",
  plate: false,
  fields: [
    part("pack", "Pack", "packs"),
    {
      type: "choice",
      key: "across",
      label: "Voltage of",
      options: [
        ["pack", "the whole pack"],
        ["plug", "one cell of it, at the balance plug"],
        ["cell", "a single cell by itself"],
      ],
    },
    {
      type: "choice",
      key: "end",
      label: "Drawn from full",
      options: [
        ["empty", "down to the cell's minimum"],
        ["stopped", "and stopped before"],
      ],
    },
  ],
  columns: [
    {
      key: "charge",
      label: "Drawn so far",
      dimension: "charge",
      need: "optional",
      offered: true,
      names: ["drawn", "capacity", "mah", "ah", "ladung"],
      hint: "or the time, in every row",
    },
    {
      key: "time",
      label: "Time",
      dimension: "time",
      need: "optional",
      hint: "where no charge is counted",
      names: ["t", "elapsed", "zeit"],
    },
    {
      key: "voltage",
      label: "Voltage",
      dimension: "voltage",
      need: "required",
      names: NAMES.voltage,
    },
    {
      key: "current",
      label: "Current",
      dimension: "current",
      need: "required",
      hint: "0 at rest",
      names: NAMES.current,
    },
  ],
  instruments: [
    { key: "voltage", label: "Voltage", dimension: "voltage" },
    { key: "current", label: "Current", dimension: "current" },
  ],
};
