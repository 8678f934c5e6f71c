/** The system's code of a failed file operation, such as `ENOENT`; "unknown" for any other error. */
export function errorCode(error: unknown): string {
  return error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : "unknown";
}

/** The code in words, for those that a user meets; other codes speak for themselves. */
export function reasonOf(code: string): string {
  switch (code) {
    case "EACCES":
    case "EPERM":
    case "EROFS":
      return "permission denied";
    case "ENOENT":
      return "no such file or folder";
    case "ENOTDIR":
      return "a part of its path is no folder";
    case "ELOOP":
      return "its links run in a circle";
    case "EISDIR":
      return "it is a folder";
    case "ENOSPC":
      return "the disk is full";
    default:
      return code;
  }
}
