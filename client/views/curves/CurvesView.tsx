import { type Book, findById } from "../../../shared/book/book.ts";
import { href, route } from "../../app/router.ts";
import { currentBook } from "../../state/book.ts";
import { Empty } from "../../ui/Empty.tsx";
import { type Place, placeOf, placeToShow, RECORD } from "./address.ts";
import { GearView } from "./gear/GearView.tsx";
import { MotorView } from "./motor/MotorView.tsx";
import { PartList } from "./PartList.tsx";
import { PackView } from "./pack/PackView.tsx";
import { PropellerView } from "./propeller/PropellerView.tsx";
import { RecordView } from "./record/RecordView.tsx";
import { RotorView } from "./rotor/RotorView.tsx";
import { SkirtView } from "./SkirtView.tsx";
import { SurfaceView } from "./SurfaceView.tsx";

/** Curves: what the tests say of each part. */
export default function CurvesView() {
  const book = currentBook.value;
  if (!book) return null;
  const isRecord = route.value.id === RECORD;
  const place = isRecord ? null : placeToShow(book, placeOf(route.value.id));
  return (
    <div class="curves">
      <PartList book={book} place={place} isRecord={isRecord} />
      {isRecord ? (
        <RecordView book={book} />
      ) : place?.id ? (
        <PartPage key={`${place.collection}/${place.id}`} book={book} place={place} />
      ) : (
        <NoPart />
      )}
    </div>
  );
}

function PartPage({ book, place }: { book: Book; place: Place }) {
  const id = place.id ?? "";
  if (place.collection === "rotors" && findById(book.rotors, id)?.data.kind === "propeller")
    return <PropellerView book={book} id={id} />;
  if (place.collection === "rotors") return <RotorView book={book} id={id} />;
  if (place.collection === "motors") return <MotorView book={book} id={id} />;
  if (place.collection === "packs") return <PackView book={book} id={id} />;
  if (place.collection === "skirts") return <SkirtView book={book} id={id} />;
  if (place.collection === "gears") return <GearView book={book} id={id} />;
  return <SurfaceView book={book} id={id} />;
}

function NoPart() {
  if (placeOf(route.value.id)?.id)
    return (
      <Empty
        title="The book has no such part."
        action={{ label: "Show the first part with tests", href: href("curves") }}
      >
        <p>It may have been removed, or the address has a slip in it.</p>
      </Empty>
    );
  return (
    <Empty
      title="No curve to draw yet."
      action={{ label: "Log a curve test", href: href("bench", "new/curve") }}
    >
      <p>Curves come from bench tests of rotors, motors, packs, skirts and surfaces.</p>
    </Empty>
  );
}
