import { crc32, deflateSync } from 'node:zlib';

const SIGNATURE = Buffer.from('89504e470d0a1a0a', 'hex');

/** A chunk of a PNG, its CRC taken by another implementation than ours. */
export function chunk(type: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const frame = Buffer.alloc(4);
  frame.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([frame, body, check]);
}

/** A sound PNG of one grey pixel, with further chunks before its end. */
export function pixel(...more: readonly Buffer[]): Uint8Array {
  const head = Buffer.from('00000001000000010800000000', 'hex');
  const parts = [chunk('IHDR', head), chunk('IDAT', deflateSync(Buffer.from([0, 128])))];
  return new Uint8Array(
    Buffer.concat([SIGNATURE, ...parts, ...more, chunk('IEND', Buffer.alloc(0))])
  );
}
