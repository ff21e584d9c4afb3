import { sayings } from "../state/sayings.ts";

/** The page's one voice. It is there before it has something to say: a region that comes with its words is passed over. */
export function Sayings() {
  return (
    <div class="visually-hidden" aria-live="polite">
      {sayings.value.map(({ key, text }) => (
        <p key={key}>{text}</p>
      ))}
    </div>
  );
}
