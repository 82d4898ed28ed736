type Reasons = Readonly<Record<string, string>>;

/** What is told where a file is given by name, to be read or written. */
const reasons: Reasons = {
  ENOENT: "there is no such file or folder",
  EACCES: "you are not allowed to read or write it",
  EPERM: "you are not allowed to read or write it",
  EISDIR: "this is a folder, not a file",
  ENOTDIR: "part of the path is a file, not a folder",
  EROFS: "this disk can only be read",
  ENOSPC: "the disk is full",
  EDQUOT: "your share of the disk is full",
  EFBIG: "a file may not become so large here",
  EIO: "the disk reports a fault",
  ENAMETOOLONG: "the name is too long",
  ELOOP: "the links lead in a circle",
  EBUSY: "another program holds it",
};

/** What is told instead where a file that was there before is to be written back. */
const savingReasons: Reasons = {
  ...reasons,
  ENOENT: "there is no such file or folder any more",
  EACCES: "you are not allowed to write there",
  EPERM: "you are not allowed to write there",
};

/** Why the system would not read or write a file that was named, in plain words. */
export const namedFileReason = (error: unknown): string => reasonFrom(reasons, error);

/** Why the system would not read or save a file that is being edited, in plain words. */
export const fileReason = (error: unknown): string => reasonFrom(savingReasons, error);

function reasonFrom(table: Reasons, error: unknown): string {
  const code = errorCode(error);
  return table[code] ?? `it cannot be read or written (${code === "" ? "unknown reason" : code})`;
}

/** The system's name for what went wrong, such as ENOENT; empty where it gave none. */
export const errorCode = (error: unknown): string =>
  error instanceof Error && "code" in error ? String(error.code) : "";
