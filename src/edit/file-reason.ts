const reasons: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file or folder any more",
  EACCES: "you are not allowed to write there",
  EPERM: "you are not allowed to write there",
  EISDIR: "this is a folder, not a file",
  ENOTDIR: "part of the path is a file, not a folder",
  EROFS: "this disk can only be read",
  ENOSPC: "the disk is full",
  EDQUOT: "your share of the disk is full",
  ENAMETOOLONG: "the name is too long",
  ELOOP: "the links lead in a circle",
  EBUSY: "another program holds it",
};

/** Why the system would not read or write a file, in plain words. */
export function fileReason(error: unknown): string {
  const code = errorCode(error);
  return reasons[code] ?? `it cannot be read or written (${code === "" ? "unknown reason" : code})`;
}

/** The system's name for what went wrong, such as ENOENT; empty where it gave none. */
export const errorCode = (error: unknown): string =>
  error instanceof Error && "code" in error ? String(error.code) : "";
