import { route } from "../../app/router.ts";
import { Later } from "../../ui/Later.tsx";
import { CorrectTest } from "./forms/CorrectTest.tsx";
import { NewTest } from "./forms/NewTest.tsx";
import { TestList } from "./list/TestList.tsx";
import { KIND_ORDER } from "./record/kinds.ts";

const importing = () => import("./import/ImportView.tsx");
const archive = () => import("./archive/ArchiveView.tsx");
const units = () => import("./units/UnitsView.tsx");
const devices = () => import("./devices/DevicesView.tsx");

const NEW = /^new\/([\w-]+)$/;

/** Bench: the list of tests, a new test of some kind, an import, or one test to correct, as the address says. */
export default function BenchView() {
  const { id, query } = route.value;
  if (id === null) return <TestList />;
  if (id === "import") return <Later load={importing} what="Import from CSV" props={{}} />;
  if (id === "archive") return <Later load={archive} what="Archive and backup" props={{}} />;
  if (id === "units") return <Later load={units} what="Units" props={{}} />;
  if (id === "devices") return <Later load={devices} what="Devices" props={{}} />;
  const wanted = NEW.exec(id)?.[1];
  const kind = KIND_ORDER.find((known) => known === wanted);
  const waiting = query.get("waiting");
  if (kind) return <NewTest key={`${kind} ${waiting}`} kind={kind} waiting={waiting} />;
  return <CorrectTest key={id} id={id} />;
}
