/** The `workerData` by which the program knows that it runs as the worker and not as a command. */
export const trialRole = "edgewise-trials";
