import type { StorageWord } from "../nodes.ts";
import { type Chain, meansType, peekChain, startsChain } from "./chains.ts";
import { expression, noStops } from "./expressions.ts";
import type { RecordedType } from "./presentation.ts";
import type { Scan } from "./scan.ts";
import { tag } from "./tags.ts";
import { presentChain } from "./type-names.ts";
import { isTypeWord, qualifiers, recordKeywords, storageWord, typeofWords } from "./words.ts";

/** Where a declaration stands: it decides what an unknown name may be. */
export type Where = "file" | "class" | "block" | "parameter" | "type";

export interface Specified {
  readonly next: number;
  readonly storage: readonly StorageWord[];
  readonly type: RecordedType;
}

/** Specifiers while they are read. */
interface Draft {
  readonly storage: StorageWord[];
  readonly words: string[];
  const: boolean;
  volatile: boolean;
  type: RecordedType | undefined;
  typeFirst: number;
  typeEnd: number;
}

/** Presents declaration specifiers (C11 6.7, C++ [dcl.spec]): the grammar sees the type alone. */
export function specifiers(scan: Scan, from: number, to: number, where: Where): Specified {
  const draft: Draft = {
    storage: [],
    words: [],
    const: false,
    volatile: false,
    type: undefined,
    typeFirst: -1,
    typeEnd: -1,
  };
  let at = from;
  while (at < to) {
    const next = specifier(scan, at, to, where, draft);
    if (next === at) break;
    at = next;
  }
  const type: RecordedType =
    draft.words.length > 0 ? { kind: "words", words: draft.words } : (draft.type ?? { kind: "none" });
  const typeFirst = draft.typeFirst < 0 ? at : draft.typeFirst;
  // `T (*f)()` could be calls to the grammar, but not behind this word.
  const mayBeCall = scan.text(at) === "(" && (where === "file" || where === "block" || where === "parameter");
  if (mayBeCall && draft.typeFirst >= 0) {
    scan.presentation.replacePhantom(scan.index(typeFirst), "_Nonnull");
  }
  scan.record(typeFirst, {
    first: scan.index(from),
    end: Math.max(scan.endIndex(at), scan.index(from)),
    storage: draft.storage,
    const: draft.const,
    volatile: draft.volatile,
    type,
    typeFirst: scan.index(typeFirst),
    typeEnd: draft.typeEnd < 0 ? scan.index(typeFirst) : scan.endIndex(draft.typeEnd),
  });
  return { next: at, storage: draft.storage, type };
}

/** One specifier; gives `at` where none stands there. */
function specifier(scan: Scan, at: number, to: number, where: Where, draft: Draft): number {
  const text = scan.text(at);
  const { language } = scan;
  const storage = storageWord(text, language);
  if (storage !== undefined) {
    draft.storage.push(storage);
    scan.hide(at);
    return at + 1;
  }
  const qualifier = qualifiers.get(text);
  if (qualifier !== undefined) {
    if (qualifier !== "other") draft[qualifier] = true;
    scan.hide(at);
    return at + 1;
  }
  if (text === "typename") {
    scan.hide(at);
    return at + 1;
  }
  if (isTypeWord(text, language)) return typeWord(scan, at, draft);
  if (draft.type !== undefined || draft.words.length > 0) return at;
  if (text === "auto") {
    if (language === "c") {
      scan.hide(at);
      return at + 1;
    }
    return typed(draft, { kind: "auto" }, at, showAsType(scan, at));
  }
  if (recordKeywords.has(text)) {
    const found = tag(scan, at, to);
    return typed(draft, found.type, found.first, found.next);
  }
  if (typeofWords.has(text) && scan.text(at + 1) === "(") {
    const close = scan.close(at + 1, to);
    scan.show(at, "decltype");
    expression(scan, at + 2, close, noStops);
    return typed(draft, { kind: "typeof" }, at, close + 1);
  }
  return startsChain(scan, at) ? namedType(scan, at, to, where, draft) : at;
}

function typed(draft: Draft, type: RecordedType, first: number, next: number): number {
  draft.type = type;
  draft.typeFirst = first;
  draft.typeEnd = next;
  return next;
}

function showAsType(scan: Scan, at: number): number {
  scan.show(at, "size_t");
  return at + 1;
}

/** One of `unsigned long int`: the first stands for all. */
function typeWord(scan: Scan, at: number, draft: Draft): number {
  if (draft.type !== undefined) return at;
  const text = scan.text(at);
  // `typedef unsigned char bool;` declares it, and then it is a name like others.
  if (text === "bool" && scan.language === "c") {
    if (draft.words.length > 0) return at;
    if (scan.names.lookup(text) === "type") return typed(draft, { kind: "named" }, at, showAsType(scan, at));
  }
  if (draft.words.length === 0) {
    scan.show(at, "int");
    draft.typeFirst = at;
  } else scan.hide(at);
  draft.words.push(text);
  draft.typeEnd = at + 1;
  return at + 1;
}

function namedType(scan: Scan, at: number, to: number, where: Where, draft: Draft): number {
  const chain = peekChain(scan, at, to);
  if (where === "file" || where === "class") {
    const reading = readingOf(scan, chain, where);
    if (reading === "declarator") return at;
    if (reading === "macro") {
      scan.note(at, at + 1, `${scan.text(at)} is not declared and was passed over.`);
      scan.hide(at);
      return at + 1;
    }
  }
  if (where === "type" && !meansType(chain.kind) && chain.kind === "value") return at;
  if (chain.kind === undefined && chain.simple && where !== "type") {
    scan.names.declareOutside(scan.text(at), "type");
  }
  presentChain(scan, chain);
  scan.presentation.typeNames.add(scan.index(chain.last));
  if (chain.simple) showAsType(scan, at);
  // Only a type may follow this word: the grammar cannot take the name for a value.
  else scan.phantom(at, "_Nonnull");
  return typed(draft, { kind: "named" }, at, chain.next);
}

/** What a name before the declarators of a file or a class is: their type, a declarator itself, or an unknown macro. */
function readingOf(scan: Scan, chain: Chain, where: Where): "type" | "declarator" | "macro" {
  const name = scan.text(chain.last);
  const next = scan.text(chain.next);
  // Constructors and destructors, conversion operators out of their class: no type is written.
  if (name === chain.qualifier || next === "::") return "declarator";
  if (where === "class" && next === "(" && name === scan.names.className) return "declarator";
  if (meansType(chain.kind)) return "type";
  if (chain.simple && startsSpecifiers(scan, chain.next)) return "macro";
  if (scan.isName(chain.next) || next === "*" || next === "&" || next === "&&" || next === "operator")
    return "type";
  return qualifiers.has(next) ? "type" : "declarator";
}

/** `const` may follow a type's name; words that start anew cannot. */
function startsSpecifiers(scan: Scan, from: number): boolean {
  let at = from;
  while (qualifiers.has(scan.text(at))) at += 1;
  const text = scan.text(at);
  if (isTypeWord(text, scan.language) || recordKeywords.has(text)) return true;
  if (storageWord(text, scan.language) !== undefined) return true;
  if (!scan.isName(at) || !meansType(scan.names.lookup(text))) return false;
  return scan.isName(at + 1) || scan.text(at + 1) === "*";
}
