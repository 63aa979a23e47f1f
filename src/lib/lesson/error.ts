/** Something in a lesson file that stops the build. */
export class LessonError extends Error {
  readonly code = 'bad-lesson';
  constructor(
    readonly file: string,
    readonly line: number,
    readonly met: string,
    readonly allowed: string
  ) {
    super(`${file}:${line}: ${met}. Allowed: ${allowed}.`);
    this.name = 'LessonError';
  }
}
