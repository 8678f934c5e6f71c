import type { StorageWord } from "../nodes.ts";

/** Words that name or size a basic type, standard ones and those of gcc and avr-gcc. */
const sharedTypeWords = [
  "void",
  "char",
  "short",
  "int",
  "long",
  "float",
  "double",
  "signed",
  "unsigned",
  "_Bool",
  "bool",
  "__int24",
  "__uint24",
  "__int128",
  "__signed__",
  "__signed",
  "_Complex",
  "__complex__",
  "_Float32",
  "_Float64",
  "_Fract",
  "_Accum",
  "_Sat",
];
const typeWords = {
  c: new Set(sharedTypeWords),
  "c++": new Set([...sharedTypeWords, "wchar_t", "char16_t", "char32_t", "char8_t"]),
} as const;

export function isTypeWord(text: string, language: "c" | "c++"): boolean {
  return typeWords[language].has(text);
}

/** Storage words and function specifiers by spelling. */
const storageWords: ReadonlyMap<string, StorageWord> = new Map([
  ["typedef", "typedef"],
  ["static", "static"],
  ["extern", "extern"],
  ["inline", "inline"],
  ["__inline", "inline"],
  ["__inline__", "inline"],
  ["constexpr", "constexpr"],
  ["register", "register"],
  ["virtual", "virtual"],
  ["explicit", "explicit"],
  ["friend", "friend"],
  ["mutable", "mutable"],
  ["thread_local", "thread_local"],
  ["_Thread_local", "thread_local"],
  ["__thread", "thread_local"],
]);
const onlyCpp: ReadonlySet<string> = new Set([
  "constexpr",
  "virtual",
  "explicit",
  "friend",
  "mutable",
  "thread_local",
]);

export function storageWord(text: string, language: "c" | "c++"): StorageWord | undefined {
  return language === "c" && onlyCpp.has(text) ? undefined : storageWords.get(text);
}

export const qualifiers: ReadonlyMap<string, "const" | "volatile" | "other"> = new Map([
  ["const", "const"],
  ["__const", "const"],
  ["__const__", "const"],
  ["volatile", "volatile"],
  ["__volatile__", "volatile"],
  ["__volatile", "volatile"],
  ["restrict", "other"],
  ["__restrict", "other"],
  ["__restrict__", "other"],
  ["_Atomic", "other"],
  ["_Noreturn", "other"],
  ["__extension__", "other"],
  // Address spaces of avr-gcc.
  ["__flash", "const"],
  ["__memx", "const"],
]);

export const recordKeywords: ReadonlySet<string> = new Set(["struct", "union", "class", "enum"]);

export const typeofWords: ReadonlySet<string> = new Set([
  "decltype",
  "typeof",
  "__typeof__",
  "__typeof",
  "__decltype",
]);

export const namedCasts: ReadonlySet<string> = new Set([
  "static_cast",
  "reinterpret_cast",
  "const_cast",
  "dynamic_cast",
]);

export const alignofWords: ReadonlySet<string> = new Set(["alignof", "_Alignof", "__alignof__", "__alignof"]);

export const asmWords: ReadonlySet<string> = new Set(["asm", "__asm__", "__asm"]);

export const attributeWords: ReadonlySet<string> = new Set(["__attribute__", "__attribute"]);

/** C++ [lex.digraph]: other spellings of operators. */
export const alternativeOperators: ReadonlyMap<string, string> = new Map([
  ["and", "&&"],
  ["or", "||"],
  ["not", "!"],
  ["bitand", "&"],
  ["bitor", "|"],
  ["xor", "^"],
  ["compl", "~"],
  ["not_eq", "!="],
  ["and_eq", "&="],
  ["or_eq", "|="],
  ["xor_eq", "^="],
]);
export const digraphs: ReadonlyMap<string, string> = new Map([
  ["<:", "["],
  [":>", "]"],
  ["<%", "{"],
  ["%>", "}"],
]);

const keywordsOfBoth = [
  "break",
  "case",
  "continue",
  "default",
  "do",
  "else",
  "for",
  "goto",
  "if",
  "return",
  "sizeof",
  "switch",
  "while",
  "struct",
  "union",
  "enum",
  "typedef",
  "static",
  "extern",
  "register",
  "inline",
  "__inline",
  "__inline__",
  "const",
  "__const",
  "__const__",
  "volatile",
  "__volatile__",
  "__volatile",
  "__restrict",
  "__restrict__",
  "__extension__",
  "_Static_assert",
  "__attribute__",
  "__attribute",
  "asm",
  "__asm__",
  "__asm",
  "__typeof__",
  "__typeof",
  "typeof",
  "_Alignof",
  "__alignof__",
  "__alignof",
  "_Alignas",
];
const keywordsOfCpp = [
  ...keywordsOfBoth,
  "class",
  "namespace",
  "template",
  "typename",
  "using",
  "operator",
  "new",
  "delete",
  "this",
  "true",
  "false",
  "nullptr",
  "public",
  "private",
  "protected",
  "try",
  "catch",
  "throw",
  "noexcept",
  "static_assert",
  "auto",
  "decltype",
  "alignas",
  "alignof",
  "virtual",
  "explicit",
  "friend",
  "mutable",
  "constexpr",
  "thread_local",
  "static_cast",
  "reinterpret_cast",
  "const_cast",
  "dynamic_cast",
];

/** Words that the grammar has to see as they are. */
export const keywords = {
  c: new Set([...keywordsOfBoth, "restrict", "auto", "_Noreturn"]),
  "c++": new Set(keywordsOfCpp),
} as const;
