/** Hands a file to the browser, which saves it under that name. */
export function download(blob: Blob, name: string): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address));
}

/** @returns a file's name of plain letters: "match pane crawler" → "match-pane-crawler" */
export const plainName = (name: string): string => name.toLowerCase().replace(/[^a-z0-9]+/g, "-");

/** Hands a CSV text to the browser as a file to keep. */
export const downloadText = (text: string, name: string): void =>
  download(new Blob([text], { type: "text/csv" }), name);
