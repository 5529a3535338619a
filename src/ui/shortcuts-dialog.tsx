import { Fragment, useState } from 'react';
import { useEquipment } from './equipment.js';
import { words } from './language.js';
import { Modal } from './modal.js';
import type { Stroke } from './shortcuts.js';
import { SHORTCUT_GROUPS, SHORTCUT_IDS, SHORTCUTS } from './shortcuts.js';

/** By the browser, in every dialog. */
const ESCAPE: readonly Stroke[] = [{ key: 'escape' }];

/** All keys that do something, as they stand in the registry, and the switch for those that are single characters. */
export function ShortcutsDialog({ onClose }: { readonly onClose: () => void }) {
  const { singleKeys } = useEquipment();
  const [areOn, setAreOn] = useState(singleKeys.areOn());
  const said = words.shortcut;
  const groups = [
    ...SHORTCUT_GROUPS.map((group) => ({
      group,
      lines: SHORTCUT_IDS.filter((id) => SHORTCUTS[id].group === group).map((id) => ({
        id,
        does: said.does[id],
        strokes: SHORTCUTS[id].strokes,
      })),
    })),
    { group: 'dialogs' as const, lines: [{ id: 'closeDialog', does: said.does.closeDialog, strokes: ESCAPE }] },
  ];
  return (
    <Modal heading={said.heading} closeLabel={said.close} onClose={onClose}>
      <p className="note">{said.intro}</p>
      {groups.map(({ group, lines }) => (
        <section key={group} className="shortcuts">
          <h3>{said.groups[group]}</h3>
          <dl>
            {lines.map(({ id, does, strokes }) => (
              <div key={id} className="shortcut">
                <dt>
                  <Strokes strokes={strokes} />
                </dt>
                <dd>{does}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
      <p className="note">{said.apple}</p>
      <p className="note">{said.undoNote}</p>
      <p className="note">{said.undoNot}</p>
      <label className="check">
        <input
          type="checkbox"
          checked={areOn}
          aria-describedby="single-keys-note"
          onChange={(event) => {
            singleKeys.switch(event.currentTarget.checked);
            setAreOn(event.currentTarget.checked);
          }}
        />
        {said.single}
      </label>
      <p id="single-keys-note" className="note">
        {said.singleNote}
      </p>
    </Modal>
  );
}

function Strokes({ strokes }: { readonly strokes: readonly Stroke[] }) {
  return strokes.map((stroke, index) => (
    <Fragment key={strokeText(stroke)}>
      {index > 0 && ` ${words.shortcut.or} `}
      <kbd>{strokeText(stroke)}</kbd>
    </Fragment>
  ));
}

/** A stroke in words, such as `Ctrl + Shift + Z`. */
function strokeText({ key, command, shift }: Stroke): string {
  const { keys } = words.shortcut;
  const name = (keys as Readonly<Record<string, string>>)[key] ?? key.toUpperCase();
  return [...(command === true ? [keys.command] : []), ...(shift === true ? [keys.shift] : []), name].join(' + ');
}
