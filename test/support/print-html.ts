import { execFile } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";

/** A Chromium to print with: the one that the environment names, or one on the path. */
export const chromium = [
  process.env.EVENROW_CHROMIUM ?? "",
  ...(process.env.PATH ?? "")
    .split(delimiter)
    .flatMap((folder) => [join(folder, "chromium"), join(folder, "chromium-browser")]),
].find((file) => file !== "" && existsSync(file));

/**
 * Prints an HTML document as a browser does, on paper of that size.
 *
 * @param paper a page size of CSS, which stands for the choice in a print dialogue
 */
export async function printHtml(html: string, paper: "A4" | "letter"): Promise<Uint8Array> {
  if (chromium === undefined) throw new Error("there is no Chromium to print with");
  const folder = mkdtempSync(join(tmpdir(), "evenrow-print-"));
  try {
    const page = join(folder, "sheet.html");
    const pdf = join(folder, "sheet.pdf");
    writeFileSync(page, html.replace("</head>", `<style>@page { size: ${paper} }</style></head>`));
    await run(chromium, [
      "--headless",
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      `--user-data-dir=${join(folder, "profile")}`,
      "--no-pdf-header-footer",
      `--print-to-pdf=${pdf}`,
      page,
    ]);
    return new Uint8Array(readFileSync(pdf));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const run = (file: string, words: readonly string[]): Promise<void> =>
  new Promise((resolve, reject) => {
    execFile(file, words, (error) => (error ? reject(error) : resolve()));
  });
