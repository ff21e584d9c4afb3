import type { Book } from "../../../shared/book/resolve.ts";
import type { TypedNeed } from "../../../shared/book/size/need/typedNeed.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import type { Asked } from "./asked.ts";
import { HoldFields, MotorField, RangeFields, VoltageField } from "./Fields.tsx";
import { usualNeed } from "./need/address.ts";
import { DrawnRotors } from "./need/DrawnRotors.tsx";
import { BalanceFields, MassField, PartFields } from "./need/NeedFields.tsx";
import type { Put } from "./question.ts";
import type { Settings } from "./settings.ts";
import { firstParts, type Subject } from "./subject.ts";

interface Props {
  readonly subject: Subject;
  /** the build on the screen; null where the book has none */
  readonly own: StoredOf<"builds"> | null;
  readonly settings: Settings;
  readonly asked: Asked;
  readonly put: Put | null;
  readonly onAsk: (part: Partial<Asked>) => void;
}

/** What is wanted: of the build on the screen, or of a need that is typed here. */
export function Wanted({ subject, own, settings, asked, put, onAsk }: Props) {
  const { book, build, need } = subject;
  const kinds = put?.sides.map(({ kind }) => kind) ?? (["ducted"] as const);
  const fields = { book, settings, onAsk };
  return (
    <section class="page-side" aria-label="What is wanted">
      <h2>What is wanted</h2>
      {own && <Source own={own} need={need} book={book} onAsk={onAsk} />}
      {need && <MassField need={need} onNeed={(typed) => onAsk({ need: typed })} />}
      <HoldFields build={build.data} settings={settings} onAsk={onAsk} />
      <VoltageField settings={settings} onAsk={onAsk} />
      {need ? <NeedParts book={book} need={need} onAsk={onAsk} /> : <MotorField {...fields} />}
      <RangeFields settings={settings} kinds={kinds} onAsk={onAsk} />
      <DrawnRotors drawn={asked.drawn} onDrawn={(drawn) => onAsk({ drawn })} />
    </section>
  );
}

interface SourceProps {
  readonly own: StoredOf<"builds">;
  readonly need: TypedNeed | null;
  readonly book: Book;
  readonly onAsk: Props["onAsk"];
}

/** Of the build, or typed. */
function Source({ own, need, book, onAsk }: SourceProps) {
  return (
    <fieldset class="size-source">
      <legend class="quiet">Of which vehicle</legend>
      <label>
        <input
          type="radio"
          name="source"
          checked={!need}
          onChange={() => onAsk({ need: null, motor: null })}
        />{" "}
        {own.data.name}, as it stands
      </label>
      <label>
        <input
          type="radio"
          name="source"
          checked={need !== null}
          onChange={() => onAsk({ need: usualNeed(firstParts(book, own)), motor: null })}
        />{" "}
        one that is typed here
      </label>
    </fieldset>
  );
}

/** What a typed need stands on: parts of the book, or numbers. */
function NeedParts({
  book,
  need,
  onAsk,
}: {
  readonly book: Book;
  readonly need: TypedNeed;
  readonly onAsk: Props["onAsk"];
}) {
  const typing = { need, onNeed: (typed: TypedNeed) => onAsk({ need: typed, motor: null }) };
  return (
    <>
      <PartFields {...typing} book={book} part="surface" />
      <PartFields {...typing} book={book} part="skirt" />
      <PartFields {...typing} book={book} part="pack" />
      <PartFields {...typing} book={book} part="motor" />
      <BalanceFields {...typing} />
    </>
  );
}
