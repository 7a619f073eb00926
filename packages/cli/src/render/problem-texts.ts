import { input, type Lists, noAnswer, type Texts } from "@noodlewright/core/figure";

/** Why a workbook cannot be read; `at` is the cell or the part that it is about. */
export interface NoWorkbook {
  readonly why: keyof ReturnType<typeof noWorkbook>;
  readonly at?: string;
}

/** Problems of files, flags and words of the command line, and their sentences. */
export const catalogue = {
  "file.empty": input(({ wanted }: { readonly wanted: "spec" | "formula" }) => ({
    found: "nothing",
    expected: `a ${wanted}`,
    advice: wanted === "spec" ? "start from `noodlewright new`" : "write a line for each ingredient, with its amount",
  })),
  "file.no-input": input(() => ({
    found: "nothing to read: standard input is this terminal",
    expected: "a spec from a file or another command",
    advice: "name the file of the spec, or send it in, such as < noodle.yaml",
  })),
  "file.too-large": input(
    ({ of, most }: { readonly of: "bytes" | "bytes left" | "marks" | "values" } & Texts<"most">) => {
      const counted = of === "marks" ? "marks, words and line ends" : "values";
      return of === "bytes" || of === "bytes left"
        ? {
            found: `more than ${most}${of === "bytes" ? "" : ", with the files before it"}`,
            expected: `at most ${most}`,
            advice: thisSpec,
          }
        : {
            found: `more than ${most} ${counted}`,
            expected: `at most ${most}`,
            advice: "leave out what this noodle does not use",
          };
    },
  ),
  "file.not-text": input(({ packed }: { readonly packed: boolean }) => ({
    found: packed ? "a packed file, as workbooks are" : "a file that is not text",
    expected: "a text in UTF-8",
    advice: packed
      ? "make a spec of a workbook with `noodlewright new noodle.yaml --from formula.xlsx`"
      : "check its name, or save it as plain text in UTF-8",
  })),
  "file.workbook": input(({ why, at = "" }: NoWorkbook) => {
    const [found, advice] = noWorkbook(at)[why];
    return { found, expected: "a workbook (.xlsx) with the values that it shows", advice };
  }),
  "file.unreadable": input(({ error, folder }: Texts<"error"> & Partial<Texts<"folder">>) => {
    const [found, advice] =
      folder === undefined
        ? (unreadable[error] ?? [`a file that cannot be read (${error})`, "check the file"])
        : error === "EACCES"
          ? [`the folder ${folder}, which may not be read`, "check its permissions"]
          : [`no folder ${folder}`, "check its name"];
    return { found, expected: `a ${folder === undefined ? "file" : "folder"} that can be read`, advice };
  }),
  "file.no-kitchen": input(() => ({
    found: "a file without materials or machines",
    expected: "a file with `materials:` or `machines:`",
    advice: "name the kitchen file, or leave it out",
  })),
  "file.tab": input(() => ({
    found: "a tab at the start of the line",
    expected: "spaces",
    advice: "indent with spaces",
  })),
  "file.decimal-comma": input(({ written, meant, lines }: Texts<"written"> & Lists<"meant" | "lines">) => ({
    found: `${written}: within braces a comma ends the value`,
    expected: "a point before decimals, and nothing between thousands",
    advice: `write ${meant.join(" or ")}`,
    lines,
  })),
  "file.several": input(() => ({
    found: "a second spec after a line of `---`",
    expected: "one spec in a file",
    advice: "split the file at its `---` lines",
  })),
  "file.too-deep": input(() => ({
    found: "brackets or indents many levels deep",
    expected: "a spec, which is a few levels deep",
    advice: thisSpec,
  })),
  "file.syntax": input(({ detail, slip }: Texts<"detail"> & { readonly slip: Slip }) => {
    const [found, expected, advice] = slips[slip];
    return { found: found || `something that cannot be read as YAML: ${detail}`, expected, advice };
  }),
  "file.duplicate-key": input(({ key }: Texts<"key">) => ({
    found: `the key ${key} a second time`,
    expected: "every key once",
    advice: "remove one of them",
  })),
  "file.alias": input(({ alias }: Texts<"alias">) => ({
    found: `*${alias}, which stands for nothing`,
    expected: `a value marked with \`&${alias}\` further up`,
    advice: `put \`&${alias}\` before the value that is meant, or write the value out here`,
  })),
  "file.aliases": input(({ most }: Texts<"most">) => ({
    found: `values taken over with \`*\` more than ${most} times in all`,
    expected: `at most ${most} times`,
    advice: "write the values out in place of `*` and their names",
  })),
  "file.there": input(() => ({
    found: "a file of this name, which is there already",
    expected: "a new file",
    advice: "name another file: this one is kept as it is",
  })),
  "file.input": input(() => ({
    found: "a file that this answer was read from",
    expected: "a file of its own for the answer",
    advice: "name another file: what was read is never written over",
  })),
  "file.foreign": input(() => ({
    found: "a file that noodlewright did not write",
    expected: "a new file, or one that it wrote",
    advice: "name another file, or write over it with --force",
  })),
  "file.unwritable": input(({ error = "" }: Partial<Texts<"error">>) => {
    const [found, advice] = unwritable[error] ?? [
      `a file that cannot be written${error === "" ? "" : ` (${error})`}`,
      "check the folder and the room on the disk",
    ];
    return { found, expected: "a file in a folder that is there", advice };
  }),
  "write.set": input(() => ({
    found: "a value that --set says and the file does not",
    expected: "amounts found for what the file says",
    advice: "write the value into the file first",
  })),
  "write.both": input(() => ({
    found: "a spec to be written into its own file and into another one",
    expected: "one place to write to",
    advice: "leave out --write to write the other file alone, or -o to change the spec itself",
  })),
  "write.no-file": input(() => ({
    found: "no file that a spec stands in",
    expected: "a file to write into",
    advice: "name the file of the spec; a spec from standard input goes to another file with -o",
  })),
  "write.shared": input(
    ({ anchor, stands, lines }: Texts<"anchor"> & Lists<"lines"> & { readonly stands: "here" | "elsewhere" }) => {
      const there = `${lines.length === 1 ? "line" : "lines"} ${lines.join(", ")}`;
      return stands === "here"
        ? {
            found: `a value marked \`&${anchor}\`, which ${there} ${lines.length === 1 ? "takes" : "take"} over as \`*${anchor}\`: a change here would change it there too`,
            expected: "a value of its own at each place",
            advice: `write the value out in ${there}, in place of \`*${anchor}\`; then ask again`,
          }
        : {
            found: `\`*${anchor}\`, which stands for what is written in ${there}: a change would have to be made there`,
            expected: "a value of its own at each place",
            advice: `copy what stands at \`&${anchor}\` in ${there} to here, in place of \`*${anchor}\`; then ask again`,
          };
    },
  ),
  "write.in-place": input(({ line }: Texts<"line">) => ({
    found: "a value that cannot be changed where it stands, such as one written over several lines",
    expected: "the key and its value on one line",
    advice: "write the found value there yourself, or put the value on one line and ask again",
    lines: [line],
  })),
  "flag.beside-spec": input(() => ({
    found: "this flag beside `--spec`, which says the same",
    expected: "one of the two",
    advice: "leave one of them out; `--set` changes a value of the spec",
  })),
  "command.unknown": input(({ command, group, nearest }: Texts<"command" | "group"> & Lists<"nearest">) => ({
    found: `no command "${command}"`,
    expected: "a command that there is",
    advice: didYouMean(nearest, `\`noodlewright ${group}--help\` lists them`),
  })),
  "command.missing": input(({ group }: Texts<"group">) => ({
    found: "no command",
    expected: group === "" ? "a command first" : `what to do with ${group.trim()}`,
    advice: `\`noodlewright ${group}--help\` lists them`,
  })),
  "flag.early": input(() => ({
    found: "a flag before the command",
    expected: "the command first",
    advice: "write the flag behind it",
  })),
  "flag.unknown": input(({ nearest }: Lists<"nearest">) => ({
    found: "a flag that this command does not have",
    expected: "one of its flags",
    advice: didYouMean(nearest, "--help behind the command lists them"),
  })),
  "flag.switch": input(({ written }: Texts<"written">) => ({
    found: written,
    expected: "the flag alone",
    advice: "leave out = and what stands behind it",
  })),
  "flag.other-form": input(({ form }: Texts<"form">) => ({
    found: "this flag without the form that it is for",
    expected: `the flag beside --format ${form}`,
    advice: `write --format ${form}, or leave the flag out`,
  })),
  "word.extra": input(({ word }: Texts<"word">) => ({
    found: `"${word}", one word too many`,
    expected: "nothing more behind the command",
    advice: "leave it out, or put quotes round a name of several words",
  })),
  "word.missing": input(({ words }: Lists<"words">) => ({
    found: "a word too few",
    expected: words.join(", then "),
    advice: "write it behind the command",
  })),
  "flag.missing": input(({ wanted, example }: Texts<"wanted" | "example">) => ({
    found: "nothing",
    expected: wanted,
    advice: `write it like ${example}`,
  })),
  "strength.unreadable": input(({ written, forms }: Texts<"written" | "forms">) => ({
    found: written,
    expected: `a strength: ${forms}`,
    advice: "write it in one of these ways, with its unit",
  })),
  "alkalinity.unreadable": input(({ written, forms }: Texts<"written" | "forms">) => ({
    found: written,
    expected: forms,
    advice: "copy it from the label",
  })),
  "normality.unreadable": input(({ written }: Texts<"written">) => ({
    found: written,
    expected: 'a normality such as "1 N"',
    advice: "read it off the bottle of acid",
  })),
  "ratio.unreadable": input(({ written, products }: Texts<"written"> & Lists<"products">) => ({
    found: written,
    expected: `a part for each of the ${products.length} products, such as "${products.map((_, index) => index + 1).join(" to ")}"`,
    advice: "write the parts in the order of the products",
  })),
  "weighing.division": input(({ written }: Texts<"written">) => ({
    found: written,
    expected: "the smallest step of the scale, above 0",
    advice: "read it off the scale",
  })),
  "convert.products": input(({ twice }: Partial<Texts<"twice">>) =>
    twice === undefined
      ? { found: "more than two products", expected: "one product or two", advice: "take two of them" }
      : { found: `${twice} twice`, expected: "two different products", advice: "name it once" },
  ),
  "stock.loads": input(({ written }: Texts<"written">) => ({
    found: written,
    expected: "a whole number of loads a day",
    advice: "write it like --loads 4",
  })),
  "strength.reading": input(({ written }: Texts<"written">) => ({
    found: written,
    expected: "a density or degrees Baumé",
    advice: 'write it like "24.5 °Bé" or "1.21 g/mL"',
  })),
  "strength.error": input(({ written }: Texts<"written">) => ({
    found: written,
    expected: "an error in the unit of the reading",
    advice: "write both in one unit",
  })),
  "replace.missing": input(() => ({
    found: "no name of what is missing",
    expected: "a flour or an ingredient of the spec",
    advice: "write it like --missing 'rye flour'",
  })),
  "cards.out-missing": input(() => ({
    found: "no folder to write to",
    expected: "a folder, such as -o cards",
    advice: "name the folder with -o",
  })),
  "set.no-spec": input(() => ({
    found: "no spec to set a value of",
    expected: "a spec file before it",
    advice: "name the spec, or say flour and water by their own flags",
  })),
  "path.unreadable": input(({ said }: Texts<"said">) => ({
    found: `"${said}"`,
    expected: "a key of the spec, = and its value",
    advice: "write it like 'water.added=38 %', 'flours[0].amount=60 %' or 'flours.bread flour.amount=60 %'",
  })),
  "file.not-named": input(() => ({
    found: "no file to write",
    expected: "the name of a file: a workbook is not for the screen",
    advice: "write one, such as -o noodle.xlsx",
  })),
  "cards.none": noAnswer(({ folder }: Texts<"folder">) => ({
    found: `no spec with a batch in ${folder}`,
    expected: "a folder with specs that state a batch",
    advice: "name another folder, or write `batch:` in the specs",
  })),
  "figure.not-there": input(({ id, count, nearest }: Texts<"id" | "count"> & Lists<"nearest">) => ({
    found: `no figure "${id}"`,
    expected: `one of the ${count} figures behind this answer`,
    advice: `${nearest.length > 0 ? `did you mean ${nearest.join(" or ")}? ` : ""}--format json lists them all under "figures"`,
  })),
};

function didYouMean([nearest]: readonly string[], otherwise: string): string {
  return nearest === undefined ? otherwise : `did you mean ${nearest}?`;
}

/** What is wrong with the writing of a file. */
export type Slip = keyof typeof slips;

const keyAndValue = "a key, a colon, a space and the value, such as `salt: 1 %`";

const slips = {
  "no colon": [
    "a line without a colon and a space behind its key",
    keyAndValue,
    "write the colon, and a space after it",
  ],
  "two colons": [
    "a value with a colon in it, or with keys below it",
    "one value behind a key, or keys on the lines below it",
    "put a text with a colon in quotes; begin the keys of a section all in the same column, and leave a space after `-`",
  ],
  "no comma": [
    "a key right behind a value, without a comma",
    "a comma between the two",
    "write a comma before the key",
  ],
  "open bracket": [
    "a bracket, `{` or `[`, that is not closed before this",
    "`}` or `]` at the end of what it opens",
    "close it with its own kind, the inner one first",
  ],
  "open quote": ["a quote that is not closed", "a quote at both ends", "close it, or leave both out"],
  indent: [
    "a line that begins in another column than those it goes with",
    "the keys of a section, or the `-` of a list, one below the other",
    "indent it as the lines above it",
  ],
  "first sign": [
    "a value that begins with a sign that YAML keeps for itself",
    "the value in quotes",
    'write a text in quotes, such as "@home", and a number before its unit, such as `36 %`',
  ],
  comment: [
    "a comment after // or /*, taken for a key",
    "a key, or a comment after #",
    "begin the comment with # in place of // or /*, or take it out: JSON has none",
  ],
  braces: [
    "braces or brackets where a name should stand",
    keyAndValue,
    "fill in what is still in braces, or put a text with braces in quotes",
  ],
  another: ["", "YAML or JSON", "check indents, colons and quotes here"],
} as const satisfies Readonly<Record<string, readonly [found: string, expected: string, advice: string]>>;

/** What a file of a spreadsheet is that cannot be read, and what to do. */
function noWorkbook(at: string) {
  const again = "save it from the spreadsheet again, as .xlsx or as .csv";
  const asWorkbook = "save it from the spreadsheet as .xlsx";
  return {
    damaged: ["an .xlsx file that is damaged or not complete", again],
    another: ["a packed file that is no workbook", again],
    "too large": [
      "a workbook with more in it than any formula has",
      "save the sheet of the formula alone, as .xlsx or as .csv",
    ],
    "not worked out": [
      `a workbook whose formulas were never worked out: ${at} holds no result`,
      "open it in a spreadsheet, save it there, and read it again",
    ],
    "part missing": [`an .xlsx file without its part ${at}`, again],
    locked: [
      "a workbook that is locked with a password",
      "save it from the spreadsheet without the password, as .xlsx",
    ],
    older: ["a workbook in the older format (.xls)", asWorkbook],
    "open document": ["a workbook in the OpenDocument format (.ods)", asWorkbook],
    "cells alone": [
      "the first sheet of a workbook that was written here, without its spec",
      "read the workbook (.xlsx) itself: it keeps the whole spec",
    ],
  } as const;
}

const thisSpec = "check that this is the spec";

/** What the codes of the system mean. */
type OfSystem = Readonly<Record<string, readonly [found: string, advice: string]>>;

const noFolder = ["no folder for this file", "make the folder first, or name another"] as const;

const unwritable: OfSystem = {
  "no file": ["a folder, a pipe or a device", "name a file, or print with -"],
  ENOENT: noFolder,
  ENOTDIR: noFolder,
  EEXIST: ["a file where a folder is wanted", "name another folder"],
  EACCES: ["a place that may not be written to", "check the permissions of the folder and the file"],
  ENOSPC: ["a disk without room", "make room on it, or name a folder on another"],
};

const unreadable: OfSystem = {
  ENOENT: ["no file of this name", "check the name and the folder"],
  ENOTDIR: ["no file of this name", "check the name and the folder"],
  NOFILE: ["a pipe or a device", "name a file, or pipe it in and name it -"],
  EISDIR: ["a folder", "name the file in it"],
  EACCES: ["a file that may not be read", "check its permissions"],
};
