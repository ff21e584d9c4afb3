import type { z } from "zod";
import { fitDischarge } from "../../shared/fit/dischargeFit.ts";
import { fitFriction } from "../../shared/fit/frictionFit.ts";
import { fitLeak } from "../../shared/fit/leakFit.ts";
import { fitMotor } from "../../shared/fit/motorFit.ts";
import { fitPropeller } from "../../shared/fit/propellerFit.ts";
import { fitPull } from "../../shared/fit/pullFit.ts";
import { fitRideHeight } from "../../shared/fit/rideHeightFit.ts";
import { fitRotor } from "../../shared/fit/rotorFit.ts";
import { dischargeFitRequest, dischargeFitResponse } from "../../shared/model/api/dischargeFit.ts";
import {
  leakFitRequest,
  leakFitResponse,
  motorFitRequest,
  motorFitResponse,
  propellerFitRequest,
  propellerFitResponse,
  pullFitRequest,
  pullFitResponse,
  rotorFitRequest,
  rotorFitResponse,
} from "../../shared/model/api/fits.ts";
import { frictionFitRequest, frictionFitResponse } from "../../shared/model/api/frictionFit.ts";
import { rideHeightFitRequest, rideHeightFitResponse } from "../../shared/model/api/rideHeightFit.ts";
import { computation } from "./compute.ts";
import { inlineFit } from "./inlineFit.ts";

/** [rad] */
const DEGREE = Math.PI / 180;
const radians = (degrees: number | null) => degrees && degrees * DEGREE;

/** From readings given inline to the constants of a part: the functions that the stored tests go through as well. */
export const fitComputations = [
  computation({
    path: "/fit/rotor",
    summary: "Curve of a rotor family from readings of speed, flow and pressure",
    request: rotorFitRequest,
    response: rotorFitResponse,
    compute: inlineFit("points", fitRotor),
  }),
  computation({
    path: "/fit/motor",
    summary: "Constants of a motor from readings of voltage, current and speed",
    request: motorFitRequest,
    response: motorFitResponse,
    compute: inlineFit("rows", fitMotor),
  }),
  computation({
    path: "/fit/leak",
    summary: "Power law of a skirt's leak from readings of pressure and flow",
    request: leakFitRequest,
    response: leakFitResponse,
    compute: inlineFit("points", fitLeak),
  }),
  computation({
    path: "/fit/friction",
    summary: "Friction from the tilts that held and the tilts at which it slid",
    request: frictionFitRequest,
    response: frictionFitResponse,
    compute: ({ slides, angleUncertainty }) =>
      fitFriction({
        slides: slides.map(({ held, slid }) => ({ held: radians(held), slid: radians(slid) })),
        angleUncertainty: angleUncertainty * DEGREE,
      }),
  }),
  computation({
    path: "/fit/pull",
    summary: "Distribution of the pull from loads that held and loads that let go",
    request: pullFitRequest,
    response: pullFitResponse,
    compute: inlineFit("trials", fitPull),
  }),
  computation({
    path: "/fit/propeller",
    summary: "Thrust and power coefficients of an open propeller from a thrust test",
    request: propellerFitRequest,
    response: propellerFitResponse,
    compute: inlineFit("rows", fitPropeller),
  }),
  computation({
    path: "/fit/discharge",
    summary: "Open-circuit curve, resistance and capacity of a cell from its discharges",
    request: dischargeFitRequest,
    response: dischargeFitResponse,
    compute: inlineFit("runs", fitDischarge),
  }),
  computation({
    path: "/fit/ride-height",
    summary: "Vertical stiffness of running gear from heights of the lip under load",
    request: rideHeightFitRequest,
    response: rideHeightFitResponse,
    compute: inlineFit("points", (request: z.output<typeof rideHeightFitRequest>) => {
      const { heights, middle: _middle, ...fit } = fitRideHeight(request);
      return { ...fit, height: heights[0] };
    }),
  }),
];
