/** Silence after which a connection counts as lost, ms: the server says something each 15 s. */
const SILENCE_MS = 40_000;
/** Wait before a connection that was refused is tried again, ms. */
const AGAIN_MS = 2_000;

interface Ear {
  /** Takes what the server says under one name. */
  readonly hear: Readonly<Record<string, (data: unknown) => void>>;
  /** The connection stands, or does not. */
  readonly stands: (yes: boolean) => void;
  /** Called before a refused connection is tried again. */
  readonly refused?: () => Promise<void>;
}

/**
 * Listens to a stream of the workshop's server, for as long as it takes: a connection that drops, is
 * refused or fell silent while the device slept is made again. Returns what ends it.
 */
export function listen(address: string, { hear, stands, refused }: Ear): () => void {
  let source: EventSource;
  let heard = Date.now();
  let ended = false;

  const alive = () => {
    heard = Date.now();
    stands(true);
  };
  const again = async () => {
    source.close();
    await refused?.();
    if (!ended) setTimeout(() => !ended && begin(), AGAIN_MS);
  };
  function begin(): void {
    source = new EventSource(address);
    heard = Date.now();
    source.addEventListener('open', alive);
    source.addEventListener('ping', alive);
    for (const [name, take] of Object.entries(hear)) {
      source.addEventListener(name, ({ data }: MessageEvent<string>) => {
        alive();
        take(JSON.parse(data));
      });
    }
    source.addEventListener('error', () => {
      stands(false);
      if (source.readyState === EventSource.CLOSED) void again();
    });
  }
  const look = () => {
    if (document.hidden || Date.now() - heard < SILENCE_MS) return;
    source.close();
    begin();
  };

  begin();
  const clock = setInterval(look, SILENCE_MS / 4);
  document.addEventListener('visibilitychange', look);
  return () => {
    ended = true;
    source.close();
    clearInterval(clock);
    document.removeEventListener('visibilitychange', look);
  };
}
