import type { Book } from "../../../shared/book/resolve.ts";
import { formatQuantity } from "../../../shared/units/format.ts";
import { cavityPoint, type Outcome } from "../../state/outcome.ts";
import { gapText } from "../../ui/gapWords.ts";

/** @returns the fan curve's direct label: "Rotor B8, 42 mm — full, 60 % and end of charge" */
export function fanLabel(book: Book, { build, resolved }: Outcome): string {
  const rotor = book.rotors.find((each) => each.id === build.rotor)?.data.name ?? "rotor";
  const scaled =
    resolved?.rotor?.basis === "estimated" ? ", estimated" : resolved?.scaledFrom ? ", scaled" : "";
  const charge = formatQuantity(build.charge, "fraction", { digits: 2 });
  return `${rotor}, ${formatQuantity(build.diameter, "length")}${scaled} — full, ${charge} and end of charge`;
}

/** @returns the leak curve's direct label: "leak at 0.60 ± 0.10 mm" */
export function leakLabel({ resolved }: Outcome): string {
  if (!resolved) return "leak";
  const { value, uncertainty } = resolved.gap;
  return resolved.leak ? `leak as measured at ${gapText(value)}` : `leak at ${gapText(value, uncertainty)}`;
}

/** @returns what the picture shows, for those who don't see it */
export function pictureSentence({ prediction, build }: Outcome): string {
  const start = `Rotor curve and leak curve of ${build.name}, pressure against flow.`;
  const point = cavityPoint({ prediction });
  if (!prediction || !point) return `${start} They meet nowhere.`;
  const { flow, pressure } = point;
  const pull = formatQuantity(prediction.suction, "load", { decimals: 0 });
  return `${start} They meet at ${formatQuantity(flow, "flow")} and ${formatQuantity(pressure, "pressure")}, which pulls ${pull}.`;
}
