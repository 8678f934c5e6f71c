import { parentPort } from "node:worker_threads";

parentPort.on("message", () => {
  const kept = [];
  for (;;) kept.push({ number: kept.length, text: String(kept.length) });
});
