import { useState } from "preact/hooks";
import type { Book } from "../../../shared/book/resolve.ts";
import { COLLECTION_NAMES } from "../../../shared/model/collections.ts";
import { href, route, type ViewName } from "../../app/router.ts";
import { ApiError, api } from "../../state/api.ts";
import { replaceBook } from "../../state/replaceBook.ts";
import { DocLink } from "../Docs.tsx";
import { Later } from "../Later.tsx";
import type { FirstTest } from "./Rig.tsx";

interface Step {
  readonly done: boolean;
  readonly text: string;
  readonly label: string;
  readonly to: string;
  /** the rig that it is made with */
  readonly rig?: FirstTest;
}

interface Group {
  readonly title: string;
  readonly steps: readonly Step[];
}

function groupsOf(book: Book): Group[] {
  const part = (
    name: "rotors" | "motors" | "packs" | "skirts" | "surfaces",
    text: string,
    label: string,
  ): Step => ({
    done: book[name].length > 0,
    text,
    label,
    to: href("parts", `${name}/new`),
  });
  const test = (kind: FirstTest, text: string, label: string): Step => ({
    done: book.tests.some((each) => each.data.kind === kind),
    text,
    label,
    to: href("bench", `new/${kind}`),
    rig: kind,
  });
  return [
    {
      title: "Parts",
      steps: [
        part("rotors", "A rotor: its name and the diameters you print it in.", "Add a rotor"),
        part("motors", "A motor: what its maker states; its test gives the rest.", "Add a motor"),
        part("packs", "A pack: its cells, and their chemistry.", "Add a pack"),
        part("skirts", "A skirt: its perimeter, its area and the gap it is set to.", "Add a skirt"),
        part("surfaces", "A surface: what the vehicle clings to.", "Add a surface"),
      ],
    },
    {
      title: "Tests",
      steps: [
        test(
          "motor",
          "A motor test: voltage, current and speed, free and under two loads.",
          "Log a motor test",
        ),
        test("curve", "A curve test of the rotor: blocked, open and a few between.", "Log a curve test"),
        test(
          "friction",
          "A friction test: tilt the vehicle on the surface until it slides.",
          "Log a friction test",
        ),
        test("pull", "A pull test: the loads that held and those that let go.", "Log a pull test"),
      ],
    },
    {
      title: "The build",
      steps: [
        {
          done: book.builds.length > 0,
          text: "A build: one of each, and the mass it will have.",
          label: "Put a build together",
          to: href("parts", "builds/new"),
        },
      ],
    },
  ];
}

const rig = () => import("./Rig.tsx");

/** What the view has nothing for, where it is not a match. */
const TITLES: Partial<Record<ViewName, string>> = {
  attitudes: "No build to hold in any attitude yet.",
  "run-down": "No build to run down yet.",
  mass: "No build to weigh yet.",
  "fit-up": "No build to fit together yet.",
  sheet: "No build to print a record of yet.",
  choose: "No build to choose parts for yet.",
};

function StepItem({ step, isNext }: { readonly step: Step; readonly isNext: boolean }) {
  return (
    <li>
      <span>{step.text}</span>{" "}
      {step.done ? (
        <span class="good">there</span>
      ) : (
        <a class={isNext ? "button primary" : "button"} href={step.to}>
          {step.label}
        </a>
      )}
      {step.rig && !step.done && <Later load={rig} what={step.label} props={{ kind: step.rig }} />}
    </li>
  );
}

/** What fills an empty bench, in the order of docs/first-hour.md. */
export function EmptyBench({ book }: { book: Book }) {
  const groups = groupsOf(book);
  const steps = groups.flatMap((group) => group.steps);
  const next = steps.find((step) => !step.done);
  return (
    <div class="empty">
      <h1>{TITLES[route.value.view] ?? "Nothing to match yet."}</h1>
      <p class="steps-lead">
        A build brings rotor, motor, pack, skirt and surface together. This fills the bench, in this order, in
        about an hour; <DocLink path="first-hour.md">First hour at the bench</DocLink> tells the same at
        length.
      </p>
      {groups.map((group) => (
        <section key={group.title}>
          <h2>{group.title}</h2>
          <ol
            class={group.steps.some((step) => step.rig) ? "steps steps-with-rigs" : "steps"}
            start={steps.indexOf(group.steps[0]) + 1}
          >
            {group.steps.map((step) => (
              <StepItem key={step.label} step={step} isNext={step === next} />
            ))}
          </ol>
        </section>
      ))}
      <LoadDemo book={book} />
    </div>
  );
}

/** The way back to the demo, offered while the book is empty. */
function LoadDemo({ book }: { book: Book }) {
  const [problem, setProblem] = useState<string | null>(null);
  if (COLLECTION_NAMES.some((name) => book[name].length > 0)) return null;
  const load = async () => {
    try {
      await replaceBook(() => api.post("/bench/demo", {}));
    } catch (error) {
      if (!(error instanceof ApiError)) throw error;
      setProblem(error.message);
    }
  };
  return (
    <p class="quiet">
      Or look at the{" "}
      <button type="button" class="plain" onClick={() => void load()}>
        invented demo
      </button>
      . {problem && <span class="bad">{problem}</span>}
    </p>
  );
}
