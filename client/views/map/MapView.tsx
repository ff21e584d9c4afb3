import { useEffect, useMemo, useState } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import type { StoredOf } from "../../../shared/model/record.ts";
import { asProblem } from "../../../shared/numeric/errors.ts";
import { go, href, route } from "../../app/router.ts";
import { PlotChart } from "../../charts/PlotChart.tsx";
import { currentBook } from "../../state/book.ts";
import { current } from "../../state/build.ts";
import { solve } from "../../state/outcome.ts";
import { Answer } from "../../ui/Answer.tsx";
import { Caution } from "../../ui/Caution.tsx";
import { Problem } from "../../ui/Problem.tsx";
import { useSaid } from "../../ui/useSaid.ts";
import { type Asked, askedFrom, askedQuery, type Shown } from "./asked.ts";
import { useChance } from "./chance/useChance.ts";
import { closenessText } from "./chance/words.ts";
import { MapSettings } from "./MapSettings.tsx";
import { MovedLine } from "./MovedLine.tsx";
import { type Drawing, mapPlot, mapTable, placeOf } from "./mapPlot.ts";
import { mapSentence, pictureSentence, placeLines } from "./mapWords.ts";
import { othersOn } from "./others.ts";
import { askedOf, questionOf, type Stands, standsAt, standsOf } from "./question.ts";
import { useMap } from "./useMap.ts";

/** Points along each axis: first, and once nothing moves. */
const [COARSE, FINE] = [50, 200];
/** Where the gap gives every point is many: fewer of them. */
const [COARSE_GIVING, FINE_GIVING] = [12, 36];
const [SHAPE, LEAST_HEIGHT, MOST_HEIGHT] = [0.68, 320, 640];

const heightFor = (width: number) => Math.round(Math.min(MOST_HEIGHT, Math.max(LEAST_HEIGHT, width * SHAPE)));

/** What holds where, over any two settings. */
export default function MapView() {
  const [book, build] = [currentBook.value, current.value];
  if (!book) return null;
  if (!build)
    return (
      <div class="page">
        <Answer sentence="There is no build to map.">Add one on the page of its parts.</Answer>
      </div>
    );
  return <MapOf key={build.id} book={book} build={build} />;
}

interface OfBuild {
  readonly book: Book;
  readonly build: StoredOf<"builds">;
}

function MapOf({ book, build }: OfBuild) {
  const outcome = useMemo(() => solve(book, build.data), [book, build]);
  const stands = useMemo(() => standsOf(outcome), [outcome]);
  if (!stands)
    return (
      <div class="page">
        <Answer sentence={`There is no map of ${build.data.name} yet.`}>
          What it lacks stands in Match.
        </Answer>
        <p>
          <a href={href("match", build.id)}>{build.data.name} in Match</a>
        </p>
      </div>
    );
  return <Mapping book={book} build={build} outcome={outcome} stands={stands} />;
}

interface MappingProps extends OfBuild {
  readonly outcome: ReturnType<typeof solve>;
  readonly stands: Stands;
}

const NONE: readonly never[] = [];

/** Whether what is asked for has been worked out already; until then the margin is shown. */
const isThere = (shown: Shown, timed: boolean, chance: unknown): boolean =>
  shown === "minutes" ? timed : shown !== "chance" || chance !== null;

/** Settings that are moved and not mapped, as a key. */
const othersIn = ({ x, y, moved }: Asked): string =>
  JSON.stringify({ ...moved, [x]: undefined, [y]: undefined });

/** What the map is worked out from: coarse at first, fine once nothing is dragged; or why it can't be. */
function useQuestions({ book, outcome }: MappingProps, asked: Asked, isDragged: boolean) {
  const gives = (outcome.resolved?.input?.vehicle.verticalStiffness ?? null) !== null;
  const [coarse, fine] = gives ? [COARSE_GIVING, FINE_GIVING] : [COARSE, FINE];
  return useMemo(
    () =>
      asProblem(() =>
        (isDragged ? [coarse] : [coarse, fine]).flatMap(
          (count) => questionOf(book, outcome, asked, count) ?? [],
        ),
      ),
    [book, outcome, asked.x, asked.y, asked.shown, othersIn(asked), isDragged],
  );
}

/** The map as it is drawn; null until it is there, for the axes that are asked for. */
function useDrawing(props: MappingProps, asked: Asked, isDragged: boolean) {
  const { book, build, outcome, stands } = props;
  const { x, y, shown, moved } = asked;
  const made = useQuestions(props, asked, isDragged);
  const mapped = useMap("answered" in made ? made.answered : NONE);
  const { drawn } = mapped;
  const chance = useChance({ book, outcome, asked, others: othersIn(asked), isDragged });
  const fits = drawn && drawn.question.x.key === x && drawn.question.y.key === y;
  const onMap = useMemo(
    () => (fits ? othersOn(book, build.id, stands, drawn.question) : []),
    [book, build.id, stands, fits, x, y],
  );
  const drawing: Drawing | null = fits
    ? {
        ...drawn,
        shown: isThere(shown, drawn.question.timed, chance.nodes) ? shown : "margin",
        chance: chance.nodes,
        own: { x: standsAt(stands, x), y: standsAt(stands, y) },
        moved: { x: moved[x] ?? standsAt(stands, x), y: moved[y] ?? standsAt(stands, y) },
        others: onMap,
      }
    : null;
  const problem = "problem" in made ? made.problem : (mapped.problem ?? chance.problem);
  return { drawing, chance: chance.nodes, problem, busy: mapped.busy || chance.busy };
}

function Mapping(props: MappingProps) {
  const { build, stands } = props;
  const [asked, setAsked] = useState<Asked>(() => askedOf(stands, askedFrom(route.peek().query)));
  const [dragged, setDragged] = useState(false);
  const { x, y, shown } = asked;
  useEffect(() => go(href("map", null, askedQuery(asked)), { replace: true }), [asked]);
  const { drawing, chance, problem, busy } = useDrawing(props, asked, dragged);
  const sentence = drawing ? mapSentence(drawing) : "Working out the map…";
  useSaid(drawing && busy ? null : sentence);
  const move = (values: Asked["moved"], settled = true) => {
    setDragged(!settled);
    setAsked((before) => ({ ...before, moved: { ...before.moved, ...values } }));
  };
  return (
    <div class="page map" aria-busy={busy}>
      <div class="page-head">
        <Answer sentence={sentence}>
          {drawing && <MovedLine book={props.book} outcome={props.outcome} drawing={drawing} />}
        </Answer>
        {problem && <Problem message={problem} />}
      </div>
      <MapSettings asked={asked} stands={stands} onAsk={setAsked} onMove={move} build={build} />
      <section class="page-main map-place" aria-label="The map">
        {drawing && (
          <Picture
            drawing={drawing}
            build={build.data.name}
            onMove={(to) => move({ [x]: to.x, [y]: to.y })}
          />
        )}
      </section>
      <Notes build={build.data.name} closeness={shown === "chance" ? closenessText({ chance }) : null} />
    </div>
  );
}

interface NotesProps {
  readonly build: string;
  /** how close the chance of holding is; null where it isn't shown */
  readonly closeness: string | null;
}

/** What the map leaves out. */
function Notes({ build, closeness }: NotesProps) {
  return (
    <div class="page-below">
      <p class="quiet small">
        Everything else stands as in {build}, at its own charge: a fuller pack turns faster, so look at the
        map at 100 % as well before a rotor or a motor is trusted. The speed constant stands for a motor of
        the same frame wound otherwise: its motor constant is kept. Masses of other sizes, motors and packs
        aren't added.
        <br />
        {closeness ?? "Uncertainty is in the map where the chance of holding is shown."} Joints of the surface
        are not in it; Match has them.
      </p>
      <Caution>
        A rotor that bursts throws fragments and a winding that burns may set fire to what is round it: the
        first run-up stands behind a screen.
      </Caution>
    </div>
  );
}

interface PictureProps {
  readonly drawing: Drawing;
  readonly build: string;
  readonly onMove: (to: { readonly x: number; readonly y: number }) => void;
}

function Picture({ drawing, build, onMove }: PictureProps) {
  const plot = useMemo(
    () => mapPlot(drawing),
    [drawing.field, drawing.shown, drawing.chance, drawing.moved.x, drawing.moved.y],
  );
  return (
    <PlotChart
      plot={plot}
      sentence={pictureSentence(drawing, build)}
      height={heightFor}
      name={`map ${build}`}
      table={() => mapTable(drawing)}
      reading={{
        label: "Places of the map",
        describe: (key) => placeLines(drawing, key),
        onChoose: (key) => {
          const place = placeOf(drawing, key);
          if (place) onMove(place);
        },
      }}
    />
  );
}
