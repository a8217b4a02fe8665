/** A question to a worker that answers each by itself; what comes back for it has the same number. */
export interface Numbered<Asked> {
  readonly number: number;
  readonly asked: Asked;
}

export interface NumberedReply<Answer> {
  readonly number: number;
  readonly answer: Answer;
}
