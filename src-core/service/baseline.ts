/** Baselines for front ends. */
export { applyBaseline } from "../baseline/apply-baseline.ts";
export type { Baseline } from "../baseline/baseline.ts";
export { readBaseline } from "../baseline/read-baseline.ts";
export { baselineText } from "../baseline/write-baseline.ts";
