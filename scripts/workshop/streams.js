/** A stream that has not taken so much is dropped; its page comes back, bytes. */
const MOST_WAITING = 65_536;
/** Between two signs of life, ms. */
export const PING_MS = 15_000;

/** Streams of server-sent events (HTML Living Standard, section 9.2), each under a name. */
export class Streams {
  /** @type {Map<import('node:http').ServerResponse, { name: string, address: string }>} */
  #open = new Map();

  /**
   * @param {import('node:http').ServerResponse} response
   * @param {{ name: string, address: string }} who
   * @param {() => void} [onEnd]
   */
  begin(response, who, onEnd) {
    response.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store' });
    response.write('retry: 1000\n\n');
    this.#open.set(response, who);
    response.on('close', () => {
      this.#open.delete(response);
      onEnd?.();
    });
  }

  /** Names with a stream open, each once. */
  get names() {
    return new Set([...this.#open.values()].map(({ name }) => name));
  }

  /** @param {string} address */
  countFrom(address) {
    return [...this.#open.values()].filter((who) => who.address === address).length;
  }

  /**
   * Says an event on each stream, or on those of one name.
   * @param {string} event
   * @param {(name: string) => unknown} dataFor
   * @param {string} [only]
   */
  say(event, dataFor, only) {
    for (const [response, { name }] of this.#open) {
      if (only !== undefined && name !== only) continue;
      if (response.writableLength > MOST_WAITING) response.destroy();
      else response.write(`event: ${event}\ndata: ${JSON.stringify(dataFor(name))}\n\n`);
    }
  }

  end() {
    for (const response of this.#open.keys()) response.destroy();
  }
}
