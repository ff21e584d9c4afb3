/** One field that says something else than before. */
export interface Difference {
  readonly path: string;
  /** "Pull 2, let go" */
  readonly label: string;
  /** empty where it said nothing */
  readonly before: string;
  readonly after: string;
}

interface DifferencesProps {
  readonly differences: readonly Difference[];
  /** names of the two columns */
  readonly before: string;
  readonly after: string;
}

/** Two states of a record laid side by side, only where they differ. */
export function Differences({ differences, before, after }: DifferencesProps) {
  if (differences.length === 0) return <p class="quiet">Nothing in it differs.</p>;
  return (
    <table class="bench-differences">
      <thead>
        <tr>
          <th scope="col">Field</th>
          <th scope="col">{before}</th>
          <th scope="col">{after}</th>
        </tr>
      </thead>
      <tbody>
        {differences.map((difference) => (
          <tr key={difference.path}>
            <th scope="row">{difference.label}</th>
            <td>{difference.before || <span class="quiet">nothing</span>}</td>
            <td>{difference.after || <span class="quiet">nothing</span>}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
