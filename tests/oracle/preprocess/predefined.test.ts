import { expect, test } from "vitest";
import { avrChipNamed, chipNames } from "../../../src-core/model/chips.ts";
import { predefinedMacros } from "../../../src-core/reader/preprocess/predefined.ts";
import { preprocessed } from "./headers/check-syntax.ts";

/* `avr-gcc -dM -E` lists the macros that the compiler defines for a chip; ours are among them. */
const chips = chipNames.filter((name) => avrChipNamed(name) !== undefined);
const standards = [
  { language: "c", options: ["-x", "c"] },
  { language: "c++", options: ["-x", "c++", "-std=gnu++11"] },
] as const;

test.each(chips)("the compiler's own macros for %s", (name) => {
  for (const { language, options } of standards) {
    const listed = preprocessed("avr-gcc", [`-mmcu=${name}`, "-O1", "-dM", ...options], "");
    const real = new Map(
      [...listed.matchAll(/^#define (\w+) (.*)$/gm)].map(([, key = "", value = ""]) => [key, value]),
    );
    const ours = predefinedMacros(avrChipNamed(name), language, undefined);
    expect(ours).toEqual(Object.fromEntries(Object.keys(ours).map((key) => [key, real.get(key)])));
  }
});
