/**
 * Remembers what a function made of each object and the last options that came with it, for as long as the object
 * lives: most keys leave the drawing as it is.
 */
export function lastFor<Subject extends object, Options, Result>(
  make: (subject: Subject, options: Options) => Result,
): (subject: Subject, options: Options) => Result {
  const made = new WeakMap<Subject, { readonly key: string; readonly result: Result }>();
  return (subject, options) => {
    const key = JSON.stringify(options);
    const known = made.get(subject);
    if (known?.key === key) return known.result;
    const result = make(subject, options);
    made.set(subject, { key, result });
    return result;
  };
}
