import type { Span } from "../../finding.ts";
import type { Wires } from "../../notes/wires.ts";
import type { Program } from "../../reader/program/program.ts";
import type { MacroDefinition } from "../../reader/tokens.ts";

/** The clock that the chip's peripherals count. */
export interface Clock {
  /** Hz. */
  readonly hz: number;
  /** Said in a note or edgewise.json, or defined by the code as `F_CPU`. */
  readonly by: "said" | "F_CPU";
  /** Undefined for an `F_CPU` that is given from outside. */
  readonly span: Span | undefined;
}

/** What is said goes before `F_CPU`; units that define different values tell nothing. */
export function clockOf(program: Program, wires: Wires): Clock | undefined {
  const said = wires.board.clockHz;
  if (said !== undefined) return { hz: said.value, by: "said", span: said.span };
  const defined = program.units.flatMap(({ preprocessed }): Clock[] => {
    const macro = preprocessed.macros.get("F_CPU");
    const hz = macro && valueOfMacro(macro);
    return hz === undefined ? [] : [{ hz, by: "F_CPU", span: macro?.definition }];
  });
  const [first] = defined;
  return defined.every(({ hz }) => hz === first?.hz) ? first : undefined;
}

/** Numbers and their products, as `F_CPU` is written; undefined for anything else. */
function valueOfMacro({ body, parameters }: MacroDefinition): number | undefined {
  if (parameters !== undefined) return undefined;
  const texts = body.map((token) => token.text).filter((text) => text !== "(" && text !== ")");
  if (texts.length % 2 === 0) return undefined;
  let product = 1;
  for (const [index, text] of texts.entries()) {
    if (index % 2 === 1) {
      if (text !== "*") return undefined;
      continue;
    }
    const digits = /^(\d+(?:\.\d*)?(?:[eE]\+?\d+)?)[uUlLfF]*$/.exec(text.replaceAll("'", ""));
    if (digits === null) return undefined;
    product *= Number(digits[1]);
  }
  return product > 0 ? product : undefined;
}
