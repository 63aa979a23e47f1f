import { networkInterfaces } from 'node:os';

/** Addresses kept for private networks. Source: RFC 1918, section 3. */
const PRIVATE = /^(10\.|192\.168\.|172\.(1[6-9]|2\d|3[01])\.)/;

/** This computer's IPv4 addresses in its networks, those of private networks first. */
export function roomAddresses() {
  const all = Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address);
  return all.toSorted((a, b) => Number(PRIVATE.test(b)) - Number(PRIVATE.test(a)));
}
