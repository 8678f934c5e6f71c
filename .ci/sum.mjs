import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";

/** Adds up the reports in a folder and prints `N passed, M failed`; exits 1 when anything failed. */

const folder = process.argv[2] ?? ".results";
const reports = readdirSync(folder).filter((file) => /\.(json|status)$/.test(file));
const names = new Set(reports.map((file) => basename(file).replace(/\.\w+$/, "")));
let passed = 0;
let failed = 0;
for (const name of names) {
  const report = join(folder, `${name}.json`);
  const status = join(folder, `${name}.status`);
  const counts = existsSync(report)
    ? JSON.parse(readFileSync(report, "utf8"))
    : { numPassedTests: 0, numFailedTests: 0 };
  passed += counts.numPassedTests;
  // A skipped test is a test that was left out.
  const left = (counts.numPendingTests ?? 0) + (counts.numTodoTests ?? 0);
  const lost = counts.numFailedTests + left;
  const endedBadly = existsSync(status) && readFileSync(status, "utf8").trim() !== "0";
  const ranNothing = counts.numPassedTests + lost === 0;
  const faults = lost > 0 ? lost : endedBadly || ranNothing ? 1 : 0;
  if (faults > 0) process.stdout.write(`failed: ${name} (${faults})\n`);
  failed += faults;
}
process.stdout.write(`${passed} passed, ${failed} failed\n`);
process.exitCode = failed === 0 ? 0 : 1;
