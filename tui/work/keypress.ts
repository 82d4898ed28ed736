/** What node:readline tells of a key. */
export interface Keypress {
  readonly sequence?: string | undefined;
  readonly name?: string | undefined;
  readonly ctrl?: boolean;
  readonly meta?: boolean;
}

const named: Readonly<Record<string, string>> = {
  return: "enter",
  enter: "enter",
  space: "space",
  backspace: "backspace",
  escape: "escape",
  tab: "tab",
  up: "up",
  down: "down",
  left: "left",
  right: "right",
  home: "home",
  end: "end",
  pageup: "pageup",
  pagedown: "pagedown",
};

const isFunctionKey = (name: string): boolean => /^f([1-9]|1\d|2[0-4])$/.test(name);

/** The key's name as the key table has it; undefined for what is no key of ours. */
export function keyOf(
  character: string | undefined,
  { name, ctrl, meta, sequence }: Keypress,
): string | undefined {
  if (ctrl === true) return name !== undefined && name.length === 1 ? `ctrl-${name}` : undefined;
  if (name !== undefined && (named[name] || isFunctionKey(name))) return named[name] ?? name;
  if (meta === true) return undefined;
  const text = character ?? sequence ?? "";
  return [...text].length === 1 && !/\p{C}/u.test(text) ? text : undefined;
}

/** The key that an option names, in any case; undefined where it names none. */
export function stepKeyNamed(words: string): string | undefined {
  if ([...words].length === 1) return words === " " ? "space" : words;
  const key = words.toLowerCase().replaceAll(/[ _-]/g, "");
  return isFunctionKey(key) || Object.values(named).includes(key) ? key : undefined;
}
