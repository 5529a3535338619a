import { markerCardPdf } from '../../src/sheets/sheets.js';
import { readPdfShapes } from './pdf-shapes.js';
import { detectMarkers, paintRectangles } from './detect-markers.js';
const s = await readPdfShapes(await markerCardPdf({ paper: 'a4' }));
for (const ppm of [5, 10, 20]) {
  const k = ppm * 25.4 / 72;
  const rects = s.fills.flat().map((p) => ({ leftPx: Math.min(...p.map(q=>q.xPt))*k, rightPx: Math.max(...p.map(q=>q.xPt))*k, topPx: (s.heightPt-Math.max(...p.map(q=>q.yPt)))*k, bottomPx: (s.heightPt-Math.min(...p.map(q=>q.yPt)))*k }));
  const t=Date.now();
  const m = await detectMarkers(paintRectangles(Math.ceil(s.widthPt*k), Math.ceil(s.heightPt*k), rects));
  console.log(ppm, Date.now()-t, m.map(a => a.id+': '+a.corners.map(c=>`${(c.xPx/ppm).toFixed(3)},${(c.yPx/ppm).toFixed(3)}`).join(' ')));
}
