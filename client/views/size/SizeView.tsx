import { useEffect, useMemo, useState } from "preact/hooks";
import { namedAttitudes } from "../../../shared/book/attitudes.ts";
import type { Book } from "../../../shared/book/resolve.ts";
import { BUILD, CELL_VOLTAGE } from "../../../shared/model/limits.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import type { NumberSpec } from "../../../shared/units/readNumber.ts";
import { go, href, route } from "../../app/router.ts";
import { Figure } from "../../charts/Figure.tsx";
import { stackHeight, stackPicture } from "../../charts/stack.ts";
import { solve } from "../../state/outcome.ts";
import { useWorker } from "../../state/useWorker.ts";
import { Answer } from "../../ui/Answer.tsx";
import { BuildOnScreen } from "../../ui/BuildOnScreen.tsx";
import { Caution } from "../../ui/Caution.tsx";
import { Missing } from "../../ui/Missing.tsx";
import { Problem } from "../../ui/Problem.tsx";
import { SettingField } from "../../ui/SettingField.tsx";
import { type Answered, bestOf, foremost, type Reply, type Sized } from "./answer.ts";
import { type Asked, askedFrom, askedQuery } from "./asked.ts";
import { BestTable } from "./BestTable.tsx";
import { MotorTable } from "./MotorTable.tsx";
import { type Put, type Question, questionOf, type Settings, settingsOf } from "./question.ts";
import { panelsOf, sizeTable } from "./sizePlot.ts";
import { needSentence, pictureSentence, rowWords, sizeSentence } from "./sizeWords.ts";

const FAILED: Reply = { problem: "The sizes could not be worked out in this browser; reload the page." };
const start = () => new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });

const MARGIN = {
  dimension: null,
  suffix: "×",
  limits: BUILD.targetMargin,
  example: "1.5",
} as const satisfies NumberSpec;
const VOLTAGE = {
  dimension: "voltage",
  limits: CELL_VOLTAGE,
  example: "3.5 V",
} as const satisfies NumberSpec;
const DIAMETER = {
  dimension: "length",
  limits: BUILD.diameter,
  example: "44 mm",
} as const satisfies NumberSpec;

/** Which size? From what a vehicle needs back to rotor, speed and winding. */
export default function SizeView() {
  return (
    <BuildOnScreen>{(book, build) => <SizeOf key={build.id} book={book} build={build} />}</BuildOnScreen>
  );
}

interface OfBuild {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
}

function SizeOf({ book, build }: OfBuild) {
  const [asked, setAsked] = useState<Asked>(() => askedFrom(route.peek().query));
  const ask = (part: Partial<Asked>) => setAsked({ ...asked, ...part });
  useEffect(() => go(href("size", null, askedQuery(asked)), { replace: true }), [asked]);
  const outcome = useMemo(() => solve(book, build.data), [book, build]);
  const settings = useMemo(() => settingsOf(outcome, asked), [outcome, asked]);
  const put = useMemo(() => questionOf(book, outcome, settings), [book, outcome, settings]);
  const reversed = put !== null && put.question.diameters.length === 0;
  const { reply, busy } = useWorker<Question, Reply>(
    start,
    reversed ? null : (put?.question ?? null),
    FAILED,
  );
  const answered = put && reply && "answered" in reply ? reply.answered : null;
  const problem = put && reply && "problem" in reply ? reply.problem : null;
  if (!put)
    return (
      <div class="page page-halves">
        <div class="page-head">
          <Answer sentence={`${build.data.name} can't be sized yet.`}>This is missing:</Answer>
        </div>
        <section class="page-below" aria-label="What is missing">
          <Missing outcome={outcome} build={build.id} />
        </section>
      </div>
    );
  return (
    <div class="page size" aria-busy={busy && !reversed}>
      <div class="page-head" aria-live="polite">
        {answered ? (
          <Answer sentence={sizeSentence(answered)}>{needSentence(answered, settings)}</Answer>
        ) : (
          <Answer sentence={problem ? "There is no size to look for." : "Looking through the sizes…"} />
        )}
        {problem && <Problem message={problem} />}
        {reversed && (
          <Problem message="The largest size must lie above the smallest, for example 30 mm and 70 mm." />
        )}
      </div>
      <section class="page-side" aria-label="What is wanted">
        <h2>What is wanted</h2>
        <p class="quiet small">
          For {build.data.name}: its mass as it stands, skirt, surface, pack and air. Another build is chosen
          above.
        </p>
        <Fields book={book} build={build} settings={settings} onAsk={ask} />
      </section>
      {answered ? (
        <Meaning
          book={book}
          build={build}
          put={put}
          settings={settings}
          answered={answered}
          asked={asked}
          onAsk={ask}
        />
      ) : (
        <div class="page-main size-place" />
      )}
    </div>
  );
}

interface FieldsProps extends OfBuild {
  readonly settings: Settings;
  readonly onAsk: (part: Partial<Asked>) => void;
}

function Fields({ book, build, settings, onAsk }: FieldsProps) {
  const { hold, cellVoltage, motor, from, to } = settings;
  const motors = book.motors.filter(({ id, data }) => !data.retired || id === motor);
  return (
    <>
      <label class="field-label">
        On
        <select
          value={String(hold.angle)}
          onChange={({ currentTarget: { value } }) =>
            onAsk({ angle: value === "worst" ? value : Number(value) })
          }
        >
          <option value="worst">the worst attitude</option>
          {namedAttitudes(build.data).map(({ title, angle }) => (
            <option key={angle} value={String(angle)}>
              {title} {angle}°
            </option>
          ))}
        </select>
      </label>
      <SettingField
        label="Margin wanted"
        spec={MARGIN}
        value={hold.margin}
        onValue={(margin) => onAsk({ margin })}
      />
      <SettingField
        label="Cell at rest"
        spec={VOLTAGE}
        value={cellVoltage}
        shown={cellVoltage.toFixed(2)}
        hint="it does so at every fuller charge; a fifth of the charge is left unless you say otherwise"
        onValue={(voltage) => onAsk({ cellVoltage: voltage })}
      />
      <label class="field-label">
        Motor as strong as
        <select value={motor} onChange={({ currentTarget: { value } }) => onAsk({ motor: value })}>
          {motors.map(({ id, data }) => (
            <option key={id} value={id}>
              {data.name}
            </option>
          ))}
        </select>
      </label>
      <SettingField
        label="Smallest size"
        spec={DIAMETER}
        value={from}
        onValue={(least) => onAsk({ from: least })}
      />
      <SettingField label="Largest size" spec={DIAMETER} value={to} onValue={(most) => onAsk({ to: most })} />
    </>
  );
}

interface MeaningProps extends OfBuild {
  readonly put: Put;
  readonly settings: Settings;
  readonly answered: Answered;
  readonly asked: Asked;
  readonly onAsk: (part: Partial<Asked>) => void;
}

function shownOf(answered: Answered, family: string | null): Sized | null {
  const drawn = answered.families.filter(({ rows }) => rows.length > 0);
  return drawn.find(({ id }) => id === family) ?? foremost(answered) ?? drawn[0] ?? null;
}

function Meaning({ book, build, put, settings, answered, asked, onAsk }: MeaningProps) {
  const shown = shownOf(answered, asked.family);
  const best = shown && bestOf(shown);
  return (
    <>
      <section class="page-main" aria-label="The picture">
        {shown && <SizeFigure answered={answered} shown={shown} build={build.data.name} />}
      </section>
      <section class="page-below" aria-label="What it means">
        {shown && (
          <>
            <h2>The best size of each family</h2>
            <BestTable answered={answered} shown={shown} onShow={(family) => onAsk({ family })} />
          </>
        )}
        {put.leftOut.map(({ name, why }) => (
          <p key={name} class="small">
            {name} is left out: {why}
          </p>
        ))}
        {shown && best && best.kv !== null && (
          <MotorTable
            book={book}
            build={build}
            settings={settings}
            motorConstant={put.question.build.motor.motorConstant}
            family={shown.id}
            best={{ ...best, kv: best.kv }}
          />
        )}
        <Caution>
          A spinning rotor throws fragments when it bursts: run a new one up behind a screen first, and stay
          out of its plane.
        </Caution>
      </section>
    </>
  );
}

function SizeFigure({ answered, shown, build }: { answered: Answered; shown: Sized; build: string }) {
  const panels = panelsOf(answered, shown);
  const words = (key: string) => {
    const row = shown.rows.find(({ diameter }) => key === `${shown.id} ${diameter}`);
    if (row) return rowWords(shown.name, row);
    const family = answered.families.find(({ id }) => key === `best ${id}`);
    const best = family && bestOf(family);
    return family && best ? rowWords(family.name, best) : [];
  };
  return (
    <Figure
      sentence={pictureSentence(answered, shown)}
      picture={stackPicture(panels)}
      height={stackHeight(panels)}
      name={`size ${build}`}
      table={() => sizeTable(answered)}
      reading={{ label: "Sizes", describe: words }}
    >
      <p class="quiet small">
        A ring marks the size that takes least of each family and keeps every limit; hatched is what stops{" "}
        {shown.name}.
      </p>
    </Figure>
  );
}
