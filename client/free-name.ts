/** The name, or where that is taken, the first that a number behind it makes: `name-2`, `name-3`. */
export async function freeName(name: string, isTaken: (name: string) => Promise<boolean>): Promise<string> {
  let free = name;
  for (let number = 2; await isTaken(free); number++) free = `${name}-${number}`;
  return free;
}
