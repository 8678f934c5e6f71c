import type { OutsideBody, Surroundings, TargetMemory } from "../outcome.ts";
import { formatted } from "./format.ts";
import { type FormatArguments, listedArguments, passedArguments } from "./format-arguments.ts";
import { putAll, streamNamed } from "./streams.ts";
import { textAt, writeText } from "./target-text.ts";
import { numberAt, type Passed, type Subject } from "./values.ts";

/** What an outside body gets. */
type Call = Parameters<OutsideBody>;

type Arguments = (
  parameters: Passed,
  first: number,
  memory: TargetMemory,
  surroundings: Surroundings,
) => FormatArguments;

const passed: Arguments = (parameters, first) => passedArguments(parameters, first);
const listed: Arguments = (parameters, first, memory, { model }) =>
  listedArguments(memory, numberAt(parameters, first), model);

/** The text that the format at this parameter makes of the arguments behind it. */
function textMade(
  at: number,
  find: Arguments,
  ...[parameters, memory, surroundings]: Call
): readonly number[] {
  return formatted(textAt(memory, numberAt(parameters, at)), {
    memory,
    model: surroundings.model,
    arguments: find(parameters, at + 1, memory, surroundings),
  });
}

/** Into a buffer; the length without the terminating zero. */
function intoBuffer(find: Arguments): OutsideBody {
  return (parameters, memory, surroundings) => {
    const text = textMade(1, find, parameters, memory, surroundings);
    writeText(memory, numberAt(parameters, 0), text);
    return text.length;
  };
}

/** Into a buffer of a size; the length that the text would have had. */
function intoLimited(find: Arguments): OutsideBody {
  return (parameters, memory, surroundings) => {
    const text = textMade(2, find, parameters, memory, surroundings);
    const size = numberAt(parameters, 1);
    if (size > 0) writeText(memory, numberAt(parameters, 0), text.slice(0, size - 1));
    return text.length;
  };
}

const toStdout = (find: Arguments): OutsideBody => {
  return (parameters, memory, surroundings) => {
    const text = textMade(0, find, parameters, memory, surroundings);
    return putAll(streamNamed("stdout", memory, surroundings), text, memory, surroundings);
  };
};

const toStream = (find: Arguments): OutsideBody => {
  return (parameters, memory, surroundings) => {
    const text = textMade(1, find, parameters, memory, surroundings);
    return putAll(numberAt(parameters, 0), text, memory, surroundings);
  };
};

/** The printf family: C11 7.21.6. */
export const formattedOutput: Subject = {
  sprintf: intoBuffer(passed),
  vsprintf: intoBuffer(listed),
  snprintf: intoLimited(passed),
  vsnprintf: intoLimited(listed),
  printf: toStdout(passed),
  vprintf: toStdout(listed),
  fprintf: toStream(passed),
};
