// Made when it is first asked for, and once. A schema costs more to make than what it checks: a start makes few of them.
export function later<T extends object>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}
