/** Pages of a PDF file: its page objects, which Chromium writes uncompressed. */
export const pagesOf = (pdf: Buffer): number => (pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? []).length;
