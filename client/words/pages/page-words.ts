/** What every page has. */
export const PAGE = {
  program: 'Readback',
  version: (version: string) => `Readback ${version}.`,
  notices: 'Third-party notices',
  back: 'Back',
  /** Where a page cannot be drawn. */
  mishap: (message: string) =>
    `This cannot be shown (${message}): load the page again. What is written in the record stays as it is.`,
  loading: 'Loading…',
} as const;
