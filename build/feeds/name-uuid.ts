import { createHash } from "node:crypto";

/** Four bits of version 5 and two of variant lie over the digest. */
const VERSION_BYTE = 6;
const VARIANT_BYTE = 8;

/**
 * The UUID that a name always has within a namespace: version 5, from SHA-1.
 * @param namespace a UUID with its hyphens
 * @source RFC 9562, section 5.5
 */
export function nameUuid(namespace: string, name: string): string {
  const bytes = createHash("sha1")
    .update(Buffer.from(namespace.replaceAll("-", ""), "hex"))
    .update(name, "utf8")
    .digest()
    .subarray(0, 16);
  bytes.writeUInt8((bytes.readUInt8(VERSION_BYTE) & 0x0f) | 0x50, VERSION_BYTE);
  bytes.writeUInt8((bytes.readUInt8(VARIANT_BYTE) & 0x3f) | 0x80, VARIANT_BYTE);
  return bytes.toString("hex").replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}
