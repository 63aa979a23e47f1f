/** Size of a picture, in its own pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * An SVG picture as a PNG of that size. It is drawn by itself: page styles and fonts do not reach it.
 * @throws Error when the browser cannot draw it.
 */
export async function pngOf(svg: string, { width, height }: Size): Promise<Uint8Array> {
  const image = new Image(width, height);
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  canvas.getContext('2d')?.drawImage(image, 0, 0, width, height);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
  if (!blob) throw new Error('This browser could not make a PNG picture. Save the SVG picture.');
  return new Uint8Array(await blob.arrayBuffer());
}
