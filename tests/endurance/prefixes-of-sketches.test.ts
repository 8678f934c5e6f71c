import { describe } from "vitest";
import { readEveryPrefix } from "./prefixes.ts";
import { sampleProjects } from "./sample-projects.ts";

describe("sketches cut off anywhere are read like any other", () => {
  for (const sample of sampleProjects) if (sample.name.includes("sketch")) readEveryPrefix(sample);
});
