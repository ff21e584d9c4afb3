/**
 * Keeps a pressed button from taking the focus: leaving a field may put a message under it, and a button that moves
 * away between press and release is never clicked.
 */
export function keepFocus(event: MouseEvent): void {
  event.preventDefault();
}
