import { type Waiting, waiting } from "../../state/waiting/list.ts";
import { arrived } from "../../state/waiting/send.ts";
import { Status } from "../../ui/Status.tsx";
import { href, route } from "../router.ts";
import { nameOfWaiting } from "./words.ts";

/** Lists of what waits stand there. */
const isOnList = (): boolean =>
  route.value.id === null && (route.value.view === "bench" || route.value.view === "parts");

/** Says on every screen what waits for the server, what of it arrived, and what was not taken. */
export function WaitingNotes() {
  const items = waiting.value;
  const refused = items.filter(({ refusal }) => refusal !== null);
  const count = items.length - refused.length;
  const namesOf = (items: readonly Waiting[]) => items.map(nameOfWaiting);
  const saved = namesOf(arrived.value.filter(({ deletes }) => !deletes));
  const deleted = namesOf(arrived.value.filter(({ deletes }) => deletes));
  const dismiss = () => {
    arrived.value = [];
  };
  return (
    <div class="waiting-notes">
      {arrived.value.length > 0 && (
        <Status class="waiting-sent">
          {saved.length > 0 && `Sent, and in the book now: the ${saved.join(", the ")}. `}
          {deleted.length > 0 && `Sent, and deleted now: the ${deleted.join(", the ")}. `}
          <button type="button" class="plain" onClick={dismiss}>
            Dismiss
          </button>
        </Status>
      )}
      {!isOnList() && items.length > 0 && (
        <Status>
          {count > 0 &&
            (count === 1
              ? "One record waits on this device for the server. "
              : `${count} records wait on this device for the server. `)}
          {refused.length > 0 && `The server refused the ${refused.map(nameOfWaiting).join(", the ")}. `}
          <a href={href("bench")}>Show {items.length === 1 ? "it" : "them"}</a>
        </Status>
      )}
    </div>
  );
}
