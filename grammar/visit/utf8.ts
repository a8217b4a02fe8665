/**
 * UTF-8 bytes of a text, written here because the grammar may lean on neither DOM nor Node.
 * A lone surrogate has no UTF-8 form, and replacing it would make the hash speak for other text than was recorded.
 * @throws {RangeError} on a lone surrogate.
 */
export function utf8Bytes(text: string): Uint8Array<ArrayBuffer> {
  return asciiBytes(text) ?? anyBytes(text);
}

/** Most events are ASCII, of which a byte is a character: the server hashes each it takes. */
function asciiBytes(text: string): Uint8Array<ArrayBuffer> | undefined {
  const bytes = new Uint8Array(text.length);
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code >= 0x80) return undefined;
    bytes[at] = code;
  }
  return bytes;
}

function anyBytes(text: string): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(text.length * 3);
  let length = 0;
  for (const character of text) {
    length = writeCodePoint(bytes, length, character.codePointAt(0) as number);
  }
  return bytes.slice(0, length);
}

/** How many bytes the text takes as UTF-8 (a lone surrogate counts three, as its replacement would). */
export function utf8Length(text: string): number {
  let length = 0;
  for (const character of text) {
    const code = character.codePointAt(0) as number;
    length += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
  }
  return length;
}

function writeCodePoint(bytes: Uint8Array, at: number, code: number): number {
  if (code >= 0xd800 && code <= 0xdfff) throw new RangeError('a lone surrogate cannot be written as UTF-8');
  if (code < 0x80) {
    bytes[at] = code;
    return at + 1;
  }
  if (code < 0x800) {
    bytes[at] = 0xc0 | (code >> 6);
    bytes[at + 1] = 0x80 | (code & 0x3f);
    return at + 2;
  }
  if (code < 0x10000) {
    bytes[at] = 0xe0 | (code >> 12);
    bytes[at + 1] = 0x80 | ((code >> 6) & 0x3f);
    bytes[at + 2] = 0x80 | (code & 0x3f);
    return at + 3;
  }
  bytes[at] = 0xf0 | (code >> 18);
  bytes[at + 1] = 0x80 | ((code >> 12) & 0x3f);
  bytes[at + 2] = 0x80 | ((code >> 6) & 0x3f);
  bytes[at + 3] = 0x80 | (code & 0x3f);
  return at + 4;
}
