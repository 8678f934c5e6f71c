import { expect, test } from "vitest";
import { CannotDo } from "../../../server/command-line/cannot-do.ts";
import type { Command } from "../../../server/command-line/command.ts";
import { parseArguments } from "../../../server/command-line/parse-arguments.ts";

const command: Command = {
  name: "weigh",
  operands: "[PATH...]",
  summary: "",
  options: [
    { name: "output", value: "FILE", help: "" },
    { name: "quick", value: undefined, help: "" },
  ],
  details: [],
  run: () => Promise.resolve(0),
};

test("operands and options may stand in any order", () => {
  const { operands, options } = parseArguments(command, ["a", "--output", "o.txt", "--quick", "b"]);
  expect(operands).toEqual(["a", "b"]);
  expect([...options]).toEqual([
    ["output", "o.txt"],
    ["quick", ""],
  ]);
});

// Guideline 10 of the Utility Syntax Guidelines, POSIX.1-2017, 12.2.
test("after -- everything is an operand", () => {
  expect(parseArguments(command, ["--", "--output", "-x"]).operands).toEqual(["--output", "-x"]);
});

test("a value may follow an equals sign", () => {
  expect(parseArguments(command, ["--output=a=b"]).options.get("output")).toBe("a=b");
});

test.each([
  [["--ouput", "x"], "weigh has no option --ouput; did you mean --output?"],
  [["--colour-depth"], "weigh has no option --colour-depth; it takes --output, --quick"],
  [["-z"], "weigh has no option -z; it takes --output, --quick"],
  [["--output"], "--output needs a value: --output FILE"],
  [["--output", "--quick"], "--output needs a value: --output FILE"],
  [["--quick=yes"], '--quick takes no value, but was given "yes"'],
])("%j is refused", (words, message) => {
  expect(() => parseArguments(command, words)).toThrow(CannotDo);
  expect(() => parseArguments(command, words)).toThrow(message);
});
