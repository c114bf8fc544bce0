/** Thrown when an edit does not fit the document. The message is a sentence for the reader of the notebook. */
export class EditError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'EditError';
  }
}
