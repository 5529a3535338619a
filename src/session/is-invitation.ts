/** What the fragment of every invitation begins with, whatever its version. */
export const BEGINNING = 'invite.';

/** Whether a fragment is meant as an invitation, whatever became of it: then the wearer's page is to be shown. */
export function isInvitation(fragment: string): boolean {
  return fragment.replace(/^#/, '').startsWith(BEGINNING);
}
