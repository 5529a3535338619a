import type { Catalogue } from '../core/catalogue/catalogue.js';
import { unreachable } from '../core/result.js';
import type { SheetAct } from '../session/undo.js';
import { handleName } from './handle-name.js';
import { words } from './language.js';
import { placeName } from './lens-sentences.js';
import { readingWords } from './sentences.js';

/** What was done, in a few words, such as `PD, distance 63.5`. */
export function actWords(act: SheetAct, catalogue: Catalogue): string {
  const said = words.undo;
  switch (act.kind) {
    case 'reading': {
      const name = readingWords(act.name, catalogue);
      return act.text === '' ? said.cleared(name) : said.reading(name, act.text);
    }
    case 'restoration':
      return said.restoration(words.grammar.list(act.names.map((name) => readingWords(name, catalogue))));
    case 'reader-chosen':
      return said.readerChosen[act.reader];
    case 'reader-named':
      return said.readerNamed[act.reader];
    case 'confirmed':
      return counted(act.names, catalogue, said.confirmed, said.confirmedMany);
    case 'confirmation-withdrawn':
      return counted(act.names, catalogue, said.withdrawn, said.withdrawnMany);
    case 'note':
      return said.note[act.field];
    case 'prescription':
      return prescriptionWords(act);
    case 'gauge':
      return said.gauge(words.measurements[act.measurement].shortName);
    case 'gaze':
      return said.gaze;
    case 'shown-alone':
      return said.shownAlone;
    case 'covered':
      return said.covered;
    case 'picture':
      return said.picture;
    case 'sweep':
      return said.sweep;
    case 'picture-put-away':
      return said.putAway;
    case 'corners-begun':
      return said.cornersBegun;
    case 'corners-placed':
      return said.cornersPlaced;
    case 'handle':
      return said.moved(handleName(act.handle));
    case 'reset-to-found':
      return said.reset;
    case 'frame':
      return act.isLeftOut ? said.frameOut(act.number) : said.frameIn(act.number);
    default:
      return unreachable(act);
  }
}

function counted(
  names: Extract<SheetAct, { kind: 'confirmed' }>['names'],
  catalogue: Catalogue,
  one: (name: string) => string,
  many: (count: number) => string,
): string {
  const [name] = names;
  return name !== undefined && names.length === 1 ? one(readingWords(name, catalogue)) : many(names.length);
}

function prescriptionWords({ side, field }: Extract<SheetAct, { kind: 'prescription' }>): string {
  if (field === 'lensKind') return words.undo.lensKind;
  if (field === 'effectiveDiameter') return words.cost.effectiveDiameter;
  return placeName(field === 'vertexDistance' ? { side: null, field } : { side: side ?? 'R', field });
}
