import type { Token } from "../../tokens.ts";
import type { RawNode } from "../grammar/raw-nodes.ts";
import type { Attribute, ChunkSyntax } from "../nodes.ts";
import type { Presentation, SpecifierRecord } from "../outline/presentation.ts";

/** Constructs nested deeper than this are not converted, so that whoever walks the tree needs no bound of its own. */
const deepest = 400;

/** What all converters share: the tokens, what the outline found out, and the notes made on the way. */
export class Reading {
  readonly tokens: readonly Token[];
  readonly presentation: Presentation;
  readonly notUnderstood: ChunkSyntax["notUnderstood"][number][] = [];
  private readonly taken: Uint8Array;
  private depth = 0;

  constructor(presentation: Presentation) {
    this.presentation = presentation;
    this.tokens = presentation.tokens;
    this.taken = new Uint8Array(presentation.attributes.length);
  }

  text(index: number): string {
    return this.tokens[index]?.text ?? "";
  }

  /** The specifiers whose type, or declarator where no type is written, starts at the token. */
  specifiers(first: number): SpecifierRecord | undefined {
    return this.presentation.specifiers.get(first);
  }

  note(first: number, end: number, what: string): void {
    this.notUnderstood.push({ first, end, what });
  }

  /** Runs `convert` one level deeper; gives `otherwise` where that is too deep. */
  deeper<T>(convert: () => T, otherwise: () => T): T {
    if (this.depth >= deepest) return otherwise();
    this.depth += 1;
    try {
      return convert();
    } finally {
      this.depth -= 1;
    }
  }

  /** The attributes that stand in the token range; each belongs to one construct, so they are given once. */
  takeAttributes(first: number, end: number): readonly Attribute[] {
    const { attributes } = this.presentation;
    if (attributes.length === 0) return [];
    const found: Attribute[] = [];
    for (let index = firstFrom(attributes, first); index < attributes.length; index += 1) {
      const attribute = attributes[index];
      if (attribute === undefined || attribute.first >= end) break;
      if (this.taken[index] === 1) continue;
      this.taken[index] = 1;
      found.push(attribute);
    }
    return found;
  }

  /** Where attributes that end just before the token begin; the token itself where there are none. */
  attributesBefore(first: number): number {
    const { attributes } = this.presentation;
    let start = first;
    for (let index = firstFrom(attributes, first) - 1; index >= 0; index -= 1) {
      const attribute = attributes[index];
      if (attribute === undefined || !this.allHidden(attribute.end, start)) break;
      start = attribute.first;
    }
    return start;
  }

  /** Where attributes that start at the token end. */
  attributesFrom(first: number): number {
    const { attributes } = this.presentation;
    let end = first;
    for (let index = firstFrom(attributes, first); index < attributes.length; index += 1) {
      const attribute = attributes[index];
      if (attribute === undefined || !this.allHidden(end, attribute.first)) break;
      end = attribute.end;
    }
    return end;
  }

  /** Whether the grammar sees none of the tokens. */
  private allHidden(first: number, end: number): boolean {
    for (let index = first; index < end; index += 1) {
      if (this.presentation.texts[index] !== "") return false;
    }
    return true;
  }
}

/** Index of the first attribute that starts at the token or behind it. */
function firstFrom(attributes: readonly Attribute[], first: number): number {
  let low = 0;
  let high = attributes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((attributes[middle]?.first ?? 0) < first) low = middle + 1;
    else high = middle;
  }
  return low;
}

export function childOf(node: RawNode, field: string): RawNode | undefined {
  return node.children.find((child) => child.field === field);
}

export function childOfType(node: RawNode, type: string): RawNode | undefined {
  return node.children.find((child) => child.type === type);
}
