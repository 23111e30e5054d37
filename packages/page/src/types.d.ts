interface ImportMeta {
  readonly env: { readonly DEV: boolean };
}

declare module '*?url' {
  const url: string;
  export default url;
}

declare module '*.css';

declare module '*.css?inline' {
  const text: string;
  export default text;
}

declare module '*?worker&inline' {
  const Inlined: new () => Worker;
  export default Inlined;
}
