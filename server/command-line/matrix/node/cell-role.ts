/** The `workerData` by which the program knows that it runs cells of a matrix. */
export const cellRole = "edgewise-cells";
