import type { ChooseRequest } from "../../../../shared/model/api/choose.ts";
import type { ErrorResponse } from "../../../../shared/model/api/errors.ts";

type Fields = readonly ErrorResponse["error"]["fields"][number][];

const RANGE_WORDS: Readonly<Record<string, true>> = { from: true, to: true, step: true };

/** @returns key of the form's field that a path of the request stands for */
export function fieldKey(path: string, request: ChooseRequest): string {
  const [list, place, _range, end] = path.split(".");
  const at = Number(place);
  const id = {
    motors: request.motors[at],
    rotors: request.rotors[at]?.rotor,
    packs: request.packs[at],
    skirts: request.skirts[at]?.skirt ?? undefined,
  }[list];
  if (list === "duties") return "duties";
  if (id === undefined) return path.startsWith("wants.attitudes") ? "wants.attitudes" : path;
  return RANGE_WORDS[end] ? `${list}.${id}.${end}` : `${list}.${id}`;
}

/** @returns what the server refuses, by the form's fields; what belongs to none of them is under "" */
export function refusalsByField(
  fields: Fields,
  message: string,
  request: ChooseRequest,
): ReadonlyMap<string, string> {
  const found = new Map(fields.map((field) => [fieldKey(field.path, request), field.message]));
  return found.size > 0 ? found : new Map([["", message]]);
}
