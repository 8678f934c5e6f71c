import type { Span } from "../../finding.ts";
import type { WorkToken } from "../lexer/lexed-file.ts";
import type { MacroDefinition } from "../tokens.ts";
import type { ReplacementItem } from "./replacement.ts";

/** Macros whose value depends on where and when they are used (C11 6.10.8). */
export type BuiltIn =
  | "__FILE__"
  | "__BASE_FILE__"
  | "__LINE__"
  | "__COUNTER__"
  | "__INCLUDE_LEVEL__"
  | "__DATE__"
  | "__TIME__"
  | "__TIMESTAMP__"
  | "_Pragma";

/** A macro as the expansion works with it. */
export class Macro implements MacroDefinition {
  readonly name: string;
  readonly definition: Span | undefined;
  readonly parameters: readonly string[] | undefined;
  readonly isVariadic: boolean;
  readonly body: readonly WorkToken[];
  /** The body with its operators and parameters recognised; undefined where it has none and is just copied. */
  readonly items: readonly ReplacementItem[] | undefined;
  readonly builtIn: BuiltIn | undefined;
  /** True while its own expansion is being read: its name is then no call (C11 6.10.3.4, 2). */
  isOpen = false;

  constructor(parts: {
    readonly name: string;
    readonly definition: Span | undefined;
    readonly parameters?: readonly string[] | undefined;
    readonly body?: readonly WorkToken[];
    readonly items?: readonly ReplacementItem[] | undefined;
    readonly builtIn?: BuiltIn;
  }) {
    this.name = parts.name;
    this.definition = parts.definition;
    this.parameters = parts.parameters;
    this.isVariadic = parts.parameters?.at(-1)?.endsWith("...") ?? false;
    this.body = parts.body ?? [];
    this.items = parts.items;
    this.builtIn = parts.builtIn;
  }
}

const BUILT_INS: readonly BuiltIn[] = [
  "__FILE__",
  "__BASE_FILE__",
  "__LINE__",
  "__COUNTER__",
  "__INCLUDE_LEVEL__",
  "__DATE__",
  "__TIME__",
  "__TIMESTAMP__",
];

/** The macros that are there before the first line. */
export function builtInMacros(): readonly Macro[] {
  const plain = BUILT_INS.map((builtIn) => new Macro({ name: builtIn, definition: undefined, builtIn }));
  return [
    ...plain,
    new Macro({ name: "_Pragma", definition: undefined, parameters: ["text"], builtIn: "_Pragma" }),
  ];
}
