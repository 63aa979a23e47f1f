/** What this device keeps under a key; null where it keeps nothing, or may not be asked. */
export function readKept(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

/** Keeps a text on this device; false where it will not. */
export function keep(key: string, text: string): boolean {
  try {
    localStorage.setItem(key, text);
    return true;
  } catch {
    return false;
  }
}

/** Forgets what this device keeps under a key. */
export function forget(key: string): void {
  try {
    localStorage.removeItem(key);
  } catch {
    // It keeps nothing, so there is nothing to forget.
  }
}
