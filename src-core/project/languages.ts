/** What the sources of firmware are called. */

export type Language = "c" | "c++";

const UNIT_EXTENSIONS: Readonly<Record<string, Language>> = {
  c: "c",
  cpp: "c++",
  cc: "c++",
  cxx: "c++",
};

const HEADER_EXTENSIONS: ReadonlySet<string> = new Set(["h", "hh", "hpp", "hxx"]);

/** In lower case, without the dot; empty for none. */
function extensionOf(name: string): string {
  const dot = name.lastIndexOf(".");
  return dot <= 0 ? "" : name.slice(dot + 1).toLowerCase();
}

/** The language of a file that is a translation unit by itself; undefined for any other file. */
export function unitLanguage(name: string): Language | undefined {
  const extension = extensionOf(name);
  // By the compilers' own convention a capital .C is C++.
  if (extension === "c" && name.endsWith(".C")) return "c++";
  return Object.hasOwn(UNIT_EXTENSIONS, extension) ? UNIT_EXTENSIONS[extension] : undefined;
}

export function isSketchFile(name: string): boolean {
  return extensionOf(name) === "ino";
}

export function isHeader(name: string): boolean {
  return HEADER_EXTENSIONS.has(extensionOf(name));
}

/** Headers whose extension says C++; `.h` is for those who include it to decide. */
export function headerLanguage(name: string): Language | undefined {
  return isHeader(name) && extensionOf(name) !== "h" ? "c++" : undefined;
}
