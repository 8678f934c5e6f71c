import type { ClientLibrary } from "../client-library.ts";
import { clientOptions, quieted } from "../client-options.ts";
import { WorkerClient } from "./worker-client.ts";

/** The server is a web worker. */
export const makeClient: ClientLibrary["makeClient"] = ({ extensionUri }, surroundings) =>
  quieted(new WorkerClient(extensionUri, clientOptions(surroundings)));

export { isLost } from "../client-options.ts";
