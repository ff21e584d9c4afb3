import { href, route } from "../../app/router.ts";

/** Says that an address leads to no page, and where to go on. */
export default function MissingView() {
  return (
    <section>
      <h1>No such page</h1>
      <p>
        There is no page at <code>/{route.value.id}</code>.
      </p>
      <p>
        <a href={href("match")}>Go to Match</a>
      </p>
    </section>
  );
}
