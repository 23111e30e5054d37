interface ImportMeta {
  readonly env: { readonly DEV: boolean };
}

declare module '*?url' {
  const url: string;
  export default url;
}

declare module '*.css';

declare module 'pdfkit' {
  interface PdfOptions {
    readonly autoFirstPage: boolean;
    readonly font: null;
    readonly lang: string;
    readonly displayTitle: boolean;
    readonly info: Readonly<Record<string, string>>;
  }
  export default class PDFDocument {
    constructor(options: PdfOptions);
    registerFont(name: string, data: ArrayBuffer): void;
    addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): void;
    on(event: string, heard: (value: never) => void): void;
    end(): void;
  }
}

declare module 'svg-to-pdfkit' {
  import type PDFDocument from 'pdfkit';
  export default function svgToPdf(
    document: PDFDocument,
    svg: string,
    x: number,
    y: number,
    options: { readonly width: number; readonly height: number; readonly fontCallback: () => string },
  ): void;
}
