declare module '*.ttf?inline' {
  /** The font file as a data URL, so that it travels inside the bundle. */
  const url: string;
  export default url;
}
