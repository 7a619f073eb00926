import type { OwnFacts } from "#cli/input/problem.ts";

const plain = "name: class\nflours: [{ name: bread flour, amount: 100 % }]\nwater: { added: 36 % }\n";

/** The files that the samples build on: what they hold and, where that would be no reading, what to say of it. */
export const given: Readonly<Record<string, string | readonly [content: string | Uint8Array, words: string]>> = {
  "noodle.yaml": `${plain}alkali: [{ name: sodium carbonate, amount: 1 % }]\nbatch: { flour: 1 kg }\n`,
  "open.yaml": `${plain}salt: find\nwanted: { saltInDough: 0.8 % }\n`,
  "anchor.yaml": `${plain}salt: &amount find\nwanted: { saltInDough: 0.8 % }\nnotes: *amount\n`,
  "folded.yaml": `${plain}salt: >-\n  find\nwanted: { saltInDough: 0.8 % }\n`,
  "alias.yaml": "name: class\nflours: *store\n",
  "aliases.yaml": [`a: &a [x]\nb: [${Array(51).fill("*a").join(", ")}]\n`, "a value with an alias, used 51 times"],
  "deep.yaml": ["[".repeat(20_000), "20 000 opening brackets"],
  "empty.yaml": "# to be written\n",
  "foreign.yaml": `${plain}include: [wish.txt]\n`,
  "wish.txt": "two boxes of eggs\n",
  "half.xlsx": [new Uint8Array([0x50, 0x4b, 3, 4]), "the beginning of a workbook"],
  "huge.yaml": ["a: 1\n".repeat(60_000), "the line `a: 1`, 60 000 times"],
  "photo.yaml": [new Uint8Array([0xff, 0xd8, 0xff, 0]), "the bytes of a photograph"],
  "tab.yaml": "name: class\nwater:\n\tadded: 36 %\n",
  "twice.yaml": `${plain}name: harbour\n`,
  "two.yaml": "name: class\n---\nname: harbour\n",
  "comma.yaml": "name: class\nflours: [{ name: bread flour, amount: 100 % }]\nwater: { added: 36,5 % }\n",
  "unclosed.yaml": 'name: "class\n',
};

/** How a problem of the command comes about: what is typed, and whether it stands at a terminal. */
export type Sample = string | readonly [line: string, at: "at a terminal"];

/** A sample of every problem that is the command's own. */
export const samples: Readonly<Record<keyof OwnFacts, Sample>> = {
  "alkalinity.unreadable": "alkali assay Na2CO3 --alkalinity strong",
  "cards.none": "cards shelf -o cards",
  "cards.out-missing": "cards shelf",
  "convert.products": "alkali convert Na2CO3 K2CO3 K2CO3 --dose '1 %'",
  "figure.not-there": "formula noodle.yaml --figure dough.watr",
  "file.alias": "formula alias.yaml",
  "file.aliases": "formula aliases.yaml",
  "file.decimal-comma": "formula comma.yaml",
  "file.duplicate-key": "formula twice.yaml",
  "file.empty": "formula empty.yaml",
  "file.foreign": "card noodle.yaml -o wish.txt",
  "file.input": "card noodle.yaml -o noodle.yaml",
  "file.no-input": ["formula -", "at a terminal"],
  "file.no-kitchen": "formula foreign.yaml",
  "file.not-named": "workbook noodle.yaml",
  "file.not-text": "formula photo.yaml",
  "file.several": "formula two.yaml",
  "file.syntax": "formula unclosed.yaml",
  "file.tab": "formula tab.yaml",
  "file.there": "settle open.yaml -o noodle.yaml",
  "file.too-deep": "formula deep.yaml",
  "file.too-large": "formula huge.yaml",
  "file.unreadable": "formula noodel.yaml",
  "file.unwritable": "card noodle.yaml -o cards/class.html",
  "file.workbook": "new class.yaml --from half.xlsx",
  "flag.beside-spec": "alkali convert 'sodium carbonate' 'potassium carbonate' --spec noodle.yaml --dose '1 %'",
  "flag.missing": "alkali make Na2CO3 --amount '1 kg'",
  "normality.unreadable": "alkali assay Na2CO3 --acid '37.4 mL' --normality strong --sample '2 g'",
  "path.unreadable": "formula noodle.yaml --set 'water 38 %'",
  "ratio.unreadable": "alkali make Na2CO3 K2CO3 --ratio half --strength '10 %' --amount '1 kg'",
  "replace.missing": "replace noodle.yaml",
  "set.no-spec": "water-temperature --set 'water.added=38 %'",
  "stock.loads": "alkali stock Na2CO3 --dose '8 g' --loads some",
  "strength.error":
    "alkali correct Na2CO3 Na2CO3 --reading '16.4 °Bé' --error '0.01 g/mL' --amount '4 kg' --strength '12 %'",
  "strength.reading": "alkali correct Na2CO3 Na2CO3 --reading '12 %' --amount '4 kg' --strength '12 %'",
  "strength.unreadable": "alkali make Na2CO3 --strength strong --amount '1 kg'",
  "weighing.division": "alkali make Na2CO3 --strength '10 %' --amount '1 kg' --division '0 g'",
  "write.both": "settle open.yaml --write -o found.yaml",
  "write.no-file": "settle - --write < open.yaml",
  "write.set": "settle open.yaml --write --set 'water.added=38 %'",
  "write.in-place": "settle folded.yaml --write",
  "write.shared": "settle anchor.yaml --write",
};
