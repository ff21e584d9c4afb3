import type { Motor } from "../../../shared/model/parts/motor.ts";
import { href } from "../../app/router.ts";
import { Mark } from "../../ui/Mark.tsx";
import type { Answered } from "./answer.ts";

interface WindingNoteProps {
  readonly answered: Answered;
  readonly motor: { readonly id: string; readonly data: Motor };
}

/** On what the winding's temperature rests, or how to come by what it lacks. */
export function WindingNote({ answered, motor }: WindingNoteProps) {
  const { winding, windingEstimated: guessed } = answered;
  const { name } = motor.data;
  const edit = <a href={href("parts", `motors/${motor.id}`)}>the motor's page</a>;
  if (winding === null)
    return (
      <p>
        The winding of {name} is taken cold, its temperature isn't drawn: its thermal resistance is not known,
        nor the motor's diameter and length, from which it would be estimated. To measure it, let it run at a
        steady load until it warms no more, stop it, read the winding's resistance at once: each 0.39 % more
        than at 20 °C is a kelvin of rise; divide by the heat I²R and write it on {edit}.
      </p>
    );
  if (winding === "settled")
    return (
      <p>
        The winding is taken as settled at every moment: {name} has no thermal time constant. To measure it,
        time how long the winding takes to 63 % of its rise at a steady load, and write it on {edit}.{" "}
        {guessed && <Mark word="estimated" title="thermal resistance" />}
      </p>
    );
  if (!guessed) return null;
  return (
    <p>
      <Mark word="estimated" /> Winding temperature: the thermal figures of {name} are not measured. Its
      resistance read warm, after a run at a steady load, gives them; they stand on {edit}.
    </p>
  );
}
