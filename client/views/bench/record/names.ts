import type { Book } from "../../../../shared/book/book.ts";
import { fieldsOf } from "./kinds.ts";
import type { KindSpec } from "./spec.ts";

/** @returns how a field's text is shown: a part by its name, a choice by its label, anything else as typed */
export function shownText(spec: KindSpec, book: Book | null): (path: string, text: string) => string {
  const fields = new Map(fieldsOf(spec).map((field) => [field.key, field]));
  return (path, text) => {
    const field = fields.get(path);
    if (field?.type === "part")
      return book?.[field.collection].find(({ id }) => id === text)?.data.name ?? text;
    if (field?.type === "choice") return field.options.find(([value]) => value === text)?.[1] ?? text;
    return text;
  };
}
