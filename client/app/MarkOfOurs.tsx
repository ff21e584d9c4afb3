/** The half-rose of attitudes: floor below, ceiling above, a spoke at the overhang. As client/styles/mark.svg. */
export function MarkOfOurs() {
  return (
    <svg class="shell-mark" width="24" height="24" viewBox="0 0 24 24" aria-hidden="true">
      <path d="M4 2v20M4 3a9.5 9.5 0 0 1 0 18M4 12 11.5 6" />
      <circle cx="11.5" cy="6" r="2" />
    </svg>
  );
}
