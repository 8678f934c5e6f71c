/** Instructions that change nothing that the program computes with: the machine is told of them. */
export const single: ReadonlySet<string> = new Set(["nop", "sei", "cli", "wdr", "sleep"]);

/** The instruction that one of the compiler's functions stands for. */
export function instructionNamed(name: string): string | undefined {
  const word = /^__builtin_avr_(\w+)$/.exec(name)?.[1];
  return word !== undefined && single.has(word) ? word : undefined;
}

/** Jumps to the next instruction, which take two cycles. */
export const isPause = (line: string): boolean => /^rjmp \.( ?\+ ?0)?$/.test(line);

/** Instructions and labels of inline assembly one by one, in small letters, with single blanks. */
export function linesOf(text: string): readonly string[] {
  return (
    text
      .replace(/\\[nr]/g, "\n")
      .replace(/\\t/g, " ")
      // What stands behind a semicolon is a comment (gas manual, "AVR Syntax: Special Characters").
      .replace(/;.*$/gm, "")
      .split("\n")
      .flatMap((line) => line.replace(/^\s*([\w.%=]+):/, "$1:\n").split("\n"))
      .map((line) =>
        line
          .trim()
          .toLowerCase()
          .replace(/\s*,\s*/g, ",")
          .replace(/\s+/g, " "),
      )
      .filter((line) => line !== "")
  );
}

/**
 * Cycles of inline assembly's single instructions and pauses (AVR Instruction Set Manual); loops in it count themselves
 * when they are run.
 */
export function cyclesOfLines(text: string): number {
  return linesOf(text).reduce((sum, line) => sum + (single.has(line) ? 1 : isPause(line) ? 2 : 0), 0);
}
