declare module 'virtual:words' {
  /** A word of the data in the language of the build; anything else as it is. */
  export const shown: <T>(value: T) => T;
}
