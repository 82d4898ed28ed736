/** Says who has the work open. `since` is in milliseconds since 1970 (UTC). */
export const ownerWords = ({ pid, host, since }: { pid: number; host: string; since: number }): string =>
  `Another copy has this garment open since ${new Date(since).toTimeString().slice(0, 5)} (process ${pid} on ${host}).`;
