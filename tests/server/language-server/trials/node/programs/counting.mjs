import { parentPort } from "node:worker_threads";

// Answers with the number of trials that it was asked for.
let count = 0;
parentPort.on("message", () => {
  count++;
  parentPort.postMessage({ kind: "failed", why: `trial ${count}` });
});
