import { timeText } from "../../../../shared/decide/verdict/figures.ts";
import type { Answered } from "../answer.ts";
import { celsiusText } from "../rundownWords.ts";
import { courseName, type KeptRun } from "./keepWords.ts";

const time = (seconds: number | null) => (seconds === null ? "never" : timeText(seconds));

/** The ways to run the throttle side by side. */
export function CourseTable({ answered, kept }: { answered: Answered; kept: KeptRun }) {
  return (
    <table class="holds course-table">
      <caption class="quiet small">
        Until the first attitude that it holds at the start lets go, and until the charge ends. A controller
        that keeps the suction draws less from a full cell.
      </caption>
      <thead>
        <tr>
          <th scope="col">Throttle</th>
          <th scope="col">Holds</th>
          <th scope="col">At the margin wanted</th>
          <th scope="col">Charge ends</th>
          {answered.winding !== null && <th scope="col">Winding at most</th>}
        </tr>
      </thead>
      <tbody>
        {kept.courses.map((course) => (
          <tr key={course.key}>
            <th scope="row">{courseName(answered, kept, course)}</th>
            <td>{time(course.holds)}</td>
            <td>{time(course.target)}</td>
            <td>{timeText(course.end)}</td>
            {answered.winding !== null && <td>{celsiusText(course.hottest)}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
