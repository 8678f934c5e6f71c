import { parentPort } from "node:worker_threads";

// Runs until the flag is raised, which no message could tell it.
parentPort.on("message", ({ project, cancel }) => {
  while (project === "deaf" || Atomics.load(cancel, 0) === 0);
  parentPort.postMessage({ kind: "cancelled" });
});
