import { describe, expect, it } from 'vitest';
import { exampleProfile } from '../../tests/support/example-profile.js';
import { changeShelf, type ProfileShelf } from './profile-shelf.js';

const desk = exampleProfile({ id: 'a', name: 'Desk' });
const door = exampleProfile({ id: 'b', name: 'Door' });
const shelf: ProfileShelf = { profiles: [desk, door], isKept: true, removed: null };

const names = ({ profiles }: ProfileShelf): readonly string[] => profiles.map(({ name }) => name);

describe('the shelf of profiles', () => {
  it('takes a profile at its end', () => {
    const next = changeShelf(shelf, { kind: 'profile-added', profile: exampleProfile({ id: 'c', name: ' New ' }) });
    expect(names(next)).toEqual(['Desk', 'Door', 'New']);
  });

  it('tells profiles of one name apart', () => {
    const add = (from: ProfileShelf, id: string): ProfileShelf =>
      changeShelf(from, { kind: 'profile-added', profile: exampleProfile({ id, name: 'Desk' }) });
    expect(names(add(add(shelf, 'c'), 'd'))).toEqual(['Desk', 'Door', 'Desk (2)', 'Desk (3)']);
  });

  it('renames, but not to nothing, nor to the name of another', () => {
    const rename = (name: string) => names(changeShelf(shelf, { kind: 'profile-renamed', id: 'a', name }));
    expect(rename(' Window ')).toEqual(['Window', 'Door']);
    expect(rename('  ')).toEqual(['Desk', 'Door']);
    expect(rename('Desk')).toEqual(['Desk', 'Door']);
    expect(rename('Door')).toEqual(['Door (2)', 'Door']);
    expect(rename('x'.repeat(200))[0]).toHaveLength(60);
  });

  it('brings back what was deleted last, where it stood', () => {
    const without = changeShelf(shelf, { kind: 'profile-removed', id: 'a' });
    expect(names(without)).toEqual(['Door']);
    const back = changeShelf(without, { kind: 'removal-undone' });
    expect(back).toEqual(shelf);
  });

  it('stays as it is where there is nothing to delete or to bring back', () => {
    expect(changeShelf(shelf, { kind: 'profile-removed', id: 'z' })).toBe(shelf);
    expect(changeShelf(shelf, { kind: 'removal-undone' })).toBe(shelf);
  });
});
