/** A solution that the independent check refuses: a fault of the program, never of the file. */
export class RefusedFit extends Error {
  override readonly name = "RefusedFit";
}
