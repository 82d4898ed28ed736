/** Why a change cannot be made to the text of a garment file, in words for the knitter. */
export class EditError extends Error {
  override readonly name = "EditError";
}
