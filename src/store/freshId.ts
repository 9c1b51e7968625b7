/** A new id, like no other: 128 random bits in hexadecimal. The browser gives randomUUID to secure addresses only, this to all. */
export const freshId = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
