import { route } from "../../app/router.ts";
import { ArchiveView } from "./archive/ArchiveView.tsx";
import { CorrectTest } from "./forms/CorrectTest.tsx";
import { NewTest } from "./forms/NewTest.tsx";
import { ImportView } from "./import/ImportView.tsx";
import { TestList } from "./list/TestList.tsx";
import { KIND_ORDER } from "./record/kinds.ts";

const NEW = /^new\/([\w-]+)$/;

/** Bench: the list of tests, a new test of some kind, an import, or one test to correct, as the address says. */
export default function BenchView() {
  const { id } = route.value;
  if (id === null) return <TestList />;
  if (id === "import") return <ImportView />;
  if (id === "archive") return <ArchiveView />;
  const wanted = NEW.exec(id)?.[1];
  const kind = KIND_ORDER.find((known) => known === wanted);
  if (kind) return <NewTest key={kind} kind={kind} />;
  return <CorrectTest key={id} id={id} />;
}
