/** The longest side of a kept photo, in pixels: a plate's small print is read on it. Our choice. */
const LONGEST_SIDE = 2_000;
const QUALITY = 0.85;

/**
 * A photo as it is kept: smaller, as JPEG, drawn anew, so that nothing of where and by what it was taken is in the file.
 * @throws {DOMException} where the file is no picture that the browser can read
 */
export async function shrinkPhoto(file: Blob): Promise<Uint8Array<ArrayBuffer>> {
  const picture = await createImageBitmap(file);
  try {
    const scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
    const [width, height] = [picture.width, picture.height].map((side) => Math.max(1, Math.round(side * scale)));
    const canvas = new OffscreenCanvas(width as number, height as number);
    canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
    const drawn = await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
    return new Uint8Array(await drawn.arrayBuffer());
  } finally {
    picture.close();
  }
}
