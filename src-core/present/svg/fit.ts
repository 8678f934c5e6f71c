/** Widths of characters at the sizes of `style.ts`, on the wide side; of a proportional face on the average. */
const perMarkCharacter = 6.7;
const perTextCharacter = 6.6;

/** The first of some texts that fits into so many pixels; undefined where none does. */
export function fitting(texts: readonly string[], width: number): string | undefined {
  return texts.find((each) => each.length * perMarkCharacter <= width - 5);
}

/** Lines of words that are not wider than so many pixels, as far as words are not. */
export function wrapped(words: string, width: number): readonly string[] {
  const most = Math.max(10, Math.floor(width / perTextCharacter));
  const lines: string[] = [];
  let line = "";
  for (const word of words.split(" ")) {
    if (line !== "" && line.length + 1 + word.length > most) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return line === "" ? lines : [...lines, line];
}
