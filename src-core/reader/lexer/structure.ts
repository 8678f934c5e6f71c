import type { DirectivePiece, Piece } from "./lexed-file.ts";

const OPENING: ReadonlySet<string> = new Set(["if", "ifdef", "ifndef"]);
const BRANCHES: ReadonlySet<string> = new Set(["elif", "elifdef", "elifndef", "else"]);

/** For every piece the index of the next branch or `#endif` of its group; `pieces.length` where there is none. */
export function linkBranches(pieces: readonly Piece[]): readonly number[] {
  const next = new Array<number>(pieces.length).fill(pieces.length);
  const open: number[] = [];
  pieces.forEach((piece, index) => {
    if (piece.kind !== "directive" || piece.name === undefined) return;
    const name = piece.name.text;
    if (OPENING.has(name)) {
      open.push(index);
      return;
    }
    if (!BRANCHES.has(name) && name !== "endif") return;
    const previous = open.pop();
    if (previous === undefined) return;
    next[previous] = index;
    if (name !== "endif") open.push(index);
  });
  return next;
}

/** The macro that guards the whole file against being read twice, where its shape says so. */
export function includeGuard(pieces: readonly Piece[]): string | undefined {
  const first = pieces[0];
  const last = pieces[pieces.length - 1];
  if (first?.kind !== "directive" || last?.kind !== "directive" || last.name?.text !== "endif")
    return undefined;
  if (first.next !== pieces.length - 1) return undefined;
  return guardName(first);
}

function guardName(piece: DirectivePiece): string | undefined {
  const words = piece.tokens.map((token) => token.text).join(" ");
  const name = piece.name?.text;
  if (name === "ifndef") return /^\w+$/.test(words) ? words : undefined;
  if (name !== "if") return undefined;
  return /^! defined (?:\( (\w+) \)|(\w+))$/
    .exec(words)
    ?.slice(1)
    .find((word) => word !== undefined);
}
