import { deflateSync } from "node:zlib";

/** A grey picture of so many pixels as a PNG (ISO/IEC 15948), its checksums left at 0. */
export function greyPicture(width: number, height: number): Uint8Array {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 0, 0, 0, 0], 8);
  // Each line begins with the filter it is written by.
  const lines = Buffer.alloc(height * (1 + width), 0);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk("IHDR", header),
    chunk("IDAT", deflateSync(lines)),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

function chunk(name: string, data: Uint8Array): Buffer {
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  return Buffer.concat([length, Buffer.from(name, "latin1"), data, Buffer.alloc(4)]);
}
