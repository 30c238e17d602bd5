declare module "svg-to-pdfkit" {
  interface SvgOptions {
    width?: number;
    height?: number;
    preserveAspectRatio?: string;
    /** Takes the drawing's units for points, not for CSS pixels. */
    assumePt?: boolean;
    /** Names a font registered with the document. */
    fontCallback?: (family: string, bold: boolean, italic: boolean) => string;
    /** Told of anything the drawing asks for that cannot be done. */
    warningCallback?: (message: string) => void;
  }
  export default function svgToPdfkit(
    document: PDFKit.PDFDocument,
    svg: string,
    x_pt: number,
    y_pt: number,
    options?: SvgOptions,
  ): void;
}
