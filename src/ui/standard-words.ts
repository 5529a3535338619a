/** A standard as it is offered. */
export const standardWords = {
  offered: (name: string, edition: string): string => `${name} (${edition})`,
  allFromMemory: (offered: string): string => `${offered}, values from memory`,
  progressiveFromMemory: (offered: string): string => `${offered}, for progressive lenses from memory`,
};
