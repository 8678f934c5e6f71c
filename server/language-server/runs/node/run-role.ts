/** The `workerData` by which the program knows that it runs firmware to show it. */
export const runRole = "edgewise-runs";
