import type { WorkToken } from "../lexer/lexed-file.ts";
import type { MacroUse } from "../tokens.ts";
import { builtInToken, outermostPlace } from "./expander.ts";
import type { Macro } from "./macro.ts";

/** What the values of the built-in macros depend on. */
export interface BuiltInPlace {
  /** Line of an offset of a file, from 1, as `#line` has it. */
  lineOf(file: string, offset: number): number;
  /** Name of a file, as `#line` has it. */
  nameOf(file: string): string;
  readonly mainFile: string;
  includeLevel(): number;
  nextCounter(): number;
}

/**
 * The value of a built-in macro. Date and time are fixed, because the same text has to read the same way
 * every time; nothing that is checked depends on them.
 */
export function builtInValue(macro: Macro, name: WorkToken, place: BuiltInPlace): WorkToken | undefined {
  const call = { file: name.file, start: name.start, end: name.end };
  const use: MacroUse = { name: name.text, call, definition: undefined, within: name.macro };
  const string = (text: string) => builtInToken(name, "string", `"${text.replace(/["\\]/g, "\\$&")}"`, use);
  const number = (value: number) => builtInToken(name, "number", String(value), use);
  switch (macro.builtIn) {
    case "__FILE__":
      return string(place.nameOf(outermostPlace(name).file));
    case "__BASE_FILE__":
      return string(place.mainFile);
    case "__LINE__": {
      const visible = outermostPlace(name);
      return number(place.lineOf(visible.file, visible.start));
    }
    case "__COUNTER__":
      return number(place.nextCounter());
    case "__INCLUDE_LEVEL__":
      return number(place.includeLevel());
    case "__DATE__":
      return string("Jan  1 2000");
    case "__TIME__":
      return string("00:00:00");
    case "__TIMESTAMP__":
      return string("Sat Jan  1 00:00:00 2000");
    case "_Pragma":
    case undefined:
      return undefined;
  }
}
