import { describe, expect, test } from "vitest";
import type { Snippets } from "../../src-core/checks/harness.ts";
import { buttonMapSnippets } from "../../src-core/checks/report/snippets/button-map.ts";
import { clipMissingSnippets } from "../../src-core/checks/report/snippets/clip-missing.ts";
import { layoutSnippets } from "../../src-core/checks/report/snippets/layout.ts";
import { lengthSnippets } from "../../src-core/checks/report/snippets/length.ts";
import { signLostSnippets } from "../../src-core/checks/report/snippets/sign-lost.ts";
import { syncBitSnippets } from "../../src-core/checks/report/snippets/sync-bit.ts";
import { yDirectionSnippets } from "../../src-core/checks/report/snippets/y-direction.ts";
import { departuresOf } from "./departures.ts";
import type { Departure } from "./encoder-trial.ts";

/*
 * The snippets of the rules on reports, compiled and run like the right ones in `encoders.test.ts`: the right ones
 * do what the documents say, and each wrong one departs from them in one way, which is its rule's.
 */
interface Fault {
  readonly snippets: Snippets;
  /** What all departures of a wrong one have to be. */
  isOf(departure: Departure): boolean;
  /** What at least one of them has to be, where the others may be another rule's alone. */
  shows?(departure: Departure): boolean;
}

const isMovement = ({ kind }: Departure): boolean => kind === "movement";

const faults: Readonly<Record<string, Fault>> = {
  length: { snippets: lengthSnippets, isOf: ({ kind }) => kind === "length" },
  "sync-bit": { snippets: syncBitSnippets, isOf: ({ kind }) => kind === "constant" },
  "button-map": { snippets: buttonMapSnippets, isOf: ({ kind }) => kind === "button" },
  "y-direction": {
    snippets: yDirectionSnippets,
    isOf: (departure) =>
      isMovement(departure) && departure.of === "y" && departure.got * departure.asked <= 0,
    shows: ({ asked, got }) => Math.abs(asked) === Math.abs(got),
  },
  "sign-lost": {
    snippets: signLostSnippets,
    isOf: (departure) => isMovement(departure) && departure.asked < 0,
    shows: ({ isLong }) => !isLong,
  },
  "clip-missing": {
    snippets: clipMissingSnippets,
    isOf: (departure) => isMovement(departure) && departure.isLong,
  },
  layout: {
    snippets: layoutSnippets,
    isOf: isMovement,
    shows: ({ asked, isLong }) => asked > 0 && !isLong,
  },
};

describe.each(Object.entries(faults))("%s", (_, { snippets, isOf, shows = () => true }) => {
  test.each(Object.entries(snippets.wrong))("wrong: %s", async (_, example) => {
    const departures = await departuresOf(example);
    expect(departures.filter((each) => !isOf(each)).slice(0, 5)).toEqual([]);
    expect(departures.filter(shows).length).toBeGreaterThan(0);
  });
  test.each(Object.entries(snippets.right))("right: %s", async (_, example) => {
    expect((await departuresOf(example)).slice(0, 5)).toEqual([]);
  });
});
