/**
 * Options of Node for the server's process: room for the results of two checks among the young objects (twice what is
 * usual, in MB), so that not every check has to wait for a collection.
 */
export const serverOptions: readonly string[] = ["--max-semi-space-size=32"];
