import { discharges } from "./discharges.ts";
import { drives } from "./drives.ts";
import { thrusts } from "./propellers.ts";
import { rideHeights } from "./rideHeights.ts";
import { rigs } from "./rigs.ts";

/** The demo's bench tests, read off {@link rigs} in the order of their days. */
export function tests(): { id: string; data: unknown }[] {
  const { curve, motor, leak, friction, pull } = rigs(4310);
  return [
    motor("bell-18", "2026-03-02", [3.8, 5.5, 7.4], true),
    motor("brushed-20", "2026-03-02", [3.8, 5.5, 7.2], true),
    curve("swept-nine", 0.038, "bell-18", 7.2, "2026-03-04"),
    curve("swept-nine", 0.044, "bell-18", 6.4, "2026-03-05"),
    curve("swept-nine", 0.044, "bell-18", 7.6, "2026-03-05"),
    friction("side-pane", "wheels", "2026-03-07"),
    friction("roof-pane", "wheels", "2026-03-07"),
    curve("straight-seven", 0.042, "brushed-20", 7, "2026-03-11"),
    curve("straight-seven", 0.05, "brushed-20", 7, "2026-03-11"),
    leak("felt-ring", "side-pane", 0.0008, "2026-03-14"),
    leak("square-lip", "roof-pane", 0.0009, "2026-03-14"),
    pull("pane-crawler", "straight-off", "2026-03-18", [0.95, 0.8, 0.62, 0.4]),
    pull("pane-crawler", "ceiling", "2026-03-19", [0.9, 0.7, 0.5]),
    motor("bell-22", "2026-04-01", [5.5, 7.4, 11.1], true),
    curve("tube-five", 0.046, "bell-22", 10.4, "2026-04-03"),
    curve("tube-five", 0.055, "bell-22", 10.4, "2026-04-03"),
    curve("tube-five", 0.055, "bell-22", 8.2, "2026-04-04"),
    leak("wide-land", "ridge-board", null, "2026-04-06"),
    friction("ridge-board", "wheels", "2026-04-08"),
    friction("ridge-board", "skirt", "2026-04-08", "wide-land"),
    pull("roof-crawler", "straight-off", "2026-04-10", [0.95, 0.7, 0.6, 0.35]),
    pull("roof-crawler", "along", "2026-04-10", [0.9, 0.65, 0.45]),
    pull("ridge-runner", "straight-off", "2026-04-15", [0.9, 0.6, 0.4]),
    motor("coreless-12", "2026-05-02", [2.4, 3.3, 4.1], false),
    curve("swept-nine", 0.038, "coreless-12", 3.9, "2026-05-03"),
    pull("ridge-runner", "ceiling", "2026-05-04", [0.85, 0.55]),
    ...discharges(),
    ...thrusts(),
    leak("square-lip", "side-pane", 0.0009, "2026-05-16"),
    ...rideHeights(),
    ...drives(),
  ].map((data, index) => ({
    id: `demo-${String(index + 1).padStart(2, "0")}-${(data as { kind: string }).kind}`,
    data,
  }));
}
