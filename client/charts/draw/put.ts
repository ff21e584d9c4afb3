import { type BaseType, type Selection, selection, type ValueFn } from "d3";

type Value = string | number | boolean | null;

declare module "d3-selection" {
  interface Selection<GElement extends BaseType, Datum, PElement extends BaseType, PDatum> {
    /**
     * Sets an attribute as `attr` does, and leaves one alone that stands so already: to a browser even the same place
     * set anew is a reason to lay text out and to paint once more.
     */
    put(name: string, value: Value | ValueFn<GElement, Datum, Value>): this;
    /** Sets the text as `text` does, likewise. */
    say(value: string | ValueFn<GElement, Datum, string>): this;
  }
}

function put<E extends Element>(
  this: Selection<E, unknown, BaseType, unknown>,
  name: string,
  value: Value | ValueFn<E, unknown, Value>,
) {
  return this.each(function (datum, i, all) {
    const next = typeof value === "function" ? value.call(this, datum, i, all) : value;
    if (next === null) this.removeAttribute(name);
    else if (this.getAttribute(name) !== `${next}`) this.setAttribute(name, `${next}`);
  });
}

function say<E extends Element>(
  this: Selection<E, unknown, BaseType, unknown>,
  value: string | ValueFn<E, unknown, string>,
) {
  return this.each(function (datum, i, all) {
    const next = typeof value === "function" ? value.call(this, datum, i, all) : value;
    if (this.textContent !== next) this.textContent = next;
  });
}

Object.assign(selection.prototype, { put, say });
