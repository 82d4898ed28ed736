import { groundStitch } from "../../cloth/gauge.ts";
import { type OutlineDifference, outlineDifferences } from "../../cloth/outline-differences.ts";
import { diagnosticJson, renderDiagnostics } from "../../diagnostics/render.ts";
import type { Garment } from "../../garment/garment.ts";
import { differenceLines, differencesToJson } from "../../report/outline-differences.ts";
import { counted } from "../../report/words.ts";
import { wrap } from "../../report/wrap.ts";
import type { CommandRun } from "../command.ts";
import { deliver, jsonText, textWidth } from "../deliver.ts";
import { exitCodes } from "../exit-codes.ts";
import { fileOperand, loadGarment } from "../load-garment.ts";

export const run: CommandRun = async (input) => {
  const { garment, range, diagnostics, name, source } = await loadGarment(
    fileOperand(input, "check"),
    input.terminal,
  );
  const edges = range
    ? range.sizes.flatMap((size) => edgesOf(size.garment, size.name))
    : garment
      ? edgesOf(garment)
      : [];
  const errors = diagnostics.filter(({ severity }) => severity === "error").length;
  if (input.options.json === true)
    await deliver(
      input,
      jsonText({
        format: "evenrow-check/1",
        sound: garment !== undefined,
        diagnostics: diagnostics.map((one) => diagnosticJson(one, name)),
        edges: edges.flatMap(({ piece, size, differences }) =>
          differencesToJson(piece, differences).map((one) => ({
            ...(size !== undefined && { size }),
            ...one,
          })),
        ),
      }),
    );
  else {
    const lines = edges.flatMap(({ piece, size, differences }) =>
      differenceLines(size === undefined ? piece : `size ${size}, ${piece}`, differences),
    );
    const parts = [
      ...(diagnostics.length > 0 ? [renderDiagnostics(diagnostics, { file: name, source })] : []),
      ...(lines.length > 0 ? [nearness(lines, textWidth(input.terminal.columns))] : []),
    ];
    if (parts.length > 0) await deliver(input, parts.join("\n\n"));
  }
  const verdict = errors === 0 ? "reads well" : `has ${counted(errors, "mistake")}`;
  input.terminal.say(`${name} ${verdict}.`);
  return errors === 0 ? exitCodes.done : exitCodes.wrongInput;
};

interface PieceEdges {
  readonly piece: string;
  readonly size?: string;
  readonly differences: readonly OutlineDifference[];
}

const edgesOf = ({ pieces, gauge }: Garment, size?: string): readonly PieceEdges[] =>
  pieces.map((piece) => ({
    piece: piece.name,
    ...(size !== undefined && { size }),
    differences: outlineDifferences(piece, groundStitch(gauge)),
  }));

const nearness = (lines: readonly string[], width: number): string =>
  [
    "How near the knitted edges come to the outlines",
    ...lines.flatMap((line) => wrap(`- ${line}`, width, 2)),
  ].join("\n");
