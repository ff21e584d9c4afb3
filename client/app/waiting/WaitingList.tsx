import { useState } from "preact/hooks";
import { opensAlone } from "../../offline/register.ts";
import { forgetDraft } from "../../state/drafts.ts";
import { notice } from "../../state/notice.ts";
import { draftOfWaiting, dropWaiting, type Waiting, waiting } from "../../state/waiting/list.ts";
import { sendingProblem, sendWaiting } from "../../state/waiting/send.ts";
import { moment } from "../../ui/moment.ts";
import { addressOfWaiting, isOfDeleted, nameOfWaiting, whatWaits } from "./words.ts";

const PERHAPS_STORED =
  "It went to the server once without an answer: what you discarded may be in the book all the same. Look for it in the list once the server is back.";

const STAY =
  "This browser doesn't keep the pages themselves: leave this one open until the server is back. What waits is kept even if you close it.";

/** What was saved on this device and is not in the book yet: looked at, corrected or discarded while it waits. */
export function WaitingList() {
  const items = waiting.value;
  if (items.length === 0) return null;
  const isUnderWay = items.some(({ refusal }) => refusal === null);
  return (
    <section class="waiting" aria-label="Waiting for the server">
      <h2>Waiting for the server</h2>
      <p class="quiet">
        Saved on this device alone, and not in the book yet.{" "}
        {isUnderWay && (
          <button type="button" class="plain" onClick={() => void sendWaiting()}>
            Try now
          </button>
        )}
      </p>
      {!opensAlone.value && <p class="quiet">{STAY}</p>}
      {sendingProblem.value && (
        <p class="field-error" role="alert">
          {sendingProblem.value}
        </p>
      )}
      <ul class="bench-tests">
        {items.map((item) => (
          <WaitingRow key={item.key} item={item} />
        ))}
      </ul>
    </section>
  );
}

function WaitingRow({ item }: { readonly item: Waiting }) {
  const [asked, setAsked] = useState(false);
  const name = nameOfWaiting(item);
  const discard = () => {
    dropWaiting(item.key);
    forgetDraft(draftOfWaiting(item));
    if (item.sent) notice.value = PERHAPS_STORED;
  };
  return (
    <li class="bench-test">
      <time dateTime={new Date(item.savedAt).toISOString()}>
        {moment(new Date(item.savedAt).toISOString())}
      </time>
      <div class="bench-test-words">
        <p class="bench-test-title">
          <a href={addressOfWaiting(item)}>{whatWaits(item)}</a>{" "}
          <span class={item.refusal ? "waiting-word bad" : "waiting-word"}>
            {item.refusal ? "refused" : "waiting"}
          </span>
        </p>
        {item.refusal && <p class="field-error">{item.refusal.message}</p>}
        {isOfDeleted(item) && !item.deletes && (
          <p class="quiet small">Opened and saved, it becomes a new one.</p>
        )}
      </div>
      {asked ? (
        <div class="bench-confirm" role="alertdialog" aria-label={`Discard the ${name}?`}>
          <p>
            {item.deletes
              ? "Discard the deletion? The record stays."
              : "Discard it? It is kept nowhere else."}
          </p>
          <p class="bench-buttons">
            <button type="button" onClick={discard}>
              Discard it
            </button>
            <button type="button" data-next onClick={() => setAsked(false)}>
              Keep it
            </button>
          </p>
        </div>
      ) : (
        <div class="bench-test-actions">
          <button
            type="button"
            class="plain"
            data-next
            onClick={() => setAsked(true)}
            aria-label={`Discard the ${name}`}
          >
            discard
          </button>
        </div>
      )}
    </li>
  );
}
