import { crc32, deflateSync, inflateSync } from 'node:zlib';

const SIGNATURE = 8;
const COLOURS = 256;

/**
 * The same picture with at most 256 colours, its most frequent ones: a third of the bytes, for pages of few colours.
 *
 * @param png as the browser makes it: 8 bits a channel, red, green and blue, not interlaced (ISO/IEC 15948)
 */
export function asPalette(png: Buffer): Buffer {
  const chunks = chunksOf(png);
  const head = chunks.find(({ type }) => type === 'IHDR')?.data ?? Buffer.alloc(13);
  const [width, height] = [head.readUInt32BE(0), head.readUInt32BE(4)];
  if (head.toString('hex', 8) !== '0802000000')
    throw new Error('this picture is not of the kind that the browser makes');
  const packed = Buffer.concat(chunks.filter(({ type }) => type === 'IDAT').map(({ data }) => data));
  const colours = coloursOf(inflateSync(packed), width, height);
  const palette = mostFrequent(colours);
  const place = new Map(palette.map((colour, index) => [colour, index]));
  const rows = Buffer.alloc((width + 1) * height);
  for (const [index, colour] of colours.entries()) {
    const at = place.get(colour) ?? nearest(palette, colour);
    place.set(colour, at);
    rows[index + Math.floor(index / width) + 1] = at;
  }
  head[9] = 3;
  const table = Buffer.from(palette.flatMap((colour) => [colour >> 16, (colour >> 8) & 255, colour & 255]));
  return Buffer.concat([
    png.subarray(0, SIGNATURE),
    chunk('IHDR', head),
    chunk('PLTE', table),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

interface Chunk {
  readonly type: string;
  readonly data: Buffer;
}

function chunksOf(png: Buffer): readonly Chunk[] {
  const chunks: Chunk[] = [];
  for (let at = SIGNATURE; at < png.length; ) {
    const length = png.readUInt32BE(at);
    chunks.push({ type: png.toString('latin1', at + 4, at + 8), data: png.subarray(at + 8, at + 8 + length) });
    at += length + 12;
  }
  return chunks;
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const made = Buffer.alloc(body.length + 8);
  made.writeUInt32BE(data.length, 0);
  body.copy(made, 4);
  made.writeUInt32BE(crc32(body), body.length + 4);
  return made;
}

/** Takes the filters off the rows, in place, and gives each pixel as 0xRRGGBB. */
function coloursOf(raw: Buffer, width: number, height: number): Uint32Array {
  const colours = new Uint32Array(width * height);
  const stride = width * 3;
  for (let row = 0; row < height; row++) {
    const from = row * (stride + 1) + 1;
    const filter = raw[from - 1] ?? 0;
    for (let x = 0; x < stride; x++) {
      const left = x < 3 ? 0 : (raw[from + x - 3] ?? 0);
      const above = row === 0 ? 0 : (raw[from + x - stride - 1] ?? 0);
      const corner = x < 3 || row === 0 ? 0 : (raw[from + x - stride - 4] ?? 0);
      raw[from + x] = (raw[from + x] ?? 0) + predicted(filter, left, above, corner);
    }
    for (let x = 0; x < width; x++) colours[row * width + x] = raw.readUIntBE(from + x * 3, 3);
  }
  return colours;
}

function predicted(filter: number, left: number, above: number, corner: number): number {
  if (filter === 1) return left;
  if (filter === 2) return above;
  if (filter === 3) return (left + above) >> 1;
  if (filter === 0) return 0;
  const guess = left + above - corner;
  const [byLeft, byAbove, byCorner] = [Math.abs(guess - left), Math.abs(guess - above), Math.abs(guess - corner)];
  if (byLeft <= byAbove && byLeft <= byCorner) return left;
  return byAbove <= byCorner ? above : corner;
}

function mostFrequent(colours: Uint32Array): readonly number[] {
  const counts = new Map<number, number>();
  for (const colour of colours) counts.set(colour, (counts.get(colour) ?? 0) + 1);
  return [...counts]
    .sort((a, b) => b[1] - a[1] || a[0] - b[0])
    .slice(0, COLOURS)
    .map(([colour]) => colour);
}

function nearest(palette: readonly number[], colour: number): number {
  const distance = (other: number) =>
    ((other >> 16) - (colour >> 16)) ** 2 +
    (((other >> 8) & 255) - ((colour >> 8) & 255)) ** 2 +
    ((other & 255) - (colour & 255)) ** 2;
  let best = 0;
  for (const [index, other] of palette.entries()) if (distance(other) < distance(palette[best] ?? 0)) best = index;
  return best;
}
