/** Types that constants can have, by the number under which the compiled object tells them. */
export const typeCodes: readonly string[] = [
  "other",
  "bool",
  "char",
  "signed char",
  "unsigned char",
  "short",
  "unsigned short",
  "int",
  "unsigned int",
  "long",
  "unsigned long",
  "long long",
  "unsigned long long",
  "float",
  "double",
  "long double",
];

const spelling = (name: string, language: "c" | "c++"): string =>
  name === "bool" && language === "c" ? "_Bool" : name;

/** A C expression for the number of another expression's type. */
export function cTypeCode(expression: string): string {
  const choices = typeCodes.slice(1).map((name, index) => `${spelling(name, "c")}: ${index + 1}`);
  return `_Generic((${expression}), ${choices.join(", ")}, default: 0)`;
}

/** Declarations behind `cppTypeCode`. */
export const cppTypeCodes = [
  "template <class T> struct Code { static constexpr unsigned char value = 0; };",
  ...typeCodes
    .slice(1)
    .map(
      (name, index) =>
        `template <> struct Code<${name}> { static constexpr unsigned char value = ${index + 1}; };`,
    ),
  "template <class T> struct Plain { typedef T type; };",
  "template <class T> struct Plain<T &> { typedef T type; };",
  "template <class T> struct Plain<const T> { typedef T type; };",
  "template <class T> struct Plain<const T &> { typedef T type; };",
].join("\n");

export function cppTypeCode(expression: string): string {
  return `Code<Plain<decltype(${expression})>::type>::value`;
}
