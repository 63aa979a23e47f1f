/** Bytes as text that an address may carry. Source: RFC 4648, section 5, without padding. */
export function toBase64url(bytes: Uint8Array): string {
  const binary = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** The bytes again; a last character that begins no whole byte is left out. */
export function fromBase64url(text: string): Uint8Array {
  const whole = text.length % 4 === 1 ? text.slice(0, -1) : text;
  const binary = atob(whole.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(binary, (character) => character.charCodeAt(0));
}
