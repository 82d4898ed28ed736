/**
 * The commands that are bundled into one script together with its compiled code, because they are run over and over. The
 * others ask a person or open the screen; they, and help, which needs very little, are loaded part by part.
 */
export const quickCommands: readonly string[] = [
  "fit",
  "why",
  "tradeoff",
  "sheet",
  "chart",
  "check",
  "model",
];
