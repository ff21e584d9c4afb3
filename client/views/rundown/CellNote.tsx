import type { PackBasis } from "../../../shared/book/packBasis.ts";
import { href } from "../../app/router.ts";
import { Mark } from "../../ui/Mark.tsx";

interface CellNoteProps {
  readonly pack: PackBasis;
  readonly name: string;
  readonly id: string;
}

/** On what the cell's voltage by charge rests. */
export function CellNote({ pack, name, id }: CellNoteProps) {
  const log = <a href={href("bench", "new/discharge", { pack: id })}>a discharge test</a>;
  if (pack.chemistry)
    return (
      <p>
        <Mark word="estimated" /> Voltage by charge: {name} has no curve of its own; a published one of{" "}
        {pack.chemistry.name} stands in. {pack.chemistry.caveat} Source: {pack.chemistry.source} (
        {pack.chemistry.licence}). To replace it, log {log}.
      </p>
    );
  if (pack.basis === "measured")
    return (
      <p>
        Voltage by charge, resistance and capacity of {name} are from{" "}
        <a href={href("curves", `packs/${id}`)}>its discharge tests</a>.
      </p>
    );
  return (
    <p class="quiet">
      Voltage by charge is as {name} states it; {log} would measure it.
    </p>
  );
}
