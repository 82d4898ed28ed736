/**
 * Does something while the clock that tells how long a thing takes is one of its own: it stands still but for so many
 * milliseconds each time it is looked at, and can be moved on.
 *
 * @param perLook ms
 */
export function withClock<Result>(perLook: number, work: (moveOn: (ms: number) => void) => Result): Result {
  const usual = Object.getOwnPropertyDescriptor(performance, "now");
  let now = 0;
  Object.defineProperty(performance, "now", { configurable: true, value: () => (now += perLook) });
  const putBack = (): void => {
    if (usual) Object.defineProperty(performance, "now", usual);
    else Reflect.deleteProperty(performance, "now");
  };
  try {
    return work((ms) => {
      now += ms;
    });
  } finally {
    putBack();
  }
}
