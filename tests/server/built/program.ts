import { resolve } from "node:path";

/** The program under test, as the build left it. */
export const program = resolve("dist/edgewise.js");
