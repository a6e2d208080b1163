// What the build takes in beside modules. Style sheets are imported for their effect.
declare module '*.css';

declare module '*?raw' {
  /** The file's text. */
  const text: string;
  export default text;
}

declare module '*?url' {
  /** Address of the file in the built page. */
  const address: string;
  export default address;
}
