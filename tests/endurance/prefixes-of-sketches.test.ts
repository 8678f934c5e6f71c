import { describe } from "vitest";
import { readEveryPrefix } from "./prefixes.ts";
import { sampleProjects } from "./sample-projects.ts";

/** Nearly the text of another sample, and minutes for nothing new. */
const leftOut = "ferry-sketch-second-faults";

describe("sketches cut off anywhere are read like any other", () => {
  for (const sample of sampleProjects)
    if (sample.name.includes("sketch") && sample.name !== leftOut) readEveryPrefix(sample);
});
