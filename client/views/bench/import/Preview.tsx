import { useState } from "preact/hooks";
import type { CsvTable } from "./csv.ts";
import { ROLE_LABELS } from "./mapping.ts";
import type { ImportModel } from "./model.ts";
import { countInWords } from "./points.ts";

const SHOWN_AT_ONCE = 12;

interface PreviewProps {
  readonly model: ImportModel;
  readonly table: CsvTable;
}

/** The lines as they will be read; one that is kept out says why. */
export function Preview({ model, table }: PreviewProps) {
  const [onlyBad, setOnlyBad] = useState(false);
  const [all, setAll] = useState(false);
  const missing = model.missing.value;
  const points = model.points.value;
  if (missing.length > 0) {
    return (
      <section>
        <h2>Preview</h2>
        <ul>
          {missing.map((wish) => (
            <li key={wish}>{wish}</li>
          ))}
        </ul>
      </section>
    );
  }
  const reasons = new Map(points.bad.map(({ line, reason }) => [line, reason]));
  const good = new Map(points.good.map(({ line, row }) => [line, row]));
  const lines = onlyBad ? table.lines.filter(({ line }) => reasons.has(line)) : table.lines;
  const shown = all ? lines : lines.slice(0, SHOWN_AT_ONCE);
  const roles = [...new Set(["speed" as const, ...model.mapping.value.map(({ role }) => role)])].filter(
    (role) => role !== "ignore" && role !== "open" && role !== "setAside",
  );
  return (
    <section>
      <h2>Preview</h2>
      <p>
        {countInWords(points)}{" "}
        {points.bad.length > 0 && (
          <button type="button" class="plain" onClick={() => setOnlyBad(!onlyBad)}>
            {onlyBad ? "show every line" : "show only those kept out"}
          </button>
        )}
      </p>
      <div class="data-table-scroll">
        <table class="bench-preview">
          <thead>
            <tr>
              <th scope="col">Line</th>
              {roles.map((role) => (
                <th key={role} scope="col">
                  {ROLE_LABELS[role]}
                </th>
              ))}
              <th scope="col">Reads as</th>
            </tr>
          </thead>
          <tbody>
            {shown.map(({ line, cells }) => {
              const row = good.get(line);
              return (
                <tr key={line} class={row ? "" : "bench-bad"}>
                  <th scope="row">{line}</th>
                  {row ? (
                    roles.map((role) => <td key={role}>{row.cells[role] ?? ""}</td>)
                  ) : (
                    <td colSpan={roles.length}>{cells.join(` ${table.delimiter} `)}</td>
                  )}
                  <td>
                    {row
                      ? row.aside === null
                        ? "a point"
                        : `set aside: ${row.aside}`
                      : `kept out: ${reasons.get(line)}`}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      {shown.length < lines.length && (
        <button type="button" onClick={() => setAll(true)}>
          Show all {lines.length} lines
        </button>
      )}
    </section>
  );
}
