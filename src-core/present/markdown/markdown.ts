/** Pieces of Markdown pages (CommonMark 0.31.2; tables are the common extension of it). */

/** Characters that would start emphasis or HTML, outside of code. */
export function escaped(text: string): string {
  return text
    .split("`")
    .map((piece, index) => (index % 2 === 1 ? piece : piece.replace(/[*_<]/g, "\\$&")))
    .join("`");
}

/** Cells are Markdown already; a bar in one does not end it. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  return [head, head.map(() => "---"), ...rows].map(rowOf).join("\n");
}

function rowOf(cells: readonly string[]): string {
  return `| ${cells.map((cell) => cell.replaceAll("|", "\\|").replace(/\s*\n\s*/g, " ")).join(" | ")} |`;
}

export function list(items: readonly string[]): string {
  return items.map((item) => `- ${item}`).join("\n");
}

export function block(language: string, text: string): string {
  return `\`\`\`${language}\n${text.replace(/^\n+|\s+$/g, "")}\n\`\`\``;
}

/** Parts with an empty line between them; empty parts are left out. */
export function page(parts: readonly string[]): string {
  return `${parts.filter((part) => part !== "").join("\n\n")}\n`;
}
