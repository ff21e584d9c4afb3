/** @returns day and time as the maker's own clock says it */
export function moment(iso: string): string {
  return new Date(iso).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });
}

/** @returns a day of the book, "2026-05-21", as the browser's language writes it */
export function dayText(day: string): string {
  const date = new Date(`${day}T00:00`);
  return Number.isNaN(date.getTime()) ? day : date.toLocaleDateString(undefined, { dateStyle: "medium" });
}
