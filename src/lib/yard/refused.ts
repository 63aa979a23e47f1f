/** Why hands cannot do something: the deck is pinned, or stock stands across its edge, or there is no hole. */
export class RefusedError extends Error {
  readonly code = 'refused';
  constructor(readonly why: string) {
    super(why);
    this.name = 'RefusedError';
  }
}
