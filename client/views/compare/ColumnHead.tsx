import { href } from "../../app/router.ts";
import type { Column } from "./useColumn.ts";

export interface ColumnHeadProps {
  readonly column: Column;
  readonly onRemove: (key: string) => void;
}

/** Whose column it is, and the way to its own view and out of the table. */
export function ColumnHead({ column: { key, letter, name, stored }, onRemove }: ColumnHeadProps) {
  return (
    <th scope="col">
      <b class="compare-letter">{letter}</b>{" "}
      {stored ? <a href={href("match", stored)}>{name}</a> : <span>{name}</span>}{" "}
      <button type="button" class="plain small quiet" onClick={() => onRemove(key)}>
        remove<span class="visually-hidden"> {letter}</span>
      </button>
    </th>
  );
}
