/** Remainders of each byte. Polynomial 0xEDB88320, bits reversed. */
const table = /* @__PURE__ */ Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1;
  return rest;
});

/** CRC-32 of bytes, 0 to 2³² − 1. Source: PNG (third edition), annex D; ISO 3309. */
export function crc32(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = (table[(rest ^ byte) & 0xff] as number) ^ (rest >>> 8);
  return (rest ^ 0xffffffff) >>> 0;
}
