import { cordStitchMm, groundStitch } from "../cloth/gauge.ts";
import type { Fit } from "../fit/fit.ts";
import { loopMm } from "../fit/loop.ts";
import type { Garment } from "../garment/garment.ts";
import { listed } from "../report/words.ts";
import { partOf } from "./body-part.ts";
import { CORD_LIMITS } from "./cord-limits.ts";
import { isForbidden } from "./cord-rules.ts";
import { wearerGroup } from "./wearer-group.ts";
import { wearerWords } from "./wearer-words.ts";

/**
 * What to say of a garment that carries a cord, a sentence or two each; nothing where it carries none. Limits are told
 * as values to check: the standards are revised, and what is worn where decides which of them holds.
 */
export function cautionsFor(fit: Fit): readonly string[] {
  if (!isLaid(fit)) return [];
  const { garment } = fit;
  if (wearerGroup(garment.wearer) === "grown") return [endsInside];
  return [whoWords(garment), ...loopWords(fit), ...partWords(garment), endsInside, ...valuesToCheck];
}

/**
 * The same in short, where the fit itself is to be read: the danger, what of it this garment has, and where the rest
 * stands, which is the sheet.
 */
export function shortCautionsFor(fit: Fit): readonly string[] {
  const { garment } = fit;
  const group = wearerGroup(garment.wearer);
  if (group === "grown" || !isLaid(fit)) return cautionsFor(fit);
  if (group !== "not said")
    return [whoWords(garment), ...largestLoopWords(fit), ...partWords(garment), standardsInShort];
  return [
    "A cord can catch and strangle a child: keep every cord away from hood and neck, and say who will wear this (wearer: { age, height }), which the file does not.",
    ...forbiddenWords(garment),
    ...largestLoopWords(fit),
    standardsInShort,
  ];
}

const standardsInShort =
  "Check EN 14682, ASTM F1816 and 16 CFR 1120.3; the rules where the child lives go before them. The command sheet says all of this in full.";

/** Where a cord lies that a young child may not have there, of a garment whose wearer is not said. */
function forbiddenWords(garment: Garment): readonly string[] {
  const forYoung = { ...garment, wearer: { ageYears: young.years, path: [] } };
  const pieces = garment.placements
    .filter((placement) => isForbidden(forYoung, placement))
    .map(({ piece }) => piece);
  if (pieces.length === 0) return [];
  return [
    `For a child up to ${young.years} years no cord may lie where one lies on ${listed([...new Set(pieces)])}.`,
  ];
}

/** How far round the largest loop of all is; and what is known to limit it, where it is larger. */
function largestLoopWords(fit: Fit): readonly string[] {
  const largest = Math.max(0, ...loopsOf(fit).map(({ mm }) => mm));
  if (largest === 0) return [];
  const over = largest > mostLoop ? `, which is over the ${mostLoop} mm that a young child may have` : "";
  return [`Between two hangings cord and cloth together are up to ${Math.ceil(largest)} mm round${over}.`];
}

const isLaid = ({ looks }: Fit): boolean => looks.some(({ motif }) => motif.kind === "cord");

const endsInside =
  "Fasten both ends of every cord inside the garment: no end hangs free, none is knotted, nothing is sewn to it.";

function whoWords({ wearer }: Garment): string {
  const { loopMm: most, neckMm } = CORD_LIMITS;
  const kept = {
    young: `no cord lies on a hood, a collar or the back of the neck (from ${neckMm / 10} cm below it), and no loop of cord and cloth is more than ${most} mm round`,
    older: `at the neck no loop of cord and cloth is more than ${most} mm round`,
  };
  const group = wearerGroup(wearer);
  if (!wearer || group === "not said" || group === "grown")
    return (
      "A cord can catch and strangle. The file does not say who will wear this (wearer: { age, height }): for a child" +
      " up to 14 years keep every cord away from hood and back of the neck, and leave no loop that something can catch in."
    );
  const grown = wearer.ageYears === undefined ? " If the wearer is grown, say the age." : "";
  return `A cord can catch and strangle, and this is for ${wearerWords(wearer)}. Kept here: ${kept[group]}.${grown}`;
}

/** How far round the largest loop of each motif is, so that it can be held against a limit. */
const loopWords = (fit: Fit): readonly string[] =>
  loopsOf(fit).map(
    ({ motif, mm }) =>
      `Between two hangings of ${motif} cord and cloth together are up to ${Math.ceil(mm)} mm round.`,
  );

function loopsOf({
  garment,
  looks,
  placements,
}: Fit): readonly { readonly motif: string; readonly mm: number }[] {
  const { cord } = garment.gauge;
  if (!cord) return [];
  const stitch = groundStitch(garment.gauge);
  return looks.flatMap(({ motif }) => {
    const loops = placements
      .filter((placement) => placement.motif === motif.name)
      .flatMap(({ sections }) => sections.flatMap(({ look, joins }) => [...look.segments, ...joins]))
      .map((segment) => loopMm(segment, stitch, cordStitchMm(cord)));
    return loops.length === 0 ? [] : [{ motif: motif.name, mm: Math.max(...loops) }];
  });
}

/** What was taken from a piece's name, and what was not known. */
function partWords({ pieces, placements }: Garment): readonly string[] {
  const laid = pieces
    .filter(({ name }) => placements.some(({ piece }) => piece === name))
    .map((piece) => ({ name: piece.name, ...partOf(piece) }));
  const guessed = laid.filter(({ saidBy }) => saidBy !== "file");
  if (guessed.length === 0) return [];
  const taken = guessed.map(({ name, part, saidBy }) =>
    saidBy === "name" ? `${name} as ${part}` : `${name} as neither hood, collar nor back`,
  );
  return [
    `Where pieces lie is read from their names: ${listed(taken)}. Where that is wrong, write part: in the piece.`,
  ];
}

const { young, older, freeEndMm, loopMm: mostLoop } = CORD_LIMITS;

/** Public summaries of the standards; see `CORD_LIMITS` and, for the United States, 16 CFR 1120.3 and its agency's questions and answers. */
const valuesToCheck = [
  "Check in the current EN 14682 (Europe: cords on children's clothing up to 14 years, decorative ones too):" +
    ` up to ${young.years} years or ${young.heightMm / 10} cm no cord at hood or back of the neck, no drawstring at the neck,` +
    ` and no fixed loop over ${mostLoop} mm round; up to ${older.years} years cords at the neck of at most ${freeEndMm.neck} mm;` +
    ` free ends elsewhere of at most ${freeEndMm.elsewhere} mm.`,
  "Check in the current ASTM F1816 and 16 CFR 1120.3 (United States: drawstrings on children's outerwear): none at" +
    " hood or neck in sizes 2T to 12; in sizes 2T to 16 at most 3 in (75 mm) outside the channel at waist and bottom.",
  "These values may have changed, the rules where the child lives go before them, and nothing here is legal advice.",
];
