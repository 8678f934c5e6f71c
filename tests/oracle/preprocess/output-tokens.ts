/** Strings and characters with their prefixes, raw strings, names, numbers, punctuators, and any other character. */
const TOKENS = [
  /(?:u8|[uUL])?R"([^\s()\\]{0,16})\([\s\S]*?\)\1"/,
  /(?:u8|[uUL])?"(?:[^"\\\n]|\\[\s\S])*"/,
  /(?:u8|[uUL])?'(?:[^'\\\n]|\\[\s\S])*'/,
  /[A-Za-z_$][\w$]*/,
  /\.?\d(?:[eEpP][+-]|[\w.$])*/,
  /%:%:|\.\.\.|<<=|>>=|<:|:>|<%|%>|%:|->|\+\+|--|<<|>>|[<>=!*/%+\-&^|]=|&&|\|\||##/,
  /\S/,
];
const TOKEN = new RegExp(TOKENS.map((each) => each.source).join("|"), "g");

/** The tokens that a preprocessor's output consists of; white space between them does not count. */
export function outputTokens(text: string): readonly string[] {
  return [...text.matchAll(TOKEN)].map(([token]) => token);
}
