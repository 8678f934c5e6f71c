/** What a piece of a text report is; a terminal may colour it. */
export type Role = "file" | "error" | "warning" | "info" | "place" | "mark" | "label" | "good";

export type Paint = (role: Role, text: string) => string;

/** For files, pipes and terminals without colours. */
export const plain: Paint = (_role, text) => text;

/** Select-graphic-rendition parameters of ECMA-48, 8.3.117. */
const renditions: Readonly<Record<Role, string>> = {
  file: "1",
  error: "1;31",
  warning: "1;33",
  info: "36",
  place: "2",
  mark: "31",
  label: "2",
  good: "32",
};

/** For terminals that understand ECMA-48 control sequences. */
export const coloured: Paint = (role, text) => `\u001b[${renditions[role]}m${text}\u001b[0m`;
