/** Reads CSV as RFC 4180 (2005), section 2, has it: CRLF between records, quotes doubled inside quoted fields. */
export function readCsv(text: string): readonly (readonly string[])[] {
  if (!text.endsWith("\r\n")) throw new Error("the last record has no line break");
  const field = /(?:"(?<quoted>(?:[^"]|"")*)"|(?<plain>[^",\r\n]*))(?<end>,|\r\n)/uy;
  const records: string[][] = [];
  let record: string[] = [];
  while (field.lastIndex < text.length) {
    const at = field.lastIndex;
    const groups = field.exec(text)?.groups;
    if (groups === undefined) throw new Error(`no field at ${at}: ${text.slice(at, at + 20)}`);
    record.push(groups["quoted"]?.replaceAll('""', '"') ?? groups["plain"] ?? "");
    if (groups["end"] === ",") continue;
    records.push(record);
    record = [];
  }
  return records;
}
