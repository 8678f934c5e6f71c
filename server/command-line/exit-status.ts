/** What the command's exit status tells a script. */
export const exitStatus = {
  /** Nothing at or above the failing level. */
  clean: 0,
  /** Findings that fail the check. */
  findings: 1,
  /** It could not do what it was asked; one line on stderr says what and where. */
  cannotDo: 2,
  /** Ctrl-C ended it: 128 and the number of the signal, as shells have it. Common practice, no source. */
  interrupted: 130,
} as const;

export type ExitStatus = (typeof exitStatus)[keyof typeof exitStatus];
