import type { Tree, TreeCursor } from "web-tree-sitter";

/** A node of the grammar's tree, by token indexes instead of offsets. */
export interface RawNode {
  readonly type: string;
  readonly field: string | undefined;
  readonly first: number;
  readonly end: number;
  readonly children: readonly RawNode[];
  /** The grammar made no sense of something in it that no statement or declaration inside it confines. */
  readonly broken: boolean;
}

/** Which token a character offset of the text given to the grammar belongs to. */
export interface TokenOffsets {
  /** By offset: the first token that ends behind it. */
  readonly from: Int32Array;
  /** By offset: how many tokens start before it. */
  readonly to: Int32Array;
}

/** What the grammar made of one chunk. */
export interface RawTree {
  readonly root: RawNode;
  /** Token ranges of errors, in reading order. */
  readonly errors: readonly { readonly first: number; readonly end: number }[];
}

/** Nodes nested deeper than this are left out; C promises 63 levels of parentheses, 127 of blocks (C11 5.2.4.1). */
const deepest = 1200;

/** Nodes that keep their errors to themselves: the rest of what they stand in is read as if they were whole. */
const confining: ReadonlySet<string> = new Set([
  "compound_statement",
  "field_declaration_list",
  "declaration_list",
  "expression_statement",
  "if_statement",
  "else_clause",
  "while_statement",
  "do_statement",
  "for_statement",
  "for_range_loop",
  "switch_statement",
  "case_statement",
  "labeled_statement",
  "return_statement",
  "goto_statement",
  "break_statement",
  "continue_statement",
  "try_statement",
  "throw_statement",
  "function_definition",
  "declaration",
  "field_declaration",
  "template_declaration",
  "namespace_definition",
  "linkage_specification",
  "static_assert_declaration",
  "alias_declaration",
  "using_declaration",
]);

/** Tokens whose inside the grammar takes apart and nobody needs. */
const whole: ReadonlySet<string> = new Set(["string_literal", "char_literal", "number_literal"]);

interface Draft {
  type: string;
  field: string | undefined;
  first: number;
  end: number;
  children: RawNode[];
  broken: boolean;
}

/** Takes the grammar's tree over into plain objects; nodes made only of text that stands for no token are left out. */
export function rawTree(
  tree: Tree,
  types: readonly string[],
  fields: readonly (string | null)[],
  offsets: TokenOffsets,
): RawTree {
  const errors: { first: number; end: number }[] = [];
  const cursor = tree.walk();

  function draft(): Draft {
    const id = cursor.nodeTypeId;
    const start = cursor.startIndex;
    const stop = cursor.endIndex;
    const first = offsets.from[start] ?? 0;
    const end = offsets.to[stop] ?? 0;
    const type = id === 65535 ? "ERROR" : (types[id] ?? "ERROR");
    const missing = start === stop && cursor.nodeIsMissing;
    const broken = missing || type === "ERROR";
    // What is missing is missing behind the token before it.
    if (broken)
      errors.push(missing ? { first: Math.max(end - 1, 0), end: Math.max(end, 1) } : { first, end });
    return {
      type: missing ? "MISSING" : type,
      field: fieldOf(cursor, fields),
      first,
      end,
      children: [],
      broken,
    };
  }

  const root = draft();
  const stack: Draft[] = [root];
  // Walks without recursion: the depth of a tree made from nonsense has no bound.
  let down = true;
  for (;;) {
    const top = stack[stack.length - 1];
    if (top === undefined) break;
    const isLeaf = whole.has(top.type);
    if (down && !isLeaf && stack.length <= deepest && cursor.gotoFirstChild()) {
      stack.push(draft());
      continue;
    }
    // What lies deeper is left out, so the node must not pass for a whole one.
    if (down && !isLeaf && stack.length > deepest) top.broken = true;
    stack.pop();
    const parent = stack[stack.length - 1];
    if (parent === undefined) break;
    if (top.first < top.end || top.type === "MISSING") parent.children.push(top);
    if (top.broken && !confining.has(top.type)) parent.broken = true;
    if (cursor.gotoNextSibling()) {
      stack.push(draft());
      down = true;
    } else {
      cursor.gotoParent();
      down = false;
    }
  }
  cursor.delete();
  return { root, errors };
}

function fieldOf(cursor: TreeCursor, fields: readonly (string | null)[]): string | undefined {
  const id = cursor.currentFieldId;
  return id === 0 ? undefined : (fields[id] ?? undefined);
}
