import { z } from "zod";
import { openApiDocument } from "../openapi.ts";
import { type Route, route } from "./route.ts";

/** The description of all the other routes and of itself. */
export function openApiRoute(others: readonly Route[]): Route {
  const self: Route = route({
    method: "get",
    path: "/openapi.json",
    tag: "bench",
    summary: "This description",
    responses: {
      200: { description: "an OpenAPI 3.1 document", schema: z.record(z.string(), z.unknown()) },
    },
    answer: async () => ({ status: 200, body: await document() }),
  });
  // Made at the first request: a hundred schemas take longer than the start should.
  let made: ReturnType<typeof openApiDocument> | undefined;
  const document = () => {
    made ??= openApiDocument([...others, self]);
    return made;
  };
  return self;
}
