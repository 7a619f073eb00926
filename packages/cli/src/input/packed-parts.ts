import { type Unzipped, unzipSync } from "fflate";

/**
 * Unpacks what is wanted of a zip file; throws where a part has not the size or the checksum that the file tells of it.
 *
 * The fields stand where the ZIP file format has them: PKWARE, APPNOTE.TXT, sections 4.3.12 to 4.3.16.
 */
export function partsIn(bytes: Uint8Array, wanted: (name: string, size: number) => boolean): Unzipped {
  const checksums = checksumsIn(bytes);
  const told = new Map<string, { readonly size: number; readonly checksum: number | undefined }>();
  let index = 0;
  const parts = unzipSync(bytes, {
    filter: ({ name, originalSize }) => {
      // Parts come in the order of the directory.
      told.set(name, { size: originalSize, checksum: checksums[index] });
      index += 1;
      return wanted(name, originalSize);
    },
  });
  for (const [name, part] of Object.entries(parts)) {
    const { size, checksum } = told.get(name) ?? {};
    if (part.length !== size || checksumOf(part) !== checksum) throw new Error(`${name} is damaged`);
  }
  return parts;
}

/** The checksums in the directory of a zip file, in its order. */
function checksumsIn(bytes: Uint8Array): readonly number[] {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
  const end = file.lastIndexOf("PK\x05\x06", file.length - 22, "latin1");
  const isWide = end >= 20 && file.readUInt32LE(end - 20) === 0x07064b50;
  let at = file.readUInt32LE(isWide ? file.readUInt32LE(end - 12) + 48 : end + 16);
  const checksums: number[] = [];
  while (at < file.length - 46 && file.readUInt32LE(at) === 0x02014b50) {
    checksums.push(file.readUInt32LE(at + 16));
    at += 46 + [28, 30, 32].reduce((length, field) => length + file.readUInt16LE(at + field), 0);
  }
  return checksums;
}

/** What each byte does to a CRC-32, whose polynomial is that of ISO 3309 and APPNOTE.TXT, section 4.4.7. */
const byByte = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1;
  return rest;
});

function checksumOf(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = (byByte[(rest ^ byte) & 0xff] ?? 0) ^ (rest >>> 8);
  return ~rest >>> 0;
}
