import { parentPort, workerData } from "node:worker_threads";

// Prints, which must reach nobody, and answers with the role that it was given and the texts' number.
process.stdout.write("noise");
process.stderr.write("noise");
parentPort.on("message", ({ texts }) => {
  parentPort.postMessage({ kind: "failed", why: `${workerData} ${texts.size}` });
});
