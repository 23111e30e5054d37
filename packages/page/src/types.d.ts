interface ImportMeta {
  readonly env: { readonly DEV: boolean };
}

declare module '*?url' {
  const url: string;
  export default url;
}

declare module '*.css';
