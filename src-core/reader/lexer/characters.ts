/** Classes of characters, as C and C++ sort them. */

const IDENTIFIER_START = 1;
const IDENTIFIER_PART = 2;
const DIGIT = 4;
const BLANK = 8;

const CLASSES = new Uint8Array(128);
for (let code = 0; code < 128; code += 1) {
  const character = String.fromCharCode(code);
  if (/[A-Za-z_$]/.test(character)) CLASSES[code] = IDENTIFIER_START | IDENTIFIER_PART;
  if (/[0-9]/.test(character)) CLASSES[code] = IDENTIFIER_PART | DIGIT;
  if (/[ \t\v\f\r]/.test(character)) CLASSES[code] = BLANK;
}

/**
 * Beyond ASCII letters of every script count as letters, which is more than the standards allow; spaces,
 * typographic quotes and the replacement character do not, so that pasted text does not hide in a name.
 */
function isForeignLetter(code: number): boolean {
  // Written so that NaN, the code behind the end of a text, is no letter.
  if (!(code > 0xa0) || code === 0xad || code === 0xd7 || code === 0xf7) return false;
  if (code >= 0x2000 && code <= 0x206f) return false;
  return code !== 0x3000 && code !== 0xfeff && code !== 0xfffd;
}

export function isIdentifierStart(code: number): boolean {
  return code < 128 ? ((CLASSES[code] ?? 0) & IDENTIFIER_START) !== 0 : isForeignLetter(code);
}

export function isIdentifierPart(code: number): boolean {
  return code < 128 ? ((CLASSES[code] ?? 0) & IDENTIFIER_PART) !== 0 : isForeignLetter(code);
}

export function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

/** White space that does not end a line. A carriage return counts: `\r\n` then ends at its `\n`. */
export function isBlank(code: number): boolean {
  return code < 128 && ((CLASSES[code] ?? 0) & BLANK) !== 0;
}

export function isHexDigit(code: number): boolean {
  return isDigit(code) || (code >= 65 && code <= 70) || (code >= 97 && code <= 102);
}
