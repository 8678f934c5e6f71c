import type { Listings } from "../files/handed-files.ts";
import type { StarterOf } from "../workers/worker.ts";

/** Part of a request about a project. */
export interface Listed {
  /** What folders look like that the worker cannot list itself. */
  readonly listings?: Listings;
}

/** Workers that are told, with each request about a project, what its folders look like. */
export function withListings<Request extends object, Answer>(
  start: StarterOf<Request, Answer>,
  listingsFor: (project: string) => Listings,
): StarterOf<Request, Answer> {
  return (events) => {
    const worker = start(events);
    return {
      post(request) {
        const project = "project" in request ? request.project : undefined;
        worker.post(typeof project === "string" ? { ...request, listings: listingsFor(project) } : request);
      },
      end: () => worker.end(),
    };
  };
}
