/** The command cannot do what it was asked; `message` is the one line that says what, where and what to do. */
export class CannotDo extends Error {
  override readonly name = "CannotDo";
}
