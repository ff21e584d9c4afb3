const SHOWN_CHARACTERS = 60;

/** Writes a value as JSON up to a number of characters: a huge or deep one costs no more than what is shown of it. */
class Beginning {
  text = "";

  get isFull(): boolean {
    return this.text.length > SHOWN_CHARACTERS;
  }

  add(value: unknown): void {
    if (this.isFull) return;
    if (typeof value === "string") this.text += JSON.stringify(value.slice(0, SHOWN_CHARACTERS + 1));
    else if (Array.isArray(value)) this.#list("[", "]", value.keys(), (place) => this.add(value[place]));
    else if (typeof value === "object" && value !== null)
      this.#list("{", "}", Object.keys(value), (key) => this.#entry(value, key));
    else this.text += String(value);
  }

  #entry(of: object, key: string): void {
    this.add(key);
    this.text += ":";
    this.add(Reflect.get(of, key));
  }

  #list<T>(open: string, close: string, items: Iterable<T>, add: (item: T) => void): void {
    this.text += open;
    let comma = "";
    for (const item of items) {
      if (this.isFull) return;
      this.text += comma;
      comma = ",";
      add(item);
    }
    this.text += close;
  }
}

/** @returns what was read, as JSON; the beginning of it where it is long */
export function shown(value: unknown): string {
  const beginning = new Beginning();
  beginning.add(value);
  const { text } = beginning;
  return text.length > SHOWN_CHARACTERS ? `${text.slice(0, SHOWN_CHARACTERS)}…` : text;
}
