export interface WorkingValue {
  readonly symbol: string;
  readonly meaning: string;
  /** as shown, unit included */
  readonly text: string;
}

export interface WorkingProps {
  /** what was computed: "pull", "operating point" */
  readonly title: string;
  readonly equation: string;
  readonly values: readonly WorkingValue[];
  readonly result: string;
  readonly source: string;
}

/** How a figure came about: its equation, the numbers put into it, the source. */
export function Working({ title, equation, values, result, source }: WorkingProps) {
  return (
    <details class="working">
      <summary>{title}</summary>
      <p class="working-equation">{equation}</p>
      <table>
        <tbody>
          {values.map((value) => (
            <tr key={value.symbol + value.meaning}>
              <th scope="row">{value.symbol}</th>
              <td>{value.text}</td>
              <td class="quiet">{value.meaning}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        = <span class="figure">{result}</span>
      </p>
      <p class="quiet">Source: {source}</p>
    </details>
  );
}
