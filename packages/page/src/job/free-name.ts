/** The name itself, or with the first number behind it under which it is not taken. */
export function freeName(name: string, isTaken: (name: string) => boolean): string {
  let free = name;
  for (let count = 2; isTaken(free); count++) free = `${name} ${count}`;
  return free;
}
