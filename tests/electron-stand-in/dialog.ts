/** Stands in for `dialog`: keeps what would have been shown. */
export class DialogStandIn {
  readonly shown: { readonly title: string; readonly content: string }[] = [];

  showErrorBox(title: string, content: string): void {
    this.shown.push({ title, content });
  }

  /** As before the start. */
  forget(): void {
    this.shown.length = 0;
  }
}
