import type { Words } from '../language.ts';

/** What stands on stickers. */
export const printed: Words = {
  'paper.of': '{k} von {n}',
  'paper.size': '{length} × {width} × {thickness}',
  'paper.bead': 'Stab {bead}',
  'paper.no-bead': 'kein Stab',
  'paper.groove': 'Nut {width} × {depth}',
  'paper.mortises': 'Zapfenlöcher {depth} tief: {places}',
  'paper.mortise-bottom': 'unten {start} bis {stop}',
  'paper.mortise-top': 'oben {start} bis {stop}',
  'paper.mortise-mid': 'Mitte {k} von unten {start} bis {stop}',
  'paper.tenon': 'Zapfen {width} breit, {stop} lang',
  'paper.haunch': 'Nutzapfen {length} × {height}',
  'paper.mitre': 'Gehrungen {sightEdge} ab Enden',
  'paper.arch': 'Bogenradius {radius}, Stichhöhe {rise}',
  'paper.panel-arch': 'Seiten {sideHeight}, Radius {radius}',
  'paper.raise': 'Feder {tongue}, Abplattung {band}',
  'paper.flat-panel': 'glatte Füllung',
  'paper.sticker-of': 'Aufkleber {k} von {n}',
  'paper.stick-stile-bottom': 'auf die Rückseite: {along} vom unteren Ende, {across} von der Außenkante',
  'paper.stick-stile-top': 'auf die Rückseite: {along} vom oberen Ende, {across} von der Außenkante',
  'paper.stick-rail': 'auf die Rückseite: in die Mitte, {across} von der Außenkante',
  'paper.stick-mid-rail': 'auf die Rückseite: in die Mitte',
  'paper.stick-panel': 'auf die Rückseite: in die Mitte, {along} von unten',
  'paper.stick-bears': '{words}; abziehen, bevor die Rückseite an Anschlag oder Tisch liegt',
  'paper.stick-none': 'größer als sein Platz auf der Rückseite: beim Teil aufheben',
};
