type Environment = Readonly<Record<string, string | undefined>>;

/**
 * Whether text may hold more than ASCII: the character set is named by the first of LC_ALL, LC_CTYPE and LANG that is
 * set and not empty (POSIX.1-2017, 8.2); a dumb terminal is not trusted with it.
 */
export const writesUnicode = ({ TERM, LC_ALL, LC_CTYPE, LANG }: Environment): boolean =>
  TERM !== "dumb" && /utf-?8/i.test(LC_ALL || LC_CTYPE || LANG || "");
